import type { Supply } from '../../../src/domain/supply.js';
import { pedalsOf } from '../../../src/loadout/bench.js';
import { voltsOf } from '../../../src/loadout/solo-uses.js';
import { matchesBerth } from '../../../src/loadout/berth-match.js';
import type { Berth } from '../../../src/loadout/today.js';
import type { Block, ChainColumns } from './model.js';
import { Sum } from './program-builder.js';
import type { CompactSheet } from './sheet.js';

type Hanging = Pick<Block, 'uses' | 'solos' | 'chains'>;

/**
 * Who stays where it is plugged today, on a unit that is told apart for it. Outputs of a bank are alike but for their
 * numbers, so it only matters that every output of today goes on as one thing, one pedal by itself or one chain, and that a
 * chain goes on as one output.
 */
export function addKept(block: Hanging, sheet: CompactSheet): Block['kept'] {
  const { unit, supply } = block.uses;
  if (unit === null) return [];
  const ledger: Ledger = { sheet, supply, goesOn: new Map(), chains: new Map() };
  const kept = sheet.bench.classes.flatMap(({ berth }, pedal) => {
    if (berth?.supply !== supply.id || berth.unit !== unit) return [];
    const resident = { pedal, berth };
    return [...keptAlone(resident, block, ledger), ...block.chains.flatMap((each) => keptIn(each, resident, ledger))];
  });
  for (const sum of ledger.goesOn.values()) sheet.builder.atMost('goes on once', sum, 1);
  for (const [chains, stays] of ledger.chains) {
    const sum = new Sum().addEach(chains.leads, -1);
    for (const column of stays.values()) sum.add(column);
    sheet.builder.atMost('one output a chain', sum, 0);
  }
  return kept;
}

type Ledger = {
  readonly sheet: CompactSheet;
  readonly supply: Supply;
  /** By the number of an output that is in use today: Σ of what it goes on as. */
  readonly goesOn: Map<number, Sum>;
  /** By chains: a column for every output of today that one of them may go on as. */
  readonly chains: Map<ChainColumns, Map<number, number>>;
};

/** A class of pedals that is plugged into the unit today. */
type Resident = { readonly pedal: number; readonly berth: Berth };

function keptAlone({ pedal, berth }: Resident, { solos }: Hanging, ledger: Ledger): Block['kept'] {
  const columns = solos.filter(
    ({ use }) => use.pedal === pedal && matchesBerth(berth, ledger.supply, use.outputs, voltsOf(use, ledger.supply)),
  );
  if (columns.length === 0) return [];
  const column = ledger.sheet.builder.column('stays', 1);
  ledger.sheet.builder.atMost('stays', new Sum().add(column).addEach(columns, -1), 0);
  goOn(berth, column, ledger);
  return [stay(pedal, column, ledger)];
}

function keptIn(chains: ChainColumns, { pedal, berth }: Resident, ledger: Ledger): Block['kept'] {
  const { sheet, supply } = ledger;
  const { output } = chains.pool;
  const places = chains.places.filter((each) => each.place.pedal === pedal);
  const volts = voltsOf({ outputs: [output], join: null }, supply);
  if (places.length === 0 || !matchesBerth(berth, supply, [output], volts)) return [];
  const most = pedalsOf([pedal], sheet.bench);
  const column = sheet.builder.column('stays on a chain', most);
  sheet.builder.atMost('stays', new Sum().add(column).addEach(places, -1), 0);
  sheet.builder.atMost('stays', new Sum().add(column).add(chainStays(chains, berth, ledger), -most), 0);
  return [stay(pedal, column, ledger)];
}

/** Whether one of some chains goes on as the output of a berth. */
function chainStays(chains: ChainColumns, berth: Berth, ledger: Ledger): number {
  const stays = ledger.chains.get(chains) ?? new Map<number, number>();
  ledger.chains.set(chains, stays);
  const [output = 0] = berth.outputs;
  const known = stays.get(output);
  if (known !== undefined) return known;
  const column = ledger.sheet.builder.column('chain stays', 1);
  stays.set(output, column);
  goOn(berth, column, ledger);
  return column;
}

function goOn({ outputs }: Berth, column: number, { goesOn }: Ledger): void {
  for (const output of outputs) goesOn.set(output, (goesOn.get(output) ?? new Sum()).add(column));
}

function stay(pedal: number, column: number, { sheet }: Ledger): Block['kept'][number] {
  sheet.kept[pedal]?.add(column);
  return { pedal, column };
}

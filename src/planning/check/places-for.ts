import type { WiredFeed } from '../../domain/board.js';
import { withBoard } from '../../domain/changed-kit.js';
import { countOutputs, type Kit } from '../../domain/kit.js';
import { inletIn } from '../../domain/inlet.js';
import { isOwnSupplyOf } from '../../domain/own-adapter.js';
import type { Pedal } from '../../domain/pedal.js';
import { everyFeed, type Place, type Wiring } from '../../domain/plan.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import { wiredAs } from '../../domain/wired-as.js';
import type { Berth } from '../../loadout/today.js';
import { checkOutput, type OutputQuestion, type OutputTrial } from './check-output.js';

export type { Berth } from '../../loadout/today.js';

/** An output that a pedal may be wished on. */
export type PlaceFor = {
  readonly place: Place;
  /** What there is to be pinned; null where the pedal cannot hang there even by itself. */
  readonly berth: Berth | null;
  /** The best way to hang it there by itself, or the one that breaks least. */
  readonly trial: OutputTrial;
  /** How it could share the output on a chain with whoever hangs there in the plan; null where nobody does, or it cannot. */
  readonly shared: SharedPlace | null;
};

type SharedPlace = { readonly berth: Berth; readonly company: readonly PedalId[]; readonly trial: OutputTrial };

/**
 * Every output of the supplies that a plan uses or that are owned, and whether a pedal can hang there by itself, or an inlet by
 * what stands for it: whoever else hangs there makes room; and whether it can share it. Leads may be bought. What another pedal came with, or has in it, is
 * no place. Solves nothing.
 * @throws RangeError when the board has no such pedal.
 */
export function placesFor(kit: Kit, plan: Pick<Wiring, 'feeds' | 'inlets'>, pedal: PedalId): readonly PlaceFor[] {
  const units = new Map<SupplyId, number>(kit.board.owned.supplies);
  for (const { supply, unit } of everyFeed(plan)) units.set(supply, Math.max(unit, units.get(supply) ?? 0));
  const inlet = inletIn(kit, pedal);
  const pedals = inlet === null ? kit.board.pedals : [...kit.board.pedals, inlet];
  const asked = pedals.find(({ id }) => id === pedal);
  const wired = wiredAs(kit, plan);
  const bare = withBoard(kit, {
    ...kit.board,
    pedals,
    wiring: [],
    inlets: wired.inlets.filter((one) => one.pedal !== pedal),
    owned: { ...kit.board.owned, supplies: units },
  });
  return [...units].flatMap(([supply, count]) => {
    const described = bare.supplies.get(supply);
    if (described === undefined || belongsElsewhere(described, asked)) return [];
    return numbers(count).flatMap((unit) =>
      numbers(countOutputs(described)).map((output) => {
        const question = { pedal, supply, unit, output };
        return { ...placeOn(bare, question), shared: sharedOn(bare, question, wired.wiring) };
      }),
    );
  });
}

const belongsElsewhere = (supply: Supply, pedal: Pedal | undefined): boolean =>
  isOfOnePedal(supply.source) && (pedal === undefined || !isOwnSupplyOf(supply, pedal));

const numbers = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);

function sharedOn(kit: Kit, question: OutputQuestion, wiring: readonly WiredFeed[]): SharedPlace | null {
  const { pedal, supply, unit, output } = question;
  const there = wiring.filter(
    (wired) =>
      wired.pedal !== pedal && wired.supply === supply && wired.unit === unit && wired.outputs.includes(output),
  );
  if (there.length === 0) return null;
  const [trial] = checkOutput(withBoard(kit, { ...kit.board, wiring: there }), question).trials;
  if (trial === undefined || trial.findings.length > 0) return null;
  const berth = { supply, unit, outputs: [output], millivolts: trial.millivolts };
  return { berth, company: there.map((wired) => wired.pedal), trial };
}

function placeOn(kit: Kit, question: OutputQuestion): Omit<PlaceFor, 'shared'> {
  const { supply, unit, output } = question;
  const [trial] = checkOutput(kit, question).trials;
  if (trial === undefined) throw new RangeError(`${supply} has no setting at output ${output}`);
  const place = { supply, unit, outputs: [output] };
  const fits = trial.findings.length === 0;
  return { place, trial, berth: fits ? { ...place, millivolts: trial.millivolts } : null };
}

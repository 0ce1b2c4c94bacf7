import { pedalTiers } from '../../../src/domain/pedal-tier.js';
import { natureOf } from '../../../src/domain/source.js';
import { admits, exposedIn, hasOnePlace, takesThePlace, type GroundMode } from '../../../src/loadout/ground-mode.js';
import { likeOf, pedalsOf, type Bench } from '../../../src/loadout/bench.js';
import { isIsolated, type SupplyUses } from '../../../src/loadout/supply-uses.js';
import type { SoloUse } from '../../../src/loadout/uses.js';
import { addChains } from './chain-block.js';
import { addKept } from './keep-block.js';
import { addExposed, type CompactSheet } from './sheet.js';
import type { Block } from './model.js';
import { Sum } from './program-builder.js';

/** Adds the columns and rows of some units of one supply. */
export function addBlock(uses: SupplyUses, index: number, units: number, sheet: CompactSheet): Block {
  const counts = countColumns(uses, units, sheet);
  const solos = soloColumns(uses, counts, sheet);
  const chains = addChains({ uses, index, units, counts }, sheet);
  const kept = addKept({ uses, solos, chains }, sheet);
  const block = { uses, index, units, counts, solos, chains, kept };
  outputRows(block, sheet);
  joinRows(block, sheet);
  limitRows(block, sheet);
  linkRows(block, sheet);
  soleRows(block, sheet);
  return block;
}

/** One column a mode of the common ground; every unit in use has one mode. */
function countColumns(uses: SupplyUses, units: number, sheet: CompactSheet): Block['counts'] {
  const modes: readonly (GroundMode | null)[] = uses.modes.length === 0 ? [null] : uses.modes;
  const counts = modes.map((mode) => ({ mode, column: sheet.builder.column('units', units) }));
  const { bricks, sockets } = natureOf(uses.supply.source);
  for (const { column } of counts) {
    sheet.measures.bricks.add(column, bricks);
    sheet.measures.sockets.add(column, sockets);
  }
  if (counts.length > 1) {
    sheet.builder.atMost('units', new Sum().addEach(counts), units);
  }
  return counts;
}

function soloColumns(uses: SupplyUses, counts: Block['counts'], sheet: CompactSheet): Block['solos'] {
  return uses.solos.flatMap((use): Block['solos'] => {
    const like = likeOf(use.pedal, sheet.bench);
    if (isIsolated(use.outputs, uses.supply)) return [{ use, mode: null, column: soloColumn(use, false, sheet) }];
    return counts.flatMap(({ mode }) =>
      mode !== null && admits(mode, like) ? [{ use, mode, column: soloColumn(use, exposedIn(mode, like), sheet) }] : [],
    );
  });
}

function soloColumn(use: SoloUse, exposed: boolean, sheet: CompactSheet): number {
  const column = sheet.builder.column('solo', pedalsOf([use.pedal], sheet.bench));
  sheet.cover[use.pedal]?.add(column);
  for (const kind of use.route) sheet.leadUse[kind]?.add(column);
  if (use.join !== null) sheet.leadUse[use.join.lead]?.add(column);
  for (const tier of pedalTiers) if (use[tier]) sheet.measures[tier].add(column);
  if (exposed) addExposed(use.pedal, column, sheet);
  return column;
}

/**
 * Rule `setting` and the number of outputs: what hangs on a bank ≤ outputs × units. In a bank that is switched together
 * every unit takes one setting, and what hangs there at that setting ≤ outputs × units that take it. The common ground
 * counts the units of each mode by themselves.
 */
function outputRows(block: Block, sheet: CompactSheet): void {
  for (const [index, bank] of block.uses.supply.banks.entries()) {
    const modes = bank.isolated ? [null] : block.counts.map(({ mode }) => mode);
    for (const mode of modes) {
      const units = unitsOf(block, mode);
      const taken = bank.settings.map((_, setting) => outputsTaken(block, index, setting, mode));
      const inUse = taken.filter((sum) => sum.shares.length > 0);
      if (bank.switching === 'each' || inUse.length <= 1) {
        sheet.builder.atMost('outputs', total(inUse).addEach(units, -bank.outputs), 0);
        continue;
      }
      const chosen = new Sum();
      for (const sum of inUse) {
        const column = sheet.builder.column('setting', block.units);
        chosen.add(column);
        sheet.builder.atMost('outputs at a setting', sum.add(column, -bank.outputs), 0);
      }
      sheet.builder.atMost('settings', chosen.addEach(units, -1), 0);
    }
  }
}

/** Σ of the outputs of a bank that are taken at a setting, on units of a mode (null: on all units). */
function outputsTaken(block: Block, bank: number, setting: number, mode: GroundMode | null): Sum {
  const sum = new Sum();
  for (const solo of block.solos) {
    if (solo.mode !== mode) continue;
    const outputs = solo.use.outputs.filter((output) => output.bank === bank && output.setting === setting).length;
    if (outputs > 0) sum.add(solo.column, outputs);
  }
  for (const { pool, leads } of block.chains) {
    const matches = pool.output.bank === bank && pool.output.setting === setting;
    if (!matches || (mode !== null && pool.mode !== mode)) continue;
    sum.addEach(leads);
  }
  return sum;
}

/** A join needs two outputs of one unit: within a bank, at most half of its outputs, rounded down, a unit. */
function joinRows(block: Block, sheet: CompactSheet): void {
  for (const [index, bank] of block.uses.supply.banks.entries()) {
    const joined = new Sum();
    for (const { use, column } of block.solos) {
      if (use.join !== null && use.outputs.every((output) => output.bank === index)) joined.add(column);
    }
    if (bank.outputs % 2 === 1) {
      sheet.builder.atMost('joins', joined.addEach(block.counts, -Math.floor(bank.outputs / 2)), 0);
    }
  }
}

/** Rule `total`: Σ weight ≤ capacity × units. */
function limitRows(block: Block, sheet: CompactSheet): void {
  for (const [index, { capacity }] of block.uses.limits.entries()) {
    const weight = new Sum();
    for (const { use, column } of block.solos) weight.add(column, use.weights[index] ?? 0n);
    for (const { places } of block.chains) {
      for (const { place, column } of places) weight.add(column, place.weights[index] ?? 0n);
    }
    if (weight.shares.length > 0) sheet.builder.atMost('total', weight.addEach(block.counts, -capacity), 0);
  }
}

/**
 * A class of n pedals is fed by a supply at most n × its units. Implied for whole units, but it is what makes the
 * relaxation strong: without it a fraction of a unit would do.
 */
function linkRows(block: Block, sheet: CompactSheet): void {
  for (const [pedal, { members }] of sheet.bench.classes.entries()) {
    const all = usesOf(block, pedal, () => true);
    if (all.shares.length === 0) continue;
    sheet.builder.atMost('link', all.addEach(block.counts, -members.length), 0);
    if (block.counts.length === 1) continue;
    for (const { mode } of block.counts) {
      const there = usesOf(block, pedal, (use) => use === mode);
      if (there.shares.length > 0)
        sheet.builder.atMost('link', there.addEach(unitsOf(block, mode), -members.length), 0);
    }
  }
}

/** Σ of a class's uses whose common-ground mode passes the test; isolated uses have none. */
function usesOf(block: Block, pedal: number, test: (mode: GroundMode | null) => boolean): Sum {
  const sum = new Sum();
  for (const { use, mode, column } of block.solos) if (use.pedal === pedal && test(mode)) sum.add(column);
  for (const { pool, places } of block.chains) {
    if (!test(commonMode(block.uses, pool.output.bank, pool.mode))) continue;
    for (const { place, column } of places) if (place.pedal === pedal) sum.add(column);
  }
  return sum;
}

/** On a common ground that has one place for some pedals, one of them a unit at the most: the digital ones, or all. */
function soleRows(block: Block, sheet: CompactSheet): void {
  for (const { mode, column } of block.counts) {
    if (!hasOnePlace(mode)) continue;
    const fillers = soleFillers(block, mode, sheet.bench);
    if (fillers.shares.length > 0) sheet.builder.atMost('one place', fillers.add(column, -1), 0);
  }
}

function soleFillers(block: Block, mode: GroundMode, bench: Bench): Sum {
  const sum = new Sum();
  const fills = (pedal: number): boolean => takesThePlace(mode, likeOf(pedal, bench));
  for (const solo of block.solos) if (solo.mode === mode && fills(solo.use.pedal)) sum.add(solo.column);
  for (const { pool, places } of block.chains) {
    if (commonMode(block.uses, pool.output.bank, pool.mode) !== mode) continue;
    for (const { place, column } of places) if (fills(place.pedal)) sum.add(column);
  }
  return sum;
}

/** The mode of the common ground that a bank's chains hang on; null for isolated outputs. */
export const commonMode = (uses: SupplyUses, bank: number, mode: GroundMode): GroundMode | null =>
  isIsolated([{ bank }], uses.supply) ? null : mode;

/** What counts the block's units of a mode (null: all of them). */
const unitsOf = ({ counts }: Pick<Block, 'counts'>, mode: GroundMode | null): Block['counts'] =>
  counts.filter((count) => mode === null || count.mode === mode);

const total = (sums: readonly Sum[]): Sum => sums.reduce((all, sum) => all.plus(sum), new Sum());

import type { Board, Catalogue } from '../src/domain/board.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  factor,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../test/support/builders.js';

/** A bin packing problem; sizes in whole units. */
export type Packing = {
  readonly name: string;
  readonly capacity: number;
  readonly sizes: readonly number[];
  readonly bestKnown: number;
};

/**
 * Reads the OR-Library's format: how many problems there are; then for each its name, a line with capacity, number of items
 * and bins of the best known packing, and one size a line. @throws Error where the text ends too early or a number is none.
 */
export function readPackings(text: string): readonly Packing[] {
  const words = text.split(/\s+/).filter((word) => word !== '');
  let at = 0;
  const word = (): string => {
    const next = words[at];
    if (next === undefined) throw new Error(`the file ends after ${words.length} words; more are announced`);
    at += 1;
    return next;
  };
  const number = (): number => {
    const next = word();
    if (!/^\d+$/.test(next)) throw new Error(`word ${at} should be a number, not "${next}"`);
    return Number(next);
  };
  return Array.from({ length: number() }, () => {
    const [name, capacity, items, bestKnown] = [word(), number(), number(), number()];
    return { name, capacity, bestKnown, sizes: Array.from({ length: items }, number) };
  });
}

/** The packing as a board: items are pedals of so many milliamps, bins are outputs. */
export function packingBoard({ name, capacity, sizes }: Packing): { board: Board; catalogue: Catalogue } {
  const pedals = sizes.map((size, index) => pedalOf(`item-${index + 1}`, size));
  const policy = policyOf({ headroom: { alone: factor(1), chained: factor(1), supply: factor(1) } });
  const bin = supplyOf('bin', 10, [bankOf(1, [settingOf(9, capacity)])]);
  const lead = partOf('lead', 0, { kind: 'chain', tails: 8 });
  return { board: { ...boardOf(pedals, { policy }), name }, catalogue: catalogueOf([bin], [lead]) };
}

/** Small covers under dual prices of all sorts. */
import fc from 'fast-check';

import { featurePrices, type DualPrices } from '../../../solver/cover/dual-prices.js';
import type { BranchingConstraint } from '../../../solver/cover/program.js';
import { exactPrice, programOf, smallCovers, type SmallCover } from './small-covers.js';

export const scale = 2 ** 12;

/** Tags with the signs that rows allow, some of them far too high. */
const dualsFor = (cover: SmallCover): fc.Arbitrary<DualPrices> => {
  const { rows } = programOf(cover);
  return fc
    .array(fc.integer({ min: 0, max: 12 * scale }), { minLength: rows.length, maxLength: rows.length, size: 'max' })
    .map((sizes) => ({
      rows: Float64Array.from(rows, ({ sense }, row) => (sizes[row] ?? 0) * (sense === 'at least' ? 1 : -1)),
      conditions: new Float64Array(),
      scale,
    }));
};

export const priced = smallCovers.chain((cover) => fc.tuple(fc.constant(cover), dualsFor(cover)));

/** What the best column of each group is worth under the duals. */
export function exactWorths(
  cover: SmallCover,
  conditions: readonly BranchingConstraint[],
  duals: DualPrices,
): readonly number[] {
  const program = programOf(cover);
  const pricesIn = featurePrices(program, conditions, duals);
  const asked = { scale, floor: 0, caps: new Map<number, number>(), effort: 'exact' } as const;
  return program.groups.map((_, group) => exactPrice(cover.columns, { ...asked, group, duals: pricesIn(group) }).bound);
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { CaseModel } from '../../../../src/proof/unit/case-model.js';
import type { Fill } from '../../../../src/proof/unit/fills.js';
import { pack } from '../../../../src/proof/unit/pack.js';
import { packSingles } from '../../../../src/proof/unit/pack-singles.js';
import type { Bound } from '../../../../src/proof/unit/rents.js';
import { share, trying } from '../../../support/runs.js';

const runs = 400;
const few = (length: number, most: number): fc.Arbitrary<number[]> =>
  fc.array(fc.integer({ min: 0, max: most }), { minLength: length, maxLength: length });

type Drawn = { readonly model: CaseModel; readonly rented: Bound; readonly fills: readonly Fill[] };

/** Pedals of a few items for the outputs of some banks, within up to two totals, with rents that nothing beats. */
const drawnWith = (banks: number, outputs: number): fc.Arbitrary<Drawn> =>
  fc
    .record({ items: fc.integer({ min: 1, max: 5 }), totals: fc.integer({ min: 0, max: 2 }) })
    .chain(({ items, totals }) =>
      fc.record({
        counts: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: items, maxLength: items }),
        outputs: fc.array(fc.integer({ min: 1, max: outputs }), { minLength: banks, maxLength: banks }),
        caps: few(totals, 12),
        rents: fc.record({ items: few(items, 9), banks: few(banks, 6), caps: few(totals, 4) }),
        fills: fc.array(
          fc.record({
            item: fc.integer({ min: 0, max: items - 1 }),
            banks: fc.array(fc.integer({ min: 0, max: banks - 1 }), { minLength: 1, maxLength: 2 }),
            burdens: few(totals, 6),
            loss: fc.integer({ min: 0, max: 8 }),
          }),
          { maxLength: 12 },
        ),
      }),
    )
    .map(({ counts, outputs: of, caps, rents, fills }) => {
      const product = (amounts: readonly number[], prices: readonly number[]): number =>
        amounts.reduce((sum, amount, index) => sum + amount * (prices[index] ?? 0), 0);
      const most = product(counts, rents.items) + product(of, rents.banks) + product(caps, rents.caps);
      return {
        model: { counts, outputs: of, caps, places: [], chains: [] },
        rented: { most, rents, chains: [] },
        fills: fills
          .map(({ item, ...fill }) => ({ items: [item], ...fill }))
          .sort((one, other) => one.loss - other.loss),
      };
    });

/** What the best content of all is worth less than all rents. */
function leastByTrial({ model, rented, fills }: Drawn): number {
  const { counts, outputs, caps } = model;
  const { rents } = rented;
  const left = { items: [...counts], banks: [...outputs], caps: [...caps] };
  const take = (fill: Fill, by: number): void => {
    for (const item of fill.items) left.items[item] = (left.items[item] ?? 0) - by;
    for (const bank of fill.banks) left.banks[bank] = (left.banks[bank] ?? 0) - by;
    for (const [cap, burden] of fill.burdens.entries()) left.caps[cap] = (left.caps[cap] ?? 0) - by * burden;
  };
  const unused = (): number =>
    [['items', rents.items] as const, ['banks', rents.banks] as const, ['caps', rents.caps] as const].reduce(
      (sum, [kind, prices]) => left[kind].reduce((part, rest, index) => part + rest * (prices[index] ?? 0), sum),
      0,
    );
  let least = Infinity;
  const visit = (from: number, lost: number): void => {
    if (Object.values(left).some((rests) => rests.some((rest) => rest < 0))) return;
    least = Math.min(least, lost + unused());
    for (const [index, fill] of fills.entries()) {
      if (index < from) continue;
      take(fill, 1);
      visit(index, lost + fill.loss);
      take(fill, -1);
    }
  };
  visit(0, 0);
  return least;
}

describe('the best of what hangs by itself', () => {
  it.each([
    ['bank by bank', 3, 2],
    ['with more banks than tables tell apart', 11, 1],
  ])('loses what trying every content finds, %s', (_, banks, outputs) => {
    const seen = { within: 0, beyond: 0 };
    fc.assert(
      fc.property(drawnWith(banks, outputs), fc.integer({ min: 0, max: 120 }), (drawn, spare) => {
        const { model, rented, fills } = drawn;
        const least = leastByTrial(drawn);
        const expected = { kind: 'least', loss: least <= spare ? least : null };
        seen[least <= spare ? 'within' : 'beyond'] += 1;
        expect(packSingles(model, rented, fills, spare, 100_000)).toEqual(expected);
        expect(pack(model, rented.rents, fills, spare, { step: 1, mostNodes: 100_000 })).toEqual(expected);
      }),
      trying(runs),
    );
    expect(Math.min(seen.within, seen.beyond)).toBeGreaterThan(share(runs / 10));
  });

  it('is not told where that takes too long', () => {
    const model = { counts: [1], outputs: [1], caps: [], places: [], chains: [] };
    const rented = { most: 5, rents: { items: [3], banks: [2], caps: [] }, chains: [] };
    const fills = [{ items: [0], banks: [0], burdens: [], loss: 1 }];
    expect(packSingles(model, rented, fills, 5, 2)).toEqual({ kind: 'least', loss: 1 });
    expect(packSingles(model, rented, fills, 5, 1)).toEqual({ kind: 'gave up' });
  });
});

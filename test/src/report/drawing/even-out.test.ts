import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { evenOut, type Wish } from '../../../../src/report/drawing/even-out.js';

const wish: fc.Arbitrary<Wish> = fc.record({
  top: fc.integer({ min: -50, max: 400 }),
  weight: fc.integer({ min: 1, max: 3 }),
  height: fc.integer({ min: 5, max: 40 }),
});

/** How far all are from where they would like to be. */
const costOf = (wishes: readonly Wish[], tops: readonly number[]): number =>
  wishes.reduce((sum, { top, weight }, at) => sum + weight * ((tops[at] ?? 0) - top) ** 2, 0);

describe('things one below the other', () => {
  it('are where they want to be, where nothing is in the way', () => {
    const wishes = [10, 60, 200].map((top) => ({ top, weight: 1, height: 20 }));
    expect(evenOut(wishes, 5, 300).map(Math.round)).toEqual([10, 60, 200]);
  });

  it('push one another off alike', () => {
    const wishes = [50, 50].map((top) => ({ top, weight: 1, height: 20 }));
    expect(evenOut(wishes, 0, 300).map(Math.round)).toEqual([40, 60]);
  });

  it('stay apart and within their room, and none of them could move a little to gain', () => {
    fc.assert(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 8 }), fc.integer({ min: 0, max: 200 }), (wishes, spare) => {
        const bottom = wishes.reduce((sum, { height }) => sum + height + 4, -4) + spare;
        const fits = (tops: readonly number[]): boolean =>
          tops.every((top, at) => {
            const next = tops[at + 1];
            const end = top + (wishes[at]?.height ?? 0);
            return top >= -0.001 && end <= bottom + 0.001 && (next === undefined || next >= end + 4 - 0.001);
          });
        const tops = evenOut(wishes, 4, bottom);
        expect(fits(tops)).toBe(true);
        const cost = costOf(wishes, tops);
        for (const step of [-1, 1])
          for (let from = 0; from < tops.length; from += 1)
            for (let to = from; to < tops.length; to += 1) {
              const moved = tops.map((top, at) => (at >= from && at <= to ? top + step : top));
              if (fits(moved)) expect(costOf(wishes, moved)).toBeGreaterThanOrEqual(cost - 0.5);
            }
      }),
    );
  });

  it('need room', () => {
    expect(() => evenOut([{ top: 0, weight: 1, height: 20 }], 0, 10)).toThrow(RangeError);
    expect(evenOut([], 5, 0)).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { keepsCaps } from '../../../solver/cover/decisions.js';
import type { CoverProgram } from '../../../solver/cover/program.js';
import { exactPrice, leastCost, smallCovers, type SmallCover } from './small-covers.js';
import { ended, expectTrue } from './searching.js';
import { share, trying } from '../../support/runs.js';

describe('the search of a cover whose pricing is not exact', () => {
  it('is never wrong where pricing is not exact: bounds above the truth, columns that are missing', async () => {
    const seen = { optimal: 0, infeasible: 0, stopped: 0, stuck: 0 };
    const noise = fc.array(fc.constantFrom(0, 0, 0, 1, 1000, 2 ** 21, Infinity), {
      minLength: 12,
      maxLength: 12,
      size: 'max',
    });
    await fc.assert(
      fc.asyncProperty(smallCovers, noise, fc.boolean(), async (given, excesses, shy) => {
        const truth = leastCost(given);
        let asked = 0;
        const price =
          ({ columns }: SmallCover): CoverProgram<number>['price'] =>
          (request) => {
            const { bound, columns: found } = exactPrice(columns, request);
            const excess = excesses[(asked += 1) % excesses.length] ?? 0;
            if (request.effort === 'quick')
              return { bound: Math.max(bound, 0) + excess, columns: excess > 0 ? [] : found };
            return { bound: Math.max(bound, excess > 0 ? 0 : bound) + excess, columns: shy && excess > 1 ? [] : found };
          };
        // Where pricing hardly ever answers, every case of a tree that is far too large stays open.
        const remainingMs = (): number => 3_000 - asked;
        const { outcome, cover } = await ended(given, price, { remainingMs });
        seen[outcome.kind] += 1;
        expectTrue(outcome, cover, truth);
      }),
      trying(400),
    );
    expect(seen.optimal).toBeGreaterThan(share(100));
    expect(seen.infeasible).toBeGreaterThan(share(10));
  });

  it('settles what a group may be worth by what is on it, where pricing can tell only of few columns', async () => {
    const seen = { optimal: 0, infeasible: 0, stopped: 0, stuck: 0 };
    let told = 0;
    await fc.assert(
      fc.asyncProperty(smallCovers, async (given) => {
        let asked = 0;
        const price =
          ({ columns }: SmallCover): CoverProgram<number>['price'] =>
          (request) => {
            asked += 1;
            const { bound, columns: found } = exactPrice(columns, request);
            const ofGroup = columns.filter(({ group }) => group === request.group);
            const kept = ofGroup.filter(({ amounts }) => keepsCaps(amounts, request.caps));
            if (kept.length < ofGroup.length) told += 1;
            else if (kept.length > 1) return { bound: Math.max(0, bound) + 3 * request.scale, columns: found };
            return { bound, columns: found };
          };
        const { outcome, cover } = await ended(given, price, { remainingMs: () => 3_000 - asked });
        seen[outcome.kind] += 1;
        expectTrue(outcome, cover, leastCost(given));
      }),
      trying(300),
    );
    // Without telling columns apart by what is on them it is half as many.
    expect(seen.optimal).toBeGreaterThan(share(50));
    expect(told).toBeGreaterThan(share(300));
  });
});

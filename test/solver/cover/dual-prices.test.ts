import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { dualBound } from '../../../solver/cover/dual-prices.js';
import type { BranchingConstraint } from '../../../solver/cover/program.js';
import { cheapest, leastCost, programOf, type SmallCover } from './small-covers.js';
import { share, trying } from '../../support/runs.js';
import { exactWorths, priced, scale } from './priced-covers.js';

/** A condition on the columns of some groups that a solution keeps, whatever its bound. */
function conditionKept(
  { columns, demands }: SmallCover,
  contents: readonly number[],
  groups: readonly number[],
  bound: number,
): BranchingConstraint {
  const used = contents.filter((content) => groups.includes(columns[content]?.group ?? -1)).length;
  const unit = demands.length + 1;
  return used <= bound
    ? { feature: unit, groups, sense: 'at most', bound }
    : { feature: unit, groups, sense: 'at least', bound: bound + 1 };
}

describe('what duals prove', () => {
  it('of a case told apart by the columns of a set of groups is never more than the best in it', () => {
    const seen = { fewer: 0, more: 0, raised: 0 };
    const set = fc.subarray([0, 1, 2], { minLength: 1 });
    const drawn = fc.record({ set, bound: fc.nat(3), dual: fc.integer({ min: 0, max: 8 * scale }) });
    fc.assert(
      fc.property(priced, drawn, ([cover, { rows }], { set: groups, bound, dual }) => {
        const best = cheapest(cover);
        if (best === null) return;
        const program = programOf(cover);
        const condition = conditionKept(cover, best.contents, groups, bound);
        const decisions = { conditions: [condition], most: program.groups.map(({ most }) => most), taken: [] };
        const boundWith = (tag: number): number => {
          const duals = { rows, conditions: Float64Array.of(tag), scale };
          const worths = exactWorths(cover, decisions.conditions, duals);
          return dualBound(program, decisions, duals, worths).bound;
        };
        const shown = boundWith(condition.sense === 'at least' ? dual : 0 - dual);
        expect(shown).toBeLessThanOrEqual(scale * best.value);
        seen[condition.sense === 'at least' ? 'more' : 'fewer'] += 1;
        if (shown > boundWith(0)) seen.raised += 1;
      }),
      trying(2000),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(50)]).toEqual([what, true]);
  });

  it('is never more than the truth, however far above it the worths are', () => {
    const seen = { sure: 0, asTheyAre: 0, lessened: 0 };
    const excess = fc.constantFrom(0, 0, 1, scale, 40 * scale, Infinity);
    fc.assert(
      fc.property(priced, excess, ([cover, duals], more) => {
        const program = programOf(cover);
        const decisions = { conditions: [], most: program.groups.map(({ most }) => most), taken: [] };
        const worths = exactWorths(cover, [], duals).map((worth) => (worth === -Infinity ? worth : worth + more));
        const { bound, duals: proving, extra, doubtful } = dualBound(program, decisions, duals, worths);
        expect(bound).toBeLessThanOrEqual(scale * (leastCost(cover) ?? Infinity));
        expect(Math.min(...extra)).toBeGreaterThanOrEqual(0);
        expect([...proving.rows].every((dual) => Number.isInteger(dual))).toBe(true);
        expect(doubtful).toEqual(program.groups.flatMap((_, group) => ((worths[group] ?? 0) > 0 ? [group] : [])));
        seen[doubtful.length === 0 ? 'sure' : proving === duals ? 'asTheyAre' : 'lessened'] += 1;
      }),
      trying(2000),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(50)]).toEqual([what, true]);
  });

  it('loses a share where one column of many may be worth a little more than it costs', () => {
    const cover: SmallCover = {
      demands: [3],
      columns: [
        {
          group: 0,
          cost: 10,
          amounts: [
            [0, 1],
            [2, 1],
          ],
          content: 0,
        },
      ],
      groups: [{ name: 'group', most: 3 }],
      resource: null,
      units: null,
      without: [null],
    };
    const decisions = { conditions: [], most: [3], taken: [] };
    const duals = { rows: Float64Array.from([10 * scale, 0]), conditions: new Float64Array(), scale };
    const boundWith = (excess: number): number =>
      dualBound(programOf(cover), decisions, duals, [excess * scale]).bound / scale;
    expect(boundWith(0)).toBe(30);
    // Three times 2 less, or ten of twelve parts of 30.
    expect(boundWith(2)).toBeGreaterThan(24.9);
    expect(boundWith(2)).toBeLessThanOrEqual(25);
    expect(boundWith(30)).toBeGreaterThan(7.4);
  });
});

import fc from 'fast-check';
import { expect, it } from 'vitest';

import { ColumnPool } from '../../../solver/cover/column-pool.js';
import { RestrictedMaster } from '../../../solver/cover/restricted-master.js';
import { COLD } from '../../../solver/cover/simplex.js';
import { withCondition } from '../../../solver/cover/decisions.js';
import type { BranchingConstraint } from '../../../solver/cover/program.js';
import { share, trying } from '../../support/runs.js';
import { programOf, smallCovers, type SmallCover } from './small-covers.js';

/** Three of one pedal and two of another, for which no column has been made yet. */
const cover: SmallCover = {
  demands: [3, 2],
  columns: [{ group: 0, cost: 1, amounts: [[0, 1]], content: 0 }],
  groups: [{ name: 'supply', most: 9 }],
  resource: null,
  units: null,
  without: [null, null],
};

it('hands on duals whose sums are safe integers, however dear broken rows have become', () => {
  const program = programOf(cover);
  const [elastic, scale] = [2 ** 40, 2 ** 6];
  const decisions = { conditions: [], most: [9], taken: [] };
  const start = { columns: [], since: 0, state: COLD };
  const master = RestrictedMaster.from<number>({ program, pool: new ColumnPool(program), decisions, elastic }, start);
  const sums: number[] = [];
  do {
    master.solve();
    const { rows } = master.duals(scale);
    sums.push(program.rows.reduce((sum, { bound }, row) => sum + (rows[row] ?? 0) * bound, 0));
  } while (master.stiffen());
  expect(sums).toHaveLength(4);
  // As long as they are small enough they are told in full.
  expect(sums[0]).toBe(5 * elastic * scale);
  for (const sum of sums.slice(1)) {
    expect(sum).toBeLessThanOrEqual(2 ** 52);
    expect(sum).toBeGreaterThan(2 ** 51);
  }
});

it('comes to the same where something more is decided, whether it goes on or begins anew', () => {
  const seen = { dearer: 0, ruledOut: 0 };
  const conditions: fc.Arbitrary<BranchingConstraint> = fc.record({
    feature: fc.nat({ max: 5 }),
    groups: fc.constantFrom(null, [0], [1], [0, 1]),
    sense: fc.constantFrom('at most', 'at least'),
    bound: fc.constantFrom(0, 0, 1, 2, 3),
  });
  fc.assert(
    fc.property(smallCovers, conditions, (small, drawn) => {
      const program = programOf(small);
      const condition = { ...drawn, feature: Math.min(drawn.feature, program.unit) };
      const pool = new ColumnPool<number>(program);
      const columns = small.columns.map((column) => pool.add(column));
      const decisions = { conditions: [], most: program.groups.map(({ most }) => most), taken: [] };
      const relaxed = { program, pool, decisions, elastic: 1_000_000 };
      const master = RestrictedMaster.from(relaxed, { columns, since: 0, state: COLD });
      master.solve();
      const narrowed = master.narrowed(condition);
      narrowed.solve();
      const decided = { ...relaxed, decisions: withCondition(decisions, condition, program) };
      const anew = RestrictedMaster.from(decided, { columns, since: 0, state: COLD });
      anew.solve();
      // Rows are broken, or parts of columns that are no longer allowed are used, at a million each.
      const isPossible = anew.value < 50_000;
      expect(narrowed.value < 50_000).toBe(isPossible);
      if (!isPossible) return;
      // Rows are set apart by up to 1e-7, at a price of up to a million.
      expect(Math.abs(narrowed.value - anew.value)).toBeLessThan(1);
      if (anew.value > master.value + 1) seen.dearer += 1;
      if (condition.sense === 'at most' && condition.bound === 0) seen.ruledOut += 1;
    }),
    trying(1200),
  );
  expect(Math.min(seen.dearer, seen.ruledOut)).toBeGreaterThan(share(50));
});

it('has a basic column leave that has more by itself than a condition allows all columns together', () => {
  // One column that has two of a pedal; another that has one, for more than the price of both.
  const small: SmallCover = {
    ...cover,
    demands: [1],
    columns: [
      { group: 0, cost: 3, amounts: [[0, 2]], content: 0 },
      { group: 0, cost: 9, amounts: [[0, 1]], content: 1 },
    ],
    without: [null],
  };
  const program = programOf(small);
  const pool = new ColumnPool<number>(program);
  const columns = small.columns.map((column) => pool.add(column));
  const decisions = { conditions: [], most: [9], taken: [] };
  const relaxed = { program, pool, decisions, elastic: 1_000 };
  const before = RestrictedMaster.from(relaxed, { columns, since: 0, state: COLD });
  before.solve();
  expect([...before.point]).toEqual([expect.closeTo(0.5, 5), 0]);
  const condition: BranchingConstraint = { feature: 0, groups: null, sense: 'at most', bound: 1 };
  const decided = { ...relaxed, decisions: withCondition(decisions, condition, program) };
  const now = RestrictedMaster.from(decided, { columns, since: 0, state: before.state });
  now.solve();
  expect([...now.point]).toEqual([0, expect.closeTo(1, 5)]);
});

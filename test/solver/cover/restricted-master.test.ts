import { expect, it } from 'vitest';

import { ColumnPool } from '../../../solver/cover/column-pool.js';
import { RestrictedMaster } from '../../../solver/cover/restricted-master.js';
import { COLD } from '../../../solver/cover/simplex.js';
import { programOf, type SmallCover } from './small-covers.js';

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
  const master = new RestrictedMaster(program, new ColumnPool(program), decisions, elastic, start);
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

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { floorOf } from '../../../../bench/rival/solver/bound.js';
import { tightenTo } from '../../../../bench/rival/solver/tighten.js';
import { smallProgram, solutionsOf, worth } from '../../../solver/small-programs.js';
import { share, trying } from '../../../support/runs.js';

const multipliers = fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { maxLength: 4 });

test('no solution worth the target is lost, whatever the multipliers', () => {
  let kept = 0;
  let lowered = 0;
  fc.assert(
    fc.property(smallProgram, multipliers, fc.integer({ min: -5, max: 40 }), (small, multipliers, target) => {
      const { program, objective } = small;
      const tightened = tightenTo(target, program, objective, floorOf(program, objective, multipliers));
      const uppers = tightened.columns.map((column) => column.upper);
      lowered += uppers.filter((upper, index) => upper < (program.columns[index]?.upper ?? 0)).length;
      for (const point of solutionsOf(program)) {
        if (worth(objective, point) > target) continue;
        kept += 1;
        point.forEach((value, index) => expect(value).toBeLessThanOrEqual(uppers[index] ?? -1));
      }
    }),
    trying(1000),
  );
  expect(kept).toBeGreaterThan(share(1000));
  expect(lowered).toBeGreaterThan(share(300));
});

const columns = [1, 2, 3, 4].map((index) => ({ name: `column ${index}`, upper: 1 }));
const objective = {
  name: 'cost',
  terms: [10, 20, 30, 40].map((coefficient, column) => ({ column, coefficient })),
  constant: 3,
};

test('columns dearer than the target go', () => {
  const program = { columns, rows: [] };
  const tightened = tightenTo(32, program, objective, floorOf(program, objective, []));
  expect(tightened.columns.map((column) => column.upper)).toEqual([1, 1, 0, 0]);
});

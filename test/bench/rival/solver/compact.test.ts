import fc from 'fast-check';
import { expect, test } from 'vitest';

import { compact } from '../../../../bench/rival/solver/compact.js';
import { smallProgram, solutionsOf, worth } from '../../../solver/small-programs.js';
import { share, trying } from '../../../support/runs.js';

test('a compact program has the same solutions at the same values', () => {
  const counted = { compact: 0, broken: 0, fewerColumns: 0, fewerRows: 0 };
  fc.assert(
    fc.property(smallProgram, ({ program, objective }) => {
      const solutions = solutionsOf(program);
      const compacted = compact(program, objective);
      counted[compacted.kind] += 1;
      if (compacted.kind === 'broken') {
        expect(solutions).toEqual([]);
        return;
      }
      const { restated } = compacted;
      counted.fewerColumns += restated.program.columns.length < program.columns.length ? 1 : 0;
      counted.fewerRows += restated.program.rows.length < program.rows.length ? 1 : 0;
      const restored = solutionsOf(restated.program).map((point) => {
        expect(worth(restated.objective, point)).toBe(worth(objective, restated.restore(point)));
        return restated.restore(point);
      });
      expect(restored.map(String).sort()).toEqual(solutions.map(String).sort());
    }),
    trying(2000),
  );
  for (const count of Object.values(counted)) expect(count).toBeGreaterThan(share(100));
});

const term = (column: number, coefficient: number) => ({ column, coefficient });
const columns = [
  { name: 'x', upper: 9 },
  { name: 'y', upper: 9 },
];
const nothing = { name: 'nothing', terms: [], constant: 0 };

test('a row is divided by its greatest common divisor and its bounds are rounded inwards', () => {
  const row = { name: 'money', terms: [term(0, 1200), term(1, 4500)], lower: 1000, upper: 9999 };
  expect(compact({ columns, rows: [row] }, nothing)).toMatchObject({
    restated: {
      program: { rows: [{ name: 'money', terms: [term(0, 4), term(1, 15)], lower: 4, upper: 33 }] },
    },
  });
});

test('an equation that no integers solve is broken', () => {
  const row = { name: 'odd', terms: [term(0, 4), term(1, 6)], lower: 7, upper: 7 };
  expect(compact({ columns, rows: [row] }, nothing)).toEqual({ kind: 'broken', row: 'odd' });
});

test('a column that a row keeps at 0 goes', () => {
  const row = { name: 'none', terms: [term(0, 1)], lower: null, upper: 0 };
  const compacted = compact({ columns, rows: [row] }, nothing);
  expect(compacted).toMatchObject({ restated: { program: { columns: [{ name: 'y', upper: 9 }], rows: [] } } });
  expect(compacted.kind === 'compact' && compacted.restated.restore([5])).toEqual([0, 5]);
});

test('a point that is too short is not taken for a solution', () => {
  const compacted = compact({ columns, rows: [] }, nothing);
  expect(compacted.kind === 'compact' && compacted.restated.restore([5])).toEqual([5, Number.NaN]);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { checkPoint } from '../../solver/check.js';
import type { Program } from '../../solver/program.js';
import { isSolution, smallProgram } from './small-programs.js';
import { share, trying } from '../support/runs.js';

const program: Program = {
  columns: [
    { name: 'x', upper: 4 },
    { name: 'y', upper: 2 },
  ],
  rows: [
    {
      name: 'cover',
      terms: [
        { column: 0, coefficient: 2 },
        { column: 1, coefficient: 3 },
      ],
      lower: 7,
      upper: 9,
    },
  ],
};

test('a solution has no faults', () => {
  expect(checkPoint(program, [2, 1])).toEqual([]);
});

test('a broken row is named with its activity', () => {
  const fault = { kind: 'broken row', row: 0, name: 'cover', lower: 7, upper: 9 };
  expect(checkPoint(program, [0, 2])).toEqual([{ ...fault, activity: 6n }]);
  expect(checkPoint(program, [4, 1])).toEqual([{ ...fault, activity: 11n }]);
});

test('values out of bounds are named', () => {
  expect(checkPoint(program, [5, -1])).toEqual([
    { kind: 'out of bounds', column: 0, value: 5, upper: 4 },
    { kind: 'out of bounds', column: 1, value: -1, upper: 2 },
  ]);
});

test.each([0.5, 2.0000001, Number.NaN, Infinity, 2 ** 53])('%d is no integer to rely on', (value) => {
  expect(checkPoint(program, [value, 1])).toEqual([{ kind: 'not an integer', column: 0, value }]);
});

test('a point of another length is refused', () => {
  expect(checkPoint(program, [2])).toEqual([{ kind: 'length', expected: 2, found: 1 }]);
  expect(checkPoint(program, [2, 1, 0])).toEqual([{ kind: 'length', expected: 2, found: 3 }]);
});

test('a row beyond the precision of doubles is checked exactly', () => {
  const wide: Program = {
    columns: [
      { name: 'x', upper: 2 },
      { name: 'y', upper: 1 },
    ],
    rows: [
      {
        name: 'wide',
        terms: [
          { column: 0, coefficient: Number.MAX_SAFE_INTEGER },
          { column: 1, coefficient: 1 },
        ],
        lower: null,
        upper: Number.MAX_SAFE_INTEGER,
      },
    ],
  };
  expect(checkPoint(wide, [1, 0])).toEqual([]);
  expect(checkPoint(wide, [1, 1])).toMatchObject([{ kind: 'broken row', activity: 2n ** 53n }]);
});

test('points are faultless exactly when every bound and every row holds', () => {
  const counted = { solutions: 0, others: 0 };
  const values = fc.array(fc.integer({ min: -1, max: 4 }), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(smallProgram, values, ({ program }, values) => {
      const point = values.slice(0, program.columns.length);
      const inside = program.columns.every(({ upper }, index) => {
        const value = point[index] ?? -1;
        return value >= 0 && value <= upper;
      });
      const expected = inside && isSolution(program, point);
      counted[expected ? 'solutions' : 'others'] += 1;
      expect(checkPoint(program, point).length === 0).toBe(expected);
    }),
    trying(1000),
  );
  expect(counted.solutions).toBeGreaterThan(share(50));
  expect(counted.others).toBeGreaterThan(share(50));
});

import fc from 'fast-check';
import { expect, test } from 'vitest';

import { ceilDivide, clampToSafe, floorDivide, objectiveValue } from '../../../../bench/rival/solver/integers.js';
import { smallProgram, sum } from '../../../solver/small-programs.js';
import { trying } from '../../../support/runs.js';

test('division rounds down and up, also below zero', () => {
  expect([floorDivide(7n, 2n), floorDivide(-7n, 2n), floorDivide(-8n, 2n)]).toEqual([3n, -4n, -4n]);
  expect([ceilDivide(7n, 2n), ceilDivide(-7n, 2n), ceilDivide(8n, 2n)]).toEqual([4n, -3n, 4n]);
});

test('what is not safe is clamped', () => {
  expect(clampToSafe(2n ** 60n)).toBe(Number.MAX_SAFE_INTEGER);
  expect(clampToSafe(-(2n ** 60n))).toBe(Number.MIN_SAFE_INTEGER);
  expect(clampToSafe(-12n)).toBe(-12);
});

test('the objective is its constant and its terms', () => {
  fc.assert(
    fc.property(smallProgram, ({ program, objective }) => {
      const point = program.columns.map((column) => column.upper);
      expect(objectiveValue(objective, point)).toBe(objective.constant + sum(objective.terms, point));
    }),
    trying(300),
  );
});

test('an objective beyond the safe integers is refused', () => {
  const objective = { name: 'cost', terms: [{ column: 0, coefficient: Number.MAX_SAFE_INTEGER }], constant: 0 };
  expect(objectiveValue(objective, [1])).toBe(Number.MAX_SAFE_INTEGER);
  expect(() => objectiveValue(objective, [2])).toThrow(RangeError);
});

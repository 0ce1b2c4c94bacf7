import fc from 'fast-check';
import { expect, test } from 'vitest';

import { lowerBound, objectiveStep, refutes } from '../../../../bench/rival/solver/bound.js';
import type { Objective, Program } from '../../../../solver/program.js';
import { leastValue, smallProgram, solutionsOf } from '../../../solver/small-programs.js';
import { share, trying } from '../../../support/runs.js';

/** Any multipliers: sensible ones, wild ones, and what a broken engine may return. */
const multipliers = fc.array(
  fc.oneof(
    fc.double({ min: -12, max: 12, noNaN: true }),
    fc.integer({ min: -10, max: 10 }),
    fc.double(),
    fc.constantFrom(Number.NaN, Infinity, -Infinity, 1 / 3, -1e-9),
  ),
  { maxLength: 5 },
);

test('no multipliers lift the bound above the optimum', () => {
  let solvable = 0;
  fc.assert(
    fc.property(smallProgram, multipliers, (small, multipliers) => {
      const least = leastValue(small);
      if (least === null) return;
      solvable += 1;
      const bound = lowerBound(small.program, small.objective, multipliers);
      expect(bound).toBeLessThanOrEqual(least);
      expect(bound).toBeGreaterThanOrEqual(small.objective.constant);
    }),
    trying(3000),
  );
  expect(solvable).toBeGreaterThan(share(1000));
});

test('no multipliers refute a program that has a solution', () => {
  let solvable = 0;
  fc.assert(
    fc.property(smallProgram, multipliers, ({ program }, multipliers) => {
      if (solutionsOf(program).length === 0) return;
      solvable += 1;
      expect(refutes(program, multipliers)).toBe(false);
    }),
    trying(3000),
  );
  expect(solvable).toBeGreaterThan(share(1000));
});

const term = (column: number, coefficient: number) => ({ column, coefficient });

/** x + y ≥ 1, y + z ≥ 1, x + z ≥ 1: the relaxation's optimum is 3/2 with the duals 1/2, the integer one is 2. */
const triangle: Program = {
  columns: ['x', 'y', 'z'].map((name) => ({ name, upper: 1 })),
  rows: [
    { name: 'xy', terms: [term(0, 1), term(1, 1)], lower: 1, upper: null },
    { name: 'yz', terms: [term(1, 1), term(2, 1)], lower: 1, upper: null },
    { name: 'xz', terms: [term(0, 1), term(2, 1)], lower: 1, upper: null },
  ],
};
const costOf = (coefficient: number, constant: number): Objective => ({
  name: 'cost',
  terms: [0, 1, 2].map((column) => term(column, coefficient)),
  constant,
});

test('a fractional bound is rounded up to the next value of the objective', () => {
  expect(lowerBound(triangle, costOf(1, 0), [0.5, 0.5, 0.5])).toBe(2);
  expect(lowerBound(triangle, costOf(100, 7), [50, 50, 50])).toBe(207);
  expect(lowerBound(triangle, costOf(100, -7), [])).toBe(-7);
});

test('duals with the noise of floating point still give the bound that is a whole number', () => {
  const cover: Program = { ...triangle, rows: triangle.rows.map((row) => ({ ...row, lower: 2 })) };
  expect(lowerBound(cover, costOf(1, 0), [0.5 + 1e-12, 0.5 - 1e-12, 0.5 + 1e-12])).toBe(3);
});

test('multipliers count only on the side where their row is bounded', () => {
  expect(lowerBound(triangle, costOf(1, 0), [-0.5, -0.5, -0.5])).toBe(0);
  const equation: Program = {
    columns: [
      { name: 'x', upper: 5 },
      { name: 'y', upper: 5 },
    ],
    rows: [
      { name: 'sum', terms: [term(0, 1), term(1, 1)], lower: 4, upper: 4 },
      { name: 'most', terms: [term(0, 1)], lower: null, upper: 1 },
    ],
  };
  // x costs 1 and y costs 3: at most one x, hence 1 + 3 · 3 = 10.
  const cost = { name: 'cost', terms: [term(0, 1), term(1, 3)], constant: 0 };
  expect(lowerBound(equation, cost, [3, -2])).toBe(10);
});

test('a ray refutes a program without solution', () => {
  const program: Program = {
    columns: [{ name: 'x', upper: 9 }],
    rows: [
      { name: 'least', terms: [term(0, 2)], lower: 7, upper: null },
      { name: 'most', terms: [term(0, 1)], lower: null, upper: 3 },
    ],
  };
  expect(refutes(program, [0.5, -1])).toBe(true);
  expect(refutes(program, [0.5, 1])).toBe(false);
});

test('the step of an objective is the greatest common divisor of its coefficients', () => {
  expect(objectiveStep({ name: 'cost', terms: [term(0, 1200), term(1, 450)], constant: 7 })).toBe(150);
  expect(objectiveStep({ name: 'cost', terms: [], constant: 7 })).toBe(0);
});

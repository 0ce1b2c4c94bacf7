import { expect, test } from 'vitest';

import { lowerBound, refutes } from '../../../../bench/rival/solver/bound.js';
import { load } from '../../../../bench/rival/engines/highs.js';
import type { Program } from '../../../../solver/program.js';
import { conforms } from '../../../solver/engines/conformance.js';

conforms(load);

const term = (column: number, coefficient: number) => ({ column, coefficient });
const columns = ['x', 'y', 'z'].map((name) => ({ name, upper: 4 }));
const cost = { name: 'cost', terms: [term(0, 300), term(1, 200), term(2, 500)], constant: 10 };

test('its duals make the bound of the relaxation, in the units of the objective', async () => {
  const program: Program = {
    columns,
    rows: [
      { name: 'xy', terms: [term(0, 1), term(1, 1)], lower: 2, upper: null },
      { name: 'yz', terms: [term(1, 1), term(2, 2)], lower: 3, upper: null },
      { name: 'y', terms: [term(1, 1)], lower: null, upper: 1 },
    ],
  };
  const duals = (await load()).relaxationDuals(program, cost, 5_000);
  // y = 1, x = 1, z = 1 costs 1000, and no relaxed point costs less.
  expect(duals).toHaveLength(3);
  expect(lowerBound(program, cost, duals ?? [])).toBe(1010);
});

test('its ray refutes a program whose relaxation has no solution', async () => {
  const program: Program = {
    columns,
    rows: [
      { name: 'least', terms: [term(0, 1), term(1, 2), term(2, 1)], lower: 9, upper: null },
      { name: 'most', terms: [term(0, 1), term(1, 3), term(2, 1)], lower: null, upper: 8 },
    ],
  };
  const ray = (await load()).relaxationDuals(program, cost, 5_000);
  expect(refutes(program, ray ?? [])).toBe(true);
});

/**
 * Three like units of a supply of two outputs, and another supply, for four pedals of which any may be left out. With all
 * presolve rules on, HiGHS 1.15.1 calls it infeasible, though leaving out all four is a solution.
 */
const leaveOutAny = (): { program: Program; worth: (point: readonly number[]) => number } => {
  const names = 33;
  const rows: Program['rows'][number][] = [];
  const row = (terms: readonly (readonly [number, number])[], lower: number | null, upper: number | null): void => {
    rows.push({ name: `row ${rows.length}`, terms: terms.map(([column, share]) => term(column, share)), lower, upper });
  };
  const atMost = (upper: number, ...terms: readonly (readonly [number, number])[]): void => row(terms, null, upper);
  for (const at of [0, 8, 16]) {
    const [quiet, noisy, sole] = [at, at + 1, at + 2];
    const units = [quiet, noisy, sole].map((column) => [column, -1] as const);
    const [a, b, c, d, e] = [at + 3, at + 4, at + 5, at + 6, at + 7];
    atMost(1, [quiet, 1], [noisy, 1], [sole, 1]);
    atMost(0, [a, 1], [c, 1], [quiet, -1]);
    atMost(0, [b, 1], [d, 1], [noisy, -1]);
    atMost(0, [e, 1], [sole, -1]);
    atMost(0, [a, 5], [b, 5], [c, 60], [d, 60], [e, 30], [quiet, -36], [noisy, -36], [sole, -36]);
    atMost(0, [a, 1], [b, 1], ...units);
    atMost(0, [a, 1], [quiet, -1]);
    atMost(0, [b, 1], [noisy, -1]);
    atMost(0, [c, 1], [d, 1], ...units);
    atMost(0, [c, 1], [quiet, -1]);
    atMost(0, [d, 1], [noisy, -1]);
    atMost(0, [e, 1], ...units);
    atMost(0, [e, 1], [sole, -1]);
  }
  for (const at of [8, 16]) {
    atMost(0, [at, 1], [at + 1, 1], [at + 2, 1], [at - 8, -1], [at - 7, -1], [at - 6, -1]);
  }
  atMost(1, [24, 1], [25, 1], [26, 1]);
  atMost(0, [27, 1], [28, 1], [24, -1], [25, -1], [26, -1]);
  atMost(0, [27, 1], [28, 6], [24, -12], [25, -12], [26, -12]);
  atMost(0, [27, 1], [24, -1], [25, -1], [26, -1]);
  atMost(0, [28, 1], [24, -1], [25, -1], [26, -1]);
  const once = (...terms: readonly number[]): void =>
    row(
      terms.map((column) => [column, 1] as const),
      1,
      1,
    );
  once(3, 4, 11, 12, 19, 20, 27, 29);
  once(30);
  once(5, 6, 13, 14, 21, 22, 31);
  once(7, 15, 23, 28, 32);
  const columns = Array.from({ length: names }, (_, index) => ({ name: `column ${index}`, upper: 1 }));
  const worth = (point: readonly number[]): number => [29, 30, 31, 32].reduce((sum, at) => sum + (point[at] ?? 0), 0);
  return { program: { columns, rows }, worth };
};

test('a solvable program is not called infeasible', async () => {
  const { program, worth } = leaveOutAny();
  const leftOut = { name: 'left out', terms: [29, 30, 31, 32].map((column) => term(column, 1)), constant: 0 };
  const claim = (await load()).solve(program, leftOut, 5_000);
  // The second pedal can never be fed, and the third is too much for a total: 60 of 36.
  expect(claim.kind === 'optimal' && worth(claim.point)).toBe(2);
});

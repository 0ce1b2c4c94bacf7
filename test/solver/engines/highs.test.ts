import { expect, test } from 'vitest';

import { lowerBound, refutes } from '../../../solver/bound.js';
import { load } from '../../../solver/engines/highs.js';
import type { Program } from '../../../solver/program.js';
import { conforms } from './conformance.js';

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
  const duals = (await load()).relaxationDuals?.(program, cost, 5_000);
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
  const ray = (await load()).relaxationDuals?.(program, cost, 5_000);
  expect(refutes(program, ray ?? [])).toBe(true);
});

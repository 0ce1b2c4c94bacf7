import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';

import type { SimplexStart } from '../../../solver/cover/simplex.js';
import {
  linearOracle,
  programsOf,
  prohibitive,
  simplexOf,
  type LinearProgram,
  type Oracle,
} from './linear-programs.js';
import { share, trying } from '../../support/runs.js';

const covers = programsOf({
  rows: [8, 14],
  columns: 40,
  senses: ['at least'],
  entry: fc.integer({ min: 1, max: 4 }),
  cost: fc.integer({ min: 1, max: 20 }),
  bound: fc.integer({ min: 1, max: 9 }),
  entries: 5,
});
/** And with other bounds. */
const movedCovers = fc
  .record({ before: covers, by: fc.array(fc.integer({ min: -8, max: 16 }), { minLength: 14, maxLength: 14 }) })
  .map(({ before: { rows, columns }, by }) => ({
    before: { rows, columns },
    moved: { rows: rows.map((row, at) => ({ ...row, bound: row.bound + (by[at] ?? 0) })), columns },
  }));
const manySteps = 40;

let oracle: Oracle;
beforeAll(async () => {
  oracle = await linearOracle();
});

function stateOf(program: LinearProgram): SimplexStart {
  const simplex = simplexOf(program, prohibitive);
  simplex.solve(5_000);
  return simplex.state;
}

/** What it comes to after no step, one step and so on from a state. */
const stepByStep = (program: LinearProgram, state: SimplexStart): readonly number[] =>
  [...Array(manySteps).keys()].map((steps) => {
    const warm = simplexOf(program, prohibitive, state);
    warm.solve(steps);
    return warm.value;
  });

it('rises step by step to what all rows come to', () => {
  let longer = 0;
  fc.assert(
    fc.property(movedCovers, ({ before, moved }) => {
      const expected = oracle(moved);
      if (expected === null) return;
      const values = stepByStep(moved, stateOf(before));
      for (const [steps, value] of values.entries()) {
        expect(value).toBeGreaterThan((values[steps - 1] ?? -Infinity) - 1e-2);
        expect(value).toBeLessThan(expected + 1e-2);
      }
      if ((values[2] ?? Infinity) < expected - 1e-2) longer += 1;
      expect(Math.abs((values.at(-1) ?? Infinity) - expected)).toBeLessThan(1e-2);
    }),
    trying(150),
  );
  expect(longer).toBeGreaterThan(share(50));
});

it('leaves it to the primal method, which falls step by step to that, where a column is worth more than it costs', () => {
  let longer = 0;
  fc.assert(
    fc.property(movedCovers, ({ before, moved: { rows, columns } }) => {
      const moved = { rows, columns: [...columns, { rows: [...rows.keys()], values: rows.map(() => 1), cost: 1 }] };
      const expected = oracle(moved);
      if (expected === null) return;
      const values = stepByStep(moved, stateOf(before));
      for (const value of values.slice(1)) expect(value).toBeGreaterThan(expected - 1e-2);
      if ((values[2] ?? 0) > expected + 1e-2) longer += 1;
    }),
    trying(150),
  );
  expect(longer).toBeGreaterThan(share(50));
});

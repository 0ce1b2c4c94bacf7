import { expect, test } from 'vitest';

import { Standing, type CompactProgress } from '../../../../bench/rival/solver/standing.js';

const program = {
  columns: [{ name: 'x', upper: 9 }],
  rows: [{ name: 'least', terms: [{ column: 0, coefficient: 2 }], lower: 5, upper: null }],
};
const objective = { name: 'cost', terms: [{ column: 0, coefficient: 10 }], constant: 1 };

test('only solutions are taken, only better ones are kept, and all progress is told', () => {
  const told: CompactProgress[] = [];
  const standing = new Standing(program, objective, (progress) => told.push(progress));
  expect(standing.offer([2])).toBeNull();
  expect(standing.offer([3.5])).toBeNull();
  expect(standing.incumbent).toBeNull();
  expect(standing.offer([5])).toBe(51);
  expect(standing.offer([6])).toBe(61);
  expect(standing.incumbent).toEqual({ point: [5], value: 51 });
  standing.raise(31);
  standing.raise(21);
  expect(standing.closed).toBe(false);
  expect(standing.offer([3])).toBe(31);
  expect(standing.closed).toBe(true);
  expect(told).toEqual([
    { value: 51, bound: 1 },
    { value: 51, bound: 31 },
    { value: 31, bound: 31 },
  ]);
});

test('a bound alone closes nothing', () => {
  const standing = new Standing(program, objective, undefined);
  standing.raise(1000);
  expect(standing.closed).toBe(false);
  expect(standing.bound).toBe(1000);
});

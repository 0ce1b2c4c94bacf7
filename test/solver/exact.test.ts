import fc from 'fast-check';
import { expect, test } from 'vitest';

import { exactSum, greatestCommonDivisor } from '../../solver/exact.js';
import { trying } from '../support/runs.js';

test('the greatest common divisor minds neither sign nor order', () => {
  expect(greatestCommonDivisor(-12, 18)).toBe(6);
  expect(greatestCommonDivisor(18, -12)).toBe(6);
  expect(greatestCommonDivisor(0, -7)).toBe(7);
  expect(greatestCommonDivisor(0, 0)).toBe(0);
});

test('a sum beyond 2^53 is exact', () => {
  const terms = [
    { column: 0, coefficient: 2 ** 52 },
    { column: 1, coefficient: 1 },
  ];
  expect(exactSum(terms, [2, 1])).toBe(2n ** 53n + 1n);
});

test('a sum whose parts cancel is exact', () => {
  const terms = [
    { column: 0, coefficient: Number.MAX_SAFE_INTEGER },
    { column: 1, coefficient: -Number.MAX_SAFE_INTEGER },
    { column: 2, coefficient: 1 },
  ];
  expect(exactSum(terms, [3, 3, 1])).toBe(1n);
});

test('sums equal those of big integers', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.maxSafeInteger(), fc.integer({ min: -1000, max: 1000 }))), (pairs) => {
      const terms = pairs.map(([coefficient], column) => ({ column, coefficient }));
      const values = pairs.map(([, value]) => value);
      const expected = pairs.reduce((total, [coefficient, value]) => total + BigInt(coefficient) * BigInt(value), 0n);
      expect(exactSum(terms, values)).toBe(expected);
    }),
    trying(300),
  );
});

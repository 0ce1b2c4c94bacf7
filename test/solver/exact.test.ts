import fc from 'fast-check';
import { expect, test } from 'vitest';

import { ceilDivide, clampToSafe, exactSum, floorDivide, greatestCommonDivisor } from '../../solver/exact.js';
import { trying } from '../support/runs.js';

test('the greatest common divisor minds neither sign nor order', () => {
  expect(greatestCommonDivisor(-12, 18)).toBe(6);
  expect(greatestCommonDivisor(18, -12)).toBe(6);
  expect(greatestCommonDivisor(0, -7)).toBe(7);
  expect(greatestCommonDivisor(0, 0)).toBe(0);
});

test('division rounds down and up, also below zero', () => {
  expect([floorDivide(7n, 2n), floorDivide(-7n, 2n), floorDivide(-8n, 2n)]).toEqual([3n, -4n, -4n]);
  expect([ceilDivide(7n, 2n), ceilDivide(-7n, 2n), ceilDivide(8n, 2n)]).toEqual([4n, -3n, 4n]);
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

test('what is not safe is clamped', () => {
  expect(clampToSafe(2n ** 60n)).toBe(Number.MAX_SAFE_INTEGER);
  expect(clampToSafe(-(2n ** 60n))).toBe(Number.MIN_SAFE_INTEGER);
  expect(clampToSafe(-12n)).toBe(-12);
});

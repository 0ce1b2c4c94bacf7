import type { ProgramPoint, LinearTerm } from './program.js';

/** The first integer that doubles no longer tell from its neighbour: sums of a smaller magnitude are exact. */
const FIRST_INEXACT = 2 ** 53;

/** The greatest common divisor of two integers, never negative; gcd(0, n) is |n|. */
export function greatestCommonDivisor(first: number, second: number): number {
  let [larger, smaller] = [Math.abs(first), Math.abs(second)];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

/**
 * Σ coefficient · value over the terms, without rounding. Coefficients and values are safe integers.
 * Plain numbers carry the sum while the magnitudes add up to less than 2^53; only beyond that big integers do.
 */
export function exactSum(terms: readonly LinearTerm[], values: ProgramPoint): bigint {
  let sum = 0;
  let magnitude = 0;
  for (const { column, coefficient } of terms) {
    const product = coefficient * (values[column] ?? 0);
    sum += product;
    magnitude += Math.abs(product);
  }
  if (magnitude < FIRST_INEXACT) return BigInt(sum);
  return terms.reduce((total, term) => total + BigInt(term.coefficient) * BigInt(values[term.column] ?? 0), 0n);
}

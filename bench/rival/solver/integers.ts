import { exactSum } from '../../../solver/exact.js';
import type { Objective, ProgramPoint } from '../../../solver/program.js';

/** ⌊numerator / denominator⌋ for a positive denominator. */
export function floorDivide(numerator: bigint, denominator: bigint): bigint {
  const quotient = numerator / denominator;
  return numerator % denominator < 0n ? quotient - 1n : quotient;
}

/** ⌈numerator / denominator⌉ for a positive denominator. */
export const ceilDivide = (numerator: bigint, denominator: bigint): bigint => -floorDivide(-numerator, denominator);

/** The nearest safe integer to an exact one: itself wherever it is safe. */
export function clampToSafe(value: bigint): number {
  if (value > BigInt(Number.MAX_SAFE_INTEGER)) return Number.MAX_SAFE_INTEGER;
  if (value < BigInt(Number.MIN_SAFE_INTEGER)) return Number.MIN_SAFE_INTEGER;
  return Number(value);
}

/** The objective's exact value at a point of safe integers. Throws RangeError when it is not a safe integer. */
export function objectiveValue(objective: Objective, point: ProgramPoint): number {
  const value = Number(exactSum(objective.terms, point) + BigInt(objective.constant));
  if (!Number.isSafeInteger(value)) throw new RangeError(`objective ${objective.name}: ${value} is not a safe integer`);
  return value;
}

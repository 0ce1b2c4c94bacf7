/**
 * Bounds that need no trust in any engine. For any multipliers y of the rows, every solution x satisfies
 *
 *     c·x  =  y·(A x) + (c − yᵀA)·x  ≥  Σ y_i b_i + Σ_j r_j x_j,   r = c − yᵀA,
 *
 * where b_i is the lower bound of the row for y_i > 0 and its upper bound for y_i < 0, and y_i = 0 where that bound is
 * missing. Good multipliers (the duals of the relaxation) make the bound good; bad ones make it weak, never wrong.
 */
import { greatestCommonDivisor } from '../../../solver/exact.js';
import { ceilDivide, clampToSafe } from './integers.js';
import type { Objective, Program, ProgramRow } from '../../../solver/program.js';

/** Multipliers are held as integers over 2^40. */
const SCALE_BITS = 40n;
const SCALE = 2 ** 40;

/**
 * Duals come with a relative noise of about 1e-12, which leaves reduced costs slightly below zero; times a column's upper
 * bound that can cost more than the rounding up wins back. Shrinking all multipliers a little lifts them above zero.
 */
const SHRINKAGE = 1 - 2 ** -30;

/** What multipliers say, in exact integers over 2^40 and without the objective's constant. */
export type Floor = {
  /** No solution costs less. */
  readonly least: bigint;
  /** By how much one unit of each column lifts the cost above `least`, where positive. */
  readonly reducedCosts: readonly bigint[];
  readonly denominator: bigint;
};

/** The floor under an objective of the program that the multipliers, one a row, make. */
export function floorOf(program: Program, objective: Objective, multipliers: readonly number[]): Floor {
  const reducedCosts = program.columns.map(() => 0n);
  for (const { column, coefficient } of objective.terms) reducedCosts[column] = BigInt(coefficient) << SCALE_BITS;
  let least = 0n;
  program.rows.forEach((row, index) => {
    const multiplier = exactMultiplier(row, multipliers[index] ?? 0);
    if (multiplier === 0n) return;
    least += multiplier * BigInt((multiplier > 0n ? row.lower : row.upper) ?? 0);
    for (const { column, coefficient } of row.terms) {
      reducedCosts[column] = (reducedCosts[column] ?? 0n) - multiplier * BigInt(coefficient);
    }
  });
  program.columns.forEach(({ upper }, column) => {
    const reducedCost = reducedCosts[column] ?? 0n;
    if (reducedCost < 0n) least += reducedCost * BigInt(upper);
  });
  return { least, reducedCosts, denominator: 1n << SCALE_BITS };
}

/** The multiplier as an integer over 2^40; 0 where it is no number or its row has no bound on that side. */
function exactMultiplier(row: ProgramRow, multiplier: number): bigint {
  const scaled = Math.trunc(multiplier * SHRINKAGE * SCALE);
  const bound = scaled > 0 ? row.lower : row.upper;
  return Number.isFinite(scaled) && bound !== null ? BigInt(scaled) : 0n;
}

/**
 * An integer that no solution of the program undercuts, whatever the multipliers are: at least the objective's constant,
 * and a value that the objective can take. Without any solution every number is a valid bound.
 */
export function lowerBound(program: Program, objective: Objective, multipliers: readonly number[]): number {
  return boundOf(floorOf(program, objective, multipliers), objective);
}

/** The floor rounded up to the next value that the objective can take. */
export function boundOf(floor: Floor, objective: Objective): number {
  const step = BigInt(objectiveStep(objective));
  const steps = step === 0n ? 0n : ceilDivide(floor.least, floor.denominator * step);
  return clampToSafe(BigInt(objective.constant) + (steps > 0n ? steps * step : 0n));
}

/** Any two values of the objective are a multiple of this apart; 0 when the objective is constant. */
export function objectiveStep(objective: Objective): number {
  return objective.terms.reduce((divisor, term) => greatestCommonDivisor(divisor, term.coefficient), 0);
}

/** Whether the multipliers prove that the program has no solution at all: under a cost of nothing the floor is above 0. */
export function refutes(program: Program, multipliers: readonly number[]): boolean {
  return floorOf(program, { name: 'nothing', terms: [], constant: 0 }, multipliers).least > 0n;
}

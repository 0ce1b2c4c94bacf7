import { floorDivide } from '../solver/integers.js';
import type { ProgramColumn, Program, ProgramRow, LinearTerm } from '../../../solver/program.js';

/** A sum of columns while it is being written; several shares of one column are added up. */
export class Sum {
  readonly #shares = new Map<number, bigint>();

  /** Adds coefficient × column and returns this sum. */
  add(column: number, coefficient: number | bigint = 1): this {
    this.#shares.set(column, (this.#shares.get(column) ?? 0n) + BigInt(coefficient));
    return this;
  }

  /** Adds coefficient × the column of each and returns this sum. */
  addEach(of: Iterable<{ readonly column: number }>, coefficient: number | bigint = 1): this {
    for (const { column } of of) this.add(column, coefficient);
    return this;
  }

  /** Adds factor × another sum and returns this one. */
  plus({ shares }: Sum, factor: number | bigint = 1): this {
    for (const [column, share] of shares) this.add(column, share * BigInt(factor));
    return this;
  }

  /** The shares that are not zero. */
  get shares(): readonly (readonly [number, bigint])[] {
    return [...this.#shares].filter(([, coefficient]) => coefficient !== 0n);
  }

  /** The greatest common divisor of the coefficients; 0 for an empty sum. */
  divisor(): bigint {
    return this.shares.reduce((common, [, share]) => gcd(common, share < 0n ? -share : share), 0n);
  }

  /** The sum as terms. @throws RangeError when a coefficient is not a safe integer. */
  terms(): readonly LinearTerm[] {
    return this.shares.map(([column, coefficient]) => ({ column, coefficient: safe(coefficient) }));
  }
}

/** Collects the columns and rows of an integer program. */
export class ProgramBuilder {
  readonly #columns: ProgramColumn[] = [];
  readonly #rows: ProgramRow[] = [];

  /** A new integer column from 0 to `upper`. @returns its index. */
  column(name: string, upper: number): number {
    return this.#columns.push({ name, upper }) - 1;
  }

  /** Σ = value. */
  equal(name: string, sum: Sum, value: number): void {
    this.#rows.push({ name, terms: sum.terms(), lower: value, upper: value });
  }

  /** Σ ≥ lower. */
  atLeast(name: string, sum: Sum, lower: number): void {
    this.#rows.push({ name, terms: sum.terms(), lower, upper: null });
  }

  /** Σ ≤ upper, divided by the greatest common divisor of its coefficients, which is exact for integer columns. */
  atMost(name: string, sum: Sum, upper: number | bigint): void {
    const { shares } = sum;
    if (shares.length === 0) return;
    const divisor = sum.divisor();
    const scaled = shares.map(([column, coefficient]) => [column, coefficient / divisor] as const);
    this.#rows.push(safeRow(name, scaled, floorDivide(BigInt(upper), divisor)));
  }

  build(): Program {
    return { columns: this.#columns, rows: this.#rows };
  }
}

/**
 * A row whose numbers are safe integers. One that is still too large is relaxed: its coefficients are rounded down and
 * its bound up. That is sound, for whoever reads a point checks every current and every total once more, exactly.
 */
function safeRow(name: string, shares: readonly (readonly [number, bigint])[], upper: bigint): ProgramRow {
  const largest = shares.reduce((most, [, c]) => (c > most ? c : -c > most ? -c : most), upper < 0n ? -upper : upper);
  const shrink = largest / BigInt(2 ** 40) + 1n;
  const exact = largest <= BigInt(2 ** 50);
  const terms = shares.map(([column, c]) => ({ column, coefficient: safe(exact ? c : floorDivide(c, shrink)) }));
  return { name, terms, lower: null, upper: safe(exact ? upper : floorDivide(upper, shrink) + 1n) };
}

function safe(value: bigint): number {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError(`${value} is not a safe integer`);
  return number;
}

const gcd = (first: bigint, second: bigint): bigint => (second === 0n ? first : gcd(second, first % second));

/**
 * An exact clean-up before any engine sees a program. It keeps every integer point, and makes the rows kinder to floating
 * point: small coefficients, no row that always holds, no column that is always 0.
 */
import { exactSum, greatestCommonDivisor } from '../../../solver/exact.js';
import { ceilDivide, floorDivide } from './integers.js';
import type { Objective, ProgramPoint, Program, ProgramRow, LinearTerm } from '../../../solver/program.js';
import type { Restatement } from './restatement.js';

/** Either the compact program or a row that no point within the columns' bounds can satisfy. */
export type Compacted =
  { readonly kind: 'compact'; readonly restated: Restatement } | { readonly kind: 'broken'; readonly row: string };

/** The compact program: divided rows, tightened columns, without the rows and columns that decide nothing. */
export function compact(program: Program, objective: Objective): Compacted {
  const reduced = program.rows.map(divideRow);
  const uppers = impliedUppers(program, reduced);
  const rows: ProgramRow[] = [];
  for (const row of reduced) {
    const needed = neededBounds(row, uppers);
    if (needed === 'broken') return { kind: 'broken', row: row.name };
    if (needed.lower !== null || needed.upper !== null) rows.push(needed);
  }
  return { kind: 'compact', restated: withoutFixedColumns({ columns: program.columns, rows }, objective, uppers) };
}

/**
 * The row over the greatest common divisor of its coefficients, bounds rounded inwards: its integer points are the same.
 */
function divideRow(row: ProgramRow): ProgramRow {
  const terms = row.terms.filter((term) => term.coefficient !== 0);
  const divisor = terms.reduce((common, term) => greatestCommonDivisor(common, term.coefficient), 0) || 1;
  if (divisor === 1) return { ...row, terms };
  return {
    name: row.name,
    terms: terms.map(({ column, coefficient }) => ({ column, coefficient: coefficient / divisor })),
    lower: row.lower === null ? null : Number(ceilDivide(BigInt(row.lower), BigInt(divisor))),
    upper: row.upper === null ? null : Number(floorDivide(BigInt(row.upper), BigInt(divisor))),
  };
}

/** The least (sign −1) or the greatest (sign 1) that the row's left-hand side can be within the columns' bounds. */
function extreme(row: ProgramRow, uppers: readonly number[], sign: -1 | 1): bigint {
  return exactSum(
    row.terms.filter((term) => term.coefficient * sign > 0),
    uppers,
  );
}

/** The columns' upper bounds, lowered to what each row by itself leaves to a column when all others help it most. */
function impliedUppers(program: Program, rows: readonly ProgramRow[]): readonly number[] {
  const uppers = program.columns.map((column) => column.upper);
  for (const row of rows) {
    if (row.upper !== null) lowerUppers(row.terms, BigInt(row.upper) - extreme(row, uppers, -1), 1, uppers);
    if (row.lower !== null) lowerUppers(row.terms, extreme(row, uppers, 1) - BigInt(row.lower), -1, uppers);
  }
  return uppers;
}

/** coefficient · x_j ≤ room for the terms of one sign. A negative room is a broken row, which is found later. */
function lowerUppers(terms: readonly LinearTerm[], room: bigint, sign: -1 | 1, uppers: number[]): void {
  if (room < 0n || room > BigInt(Number.MAX_SAFE_INTEGER)) return;
  const whole = Number(room);
  for (const { column, coefficient } of terms) {
    if (coefficient * sign <= 0) continue;
    const most = (whole - (whole % Math.abs(coefficient))) / Math.abs(coefficient);
    if (most < (uppers[column] ?? 0)) uppers[column] = most;
  }
}

/** The row without a bound that always holds; 'broken' when one of them never does. */
function neededBounds(row: ProgramRow, uppers: readonly number[]): ProgramRow | 'broken' {
  const least = extreme(row, uppers, -1);
  const most = extreme(row, uppers, 1);
  const { lower, upper } = row;
  if ((lower !== null && most < BigInt(lower)) || (upper !== null && least > BigInt(upper))) return 'broken';
  if (lower !== null && upper !== null && lower > upper) return 'broken';
  return {
    ...row,
    lower: lower !== null && least >= BigInt(lower) ? null : lower,
    upper: upper !== null && most <= BigInt(upper) ? null : upper,
  };
}

function withoutFixedColumns(program: Program, objective: Objective, uppers: readonly number[]): Restatement {
  const kept = program.columns.flatMap((_, column) => ((uppers[column] ?? 0) > 0 ? [column] : []));
  const position = new Map(kept.map((column, index) => [column, index]));
  const moved = (terms: readonly LinearTerm[]): readonly LinearTerm[] =>
    terms.flatMap(({ column, coefficient }) => {
      const index = position.get(column);
      return index === undefined || coefficient === 0 ? [] : [{ column: index, coefficient }];
    });
  return {
    program: {
      columns: kept.map((column) => ({ name: program.columns[column]?.name ?? '', upper: uppers[column] ?? 0 })),
      rows: program.rows.map((row) => ({ ...row, terms: moved(row.terms) })),
    },
    objective: { ...objective, terms: moved(objective.terms) },
    restore: (point: ProgramPoint) => {
      const restored = program.columns.map(() => 0);
      kept.forEach((column, index) => (restored[column] = point[index] ?? Number.NaN));
      return restored;
    },
  };
}

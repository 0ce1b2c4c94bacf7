import { exactSum } from './exact.js';
import type { ProgramPoint, Program } from './program.js';

/** One way in which a point is no solution of a program. */
type RowFault =
  | { readonly kind: 'length'; readonly expected: number; readonly found: number }
  | { readonly kind: 'not an integer'; readonly column: number; readonly value: number }
  | { readonly kind: 'out of bounds'; readonly column: number; readonly value: number; readonly upper: number }
  | {
      readonly kind: 'broken row';
      readonly row: number;
      readonly name: string;
      /** Σ coefficient · value, exactly. */
      readonly activity: bigint;
      readonly lower: number | null;
      readonly upper: number | null;
    };

/**
 * Everything that is wrong with the point, recomputed in exact integers from the program as it was built.
 * An empty list means that the point is a solution. Rows are looked at only when every value is an integer.
 */
export function checkPoint(program: Program, point: ProgramPoint): readonly RowFault[] {
  if (point.length !== program.columns.length) {
    return [{ kind: 'length', expected: program.columns.length, found: point.length }];
  }
  const faults = program.columns.flatMap((column, index) => faultOfValue(index, point[index], column.upper));
  if (faults.some((fault) => fault.kind === 'not an integer')) return faults;
  return [...faults, ...brokenRows(program, point)];
}

function faultOfValue(column: number, value: number | undefined, upper: number): readonly RowFault[] {
  if (value === undefined || !Number.isSafeInteger(value)) {
    return [{ kind: 'not an integer', column, value: value ?? Number.NaN }];
  }
  return value < 0 || value > upper ? [{ kind: 'out of bounds', column, value, upper }] : [];
}

function brokenRows(program: Program, point: ProgramPoint): readonly RowFault[] {
  return program.rows.flatMap(({ name, terms, lower, upper }, row): readonly RowFault[] => {
    const activity = exactSum(terms, point);
    const holds = (lower === null || activity >= BigInt(lower)) && (upper === null || activity <= BigInt(upper));
    return holds ? [] : [{ kind: 'broken row', row, name, activity, lower, upper }];
  });
}

import type { LocatedEntry, LocatedMap, LocatedNode } from '../text/located-tree.js';
import type { Path } from '../../domain/finding.js';
import { nodeOf, type CellReading } from './cells.js';
import { columnsOf, type TableKind } from './columns.js';
import type { PlacedCell, CsvRow } from './rows.js';

/** A table: which column has which key, and the rows below the header. */
export type CsvTable = {
  readonly kind: TableKind;
  /** By position; null for a column that is not understood or has no name. */
  readonly keys: readonly (string | null)[];
  /** Keys that are missing as columns and were reported: not complained about in every row again. */
  readonly missing: readonly string[];
  readonly rows: readonly CsvRow[];
};

/** The cell of a row in the column of that key; null when there is no such column. */
export function cellOf({ keys }: CsvTable, row: CsvRow, key: string): PlacedCell | null {
  const index = keys.indexOf(key);
  return index < 0 ? null : (row.cells[index] ?? { text: '', offset: row.end });
}

/** Some cells of a row as a map: those that are empty are left out, and remembered as gaps. */
export function mapOf(
  table: CsvTable,
  row: CsvRow,
  keys: readonly string[],
  path: Path,
  reading: CellReading,
): LocatedMap {
  const entries = new Map<string, LocatedEntry>();
  const gaps = new Map<string, number>();
  for (const key of keys) {
    const cell = cellOf(table, row, key);
    if (cell === null) continue;
    const kind = columnsOf[table.kind][key] ?? 'text';
    if (cell.text === '') gaps.set(key, cell.offset);
    else entries.set(key, entryOf(cell.offset, nodeOf(cell, kind, [...path, key], reading)));
  }
  for (const key of table.missing) if (keys.includes(key)) reading.lost.push([...path, key]);
  return { kind: 'map', offset: row.offset, entries, gaps };
}

export type Renaming = (path: Path) => Path;

/** Reads something whose values will stand at other paths than those of their columns, as far as faults are concerned. */
export function withPaths<Result>(
  reading: CellReading,
  renaming: Renaming,
  read: (inner: CellReading) => Result,
): Result {
  const inner: CellReading = { ...reading, faults: [], lost: [] };
  const result = read(inner);
  reading.faults.push(...inner.faults.map((fault) => ({ ...fault, path: renaming(fault.path) })));
  reading.lost.push(...inner.lost.map(renaming));
  return result;
}

export const entryOf = (keyOffset: number, value: LocatedNode): LocatedEntry => ({ keyOffset, value });

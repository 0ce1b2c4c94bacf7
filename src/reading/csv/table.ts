import type { Path, Words } from '../../domain/finding.js';
import { unknownFields } from '../../domain/pedal.js';
import type { LocatedEntry, LocatedMap, LocatedNode } from '../text/located-tree.js';
import { saysUnknown, voltsAndPower } from './cell-words.js';
import { nodeOf } from './cells.js';
import { columnsOf, type TableKind } from './columns.js';
import { textNode, type CellReading } from './figures.js';
import type { Heading } from './headings.js';
import type { PlacedCell, CsvRow } from './rows.js';

/** A table: what its columns hold, and the rows below the header. */
export type CsvTable = {
  readonly kind: TableKind;
  /** By position; null for a column that is not used or has no name. */
  readonly columns: readonly (Heading | null)[];
  /** Keys that are missing as columns and were reported: not complained about in every row again. */
  readonly missing: readonly string[];
  readonly rows: readonly CsvRow[];
};

/** The cell of a row in the column of that key; null when there is no such column. */
export function cellOf({ columns }: CsvTable, row: CsvRow, key: string): PlacedCell | null {
  const index = columns.findIndex((column) => column?.key === key);
  return index < 0 ? null : (row.cells[index] ?? { text: '', offset: row.end });
}

/** What the cell of a row in the column of that key says; empty when there is none. */
export const textOf = (table: CsvTable, row: CsvRow, key: string): string => cellOf(table, row, key)?.text ?? '';

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
    if (cell.text === '') gaps.set(key, cell.offset);
    else entries.set(key, entryOf(cell.offset, valueOf(table, cell, key, [...path, key], reading)));
  }
  for (const key of table.missing) if (keys.includes(key)) reading.lost.push([...path, key]);
  return { kind: 'map', offset: row.offset, entries, gaps };
}

function valueOf(table: CsvTable, cell: PlacedCell, key: string, path: Path, reading: CellReading): LocatedNode {
  const { kind, columns } = table;
  if (kind === 'pedals' && unknownFields.some((field) => field === key) && saysUnknown(cell.text))
    return { ...textNode(cell), value: 'unknown' };
  const heading = columns.find((column) => column?.key === key) ?? { key, unit: null, isVague: false };
  return nodeOf(cell, columnsOf[kind][key] ?? 'text', heading, path, reading);
}

/** The map with the power that stands beside its volts, as in "9 V DC". What `power` says must agree. */
export function withPower(map: LocatedMap, cell: PlacedCell | null, path: Path, reading: CellReading): LocatedMap {
  const beside = cell === null ? null : voltsAndPower(cell).power;
  if (cell === null || beside === null) return map;
  const stated = map.entries.get('power')?.value;
  const says = stated?.kind === 'scalar' ? stated.value : null;
  if (beside === 'both' || (says !== null && says !== beside)) {
    const words = beside === 'both' ? directAndAlternating : otherPower(beside, String(says));
    reading.faults.push({ path: [...path, 'volts'], offset: cell.offset, words: () => words });
    reading.lost.push([...path, 'power']);
    return map;
  }
  if (says !== null) return map;
  const power: LocatedNode = { kind: 'scalar', offset: cell.offset, value: beside, written: beside };
  return { ...map, entries: new Map([...map.entries, ['power', entryOf(cell.offset, power)]]) };
}

const directAndAlternating: Words = {
  message: 'says DC and AC at once.',
  remedy: 'Write the one that the label gives.',
};

const otherPower = (beside: string, stated: string): Words => ({
  message: `says ${beside}, but the power of the same row is ${stated}.`,
  remedy: 'Write the one that the label gives.',
});

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

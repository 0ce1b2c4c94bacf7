import type { Words } from '../../domain/finding.js';
import type { TreeFault } from '../text/build-tree.js';
import { meantKey } from '../faults/schema-findings.js';
import { columnNamed, columnsOf, neededColumns, plainHeader, type TableKind } from './columns.js';
import type { PlacedCell, CsvRow } from './rows.js';

/** Which column holds what, and what is wrong with the header. */
export type Header = {
  readonly keys: readonly (string | null)[];
  /** Needed columns that are not there; rows need not be blamed for that. */
  readonly missing: readonly string[];
  readonly faults: readonly TreeFault[];
};

/** Reads the first row of a table. */
export function readHeader(kind: TableKind, row: CsvRow): Header {
  const faults: TreeFault[] = [];
  const keys = row.cells.map(({ text }) => (text === '' ? null : columnNamed(kind, text)));
  const absent = Object.keys(columnsOf[kind]).filter((key) => !keys.includes(key));
  const missing: string[] = [];
  for (const [index, cell] of row.cells.entries()) {
    const key = keys[index] ?? null;
    if (key === null && cell.text !== '') {
      const meant = meantKey(plainHeader(withoutUnit(cell.text)), absent);
      if (meant !== null) missing.push(meant);
      faults.push(faultAt(cell, unknownColumn(kind, meant)));
    } else if (key !== null && keys.indexOf(key) < index) faults.push(faultAt(cell, repeatedColumn));
  }
  for (const key of neededColumns[kind].filter((needed) => absent.includes(needed) && !missing.includes(needed))) {
    missing.push(key);
    faults.push({ path: [key], offset: row.offset, words: () => missingColumn(kind, key) });
  }
  return { keys, missing, faults };
}

/** People write a unit behind the name, in brackets. */
const withoutUnit = (text: string): string => text.split(/[([]/, 1).join('');

const faultAt = ({ text, offset }: PlacedCell, words: Words): TreeFault => ({
  path: [text],
  offset,
  words: () => words,
});

const unknownColumn = (kind: TableKind, meant: string | null): Words => ({
  message: `unknown column. Allowed here: ${Object.keys(columnsOf[kind]).join(', ')}.`,
  remedy: meant === null ? 'Remove it.' : `Did you mean ${meant}?`,
});

const repeatedColumn: Words = {
  message: 'stands here a second time; each column may stand once.',
  remedy: 'Remove one of them.',
};

const missingColumn = (kind: TableKind, key: string): Words => ({
  message: `there is no such column; a table of ${kind} needs ${neededColumns[kind].join(', ')}.`,
  remedy: `Add a column \`${key}\`.`,
});

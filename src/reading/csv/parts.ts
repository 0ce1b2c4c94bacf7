import type { Path, Words } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { LocatedEntry, LocatedMap, LocatedNode } from '../text/located-tree.js';
import { bankColumns, partColumns, supplyColumns } from './columns.js';
import { nodeOf } from './cells.js';
import type { CellReading } from './figures.js';
import { remarkOf } from './remarks.js';
import { leadEnds, type RowGroup } from './row-kinds.js';
import { cellOf, entryOf, mapOf, type CsvTable } from './table.js';

/** A lead of a table: its ends in columns of their own or as "barrel 2.1 to jack 3.5", and what else it is in any cell. */
export function partOf(table: CsvTable, { rows: [row] }: RowGroup, path: Path, reading: CellReading): LocatedMap {
  if (row === undefined) throw new Error('a lead has no row');
  const map = mapOf(table, row, partColumns, path, reading);
  const entries = new Map<string, LocatedEntry>(map.entries);
  const add = (key: string, offset: number, value: string | number | boolean): void => {
    if (!entries.has(key)) entries.set(key, entryOf(offset, scalar(offset, value)));
  };
  for (const [key, entry] of endsOf(table, row, path, reading)) if (!entries.has(key)) entries.set(key, entry);
  for (const key of otherColumns) {
    const cell = cellOf(table, row, key);
    if (cell === null || cell.text === '' || (key === 'plug' && leadEnds(cell.text) !== null)) continue;
    const remark = remarkOf(cell.text);
    for (const [name, value] of Object.entries(remark ?? {})) if (name !== 'switch') add(name, cell.offset, value);
    if (key === 'remark' || (remark !== null && remark.switch === undefined)) continue;
    reading.faults.push({ path: [...path, key], offset: cell.offset, words: () => notOfLeads(cell.text) });
  }
  return { ...map, entries };
}

const otherColumns = [...supplyColumns, ...bankColumns, 'remark'].filter((key) => !partColumns.includes(key));

function endsOf(
  table: CsvTable,
  row: CsvTable['rows'][number],
  path: Path,
  reading: CellReading,
): readonly (readonly [string, LocatedEntry])[] {
  const cell = cellOf(table, row, 'plug');
  const ends = cell === null ? null : leadEnds(cell.text);
  if (cell === null || ends === null) return [];
  const end = (key: 'fits' | 'gives', text: string, offset: number): readonly [string, LocatedEntry] => {
    const heading = { key, unit: null, isVague: false };
    return [key, entryOf(offset, nodeOf({ text, offset }, 'connector', heading, [...path, key], reading))];
  };
  return [end('fits', ends.fits, cell.offset), end('gives', ends.gives, cell.offset + ends.at)];
}

const scalar = (offset: number, value: string | number | boolean): LocatedNode => ({
  kind: 'scalar',
  offset,
  value,
  written: String(value),
});

const notOfLeads = (text: string): Words => ({
  message: `found ${quoted(text)}; nothing of the kind can be said of a lead.`,
  remedy: 'Write it into a column for leads (fits, gives, reverses, tails, joins), or into one called Remark.',
});

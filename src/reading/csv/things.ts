import type { Words } from '../../domain/finding.js';
import type { LocatedList, LocatedNode } from '../text/located-tree.js';
import type { CellReading } from './figures.js';
import { partOf } from './parts.js';
import { pedalsOf } from './pedals.js';
import { groupsOf, type RowGroup } from './row-kinds.js';
import { supplyOf } from './supplies.js';
import type { CsvTable } from './table.js';

/** What the rows of a table make. */
export type Things = {
  /** By the keys of the file. */
  readonly lists: ReadonlyMap<string, LocatedNode>;
  readonly groups: readonly RowGroup[];
};

/** The pedals of a table, or its supplies and leads; leads behind those that stand above the table. */
export function thingsOf(table: CsvTable, partsAbove: LocatedNode | null, reading: CellReading): Things {
  const offset = table.rows[0]?.offset ?? 0;
  const groups = groupsOf(table);
  if (table.kind === 'pedals') return { lists: new Map([['pedals', pedalsOf(table, offset, reading)]]), groups };
  const supplies = groups
    .filter(({ kind }) => kind === 'supply')
    .map((group, index) => supplyOf(table, group, ['supplies', index], reading));
  for (const { kind, rows } of groups)
    if (kind === 'nothing')
      reading.faults.push({ path: [], offset: rows[0]?.offset ?? offset, words: () => sayingNothing });
  const lists = new Map<string, LocatedNode>([['supplies', { kind: 'list', offset, items: supplies }]]);
  const parts = partsOf(table, groups, partsAbove, reading);
  if (parts !== null) lists.set('parts', parts);
  return { lists, groups };
}

function partsOf(
  table: CsvTable,
  groups: readonly RowGroup[],
  above: LocatedNode | null,
  reading: CellReading,
): LocatedList | null {
  const rows = groups.filter(({ kind }) => kind === 'part');
  // What stands above and is no list is refused as it is.
  if (rows.length === 0 || (above !== null && above.kind !== 'list')) return null;
  const before = above?.items ?? [];
  const found = rows.map((group, index) => partOf(table, group, ['parts', before.length + index], reading));
  return { kind: 'list', offset: above?.offset ?? found[0]?.offset ?? 0, items: [...before, ...found] };
}

const sayingNothing: Words = {
  message: 'says neither what an output gives nor what a lead fits: it is no supply, no lead and no battery.',
  remedy: 'Leave the row out of the table.',
};

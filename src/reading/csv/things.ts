import type { Words } from '../../domain/finding.js';
import type { LocatedList, LocatedMap, LocatedNode } from '../text/located-tree.js';
import { batteryOf, batteryTypeNamed } from './batteries.js';
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

/** The pedals of a table, or its supplies, leads and batteries, the latter two behind those that stand above the table. */
export function thingsOf(table: CsvTable, above: (key: string) => LocatedNode | null, reading: CellReading): Things {
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
  for (const [key, rows] of [
    ['parts', groups.filter(({ kind }) => kind === 'part')],
    ['batteries', groups.filter(({ kind, name }) => kind === 'battery' && batteryTypeNamed(name) !== null)],
  ] as const) {
    const list = listBelow(above(key), rows, (group, index) => readers[key](table, group, [key, index], reading));
    if (list !== null) lists.set(key, list);
  }
  return { lists, groups };
}

const readers = { parts: partOf, batteries: batteryOf } as const;

function listBelow(
  above: LocatedNode | null,
  groups: readonly RowGroup[],
  read: (group: RowGroup, index: number) => LocatedMap,
): LocatedList | null {
  // What stands above and is no list is refused as it is.
  if (groups.length === 0 || (above !== null && above.kind !== 'list')) return null;
  const before = above?.items ?? [];
  const found = groups.map((group, index) => read(group, before.length + index));
  return { kind: 'list', offset: above?.offset ?? found[0]?.offset ?? 0, items: [...before, ...found] };
}

const sayingNothing: Words = {
  message: 'says neither what an output gives nor what a lead fits: it is no supply, no lead and no battery.',
  remedy: 'Leave the row out of the table.',
};

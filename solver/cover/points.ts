import type { ColumnPool } from './column-pool.js';
import type { CoverColumn } from './program.js';

/** Less than this of a column is none. */
const nothing = 1e-5;

/** The groups of which parts of units are used, with the number of their units. */
export function mixedGroups<Content>(pool: ColumnPool<Content>, point: Float64Array): ReadonlyMap<number, number> {
  const mixed = new Map<number, number>();
  const parts = new Set<number>();
  for (const [index, { group }] of pool.columns.entries()) {
    const share = point[index] ?? 0;
    if (share < nothing) continue;
    mixed.set(group, (mixed.get(group) ?? 0) + share);
    if (Math.abs(share - Math.round(share)) > 1e-4) parts.add(group);
  }
  return new Map(
    [...mixed].flatMap(([group, units]) => (parts.has(group) ? [[group, Math.round(units)] as const] : [])),
  );
}

/** The columns of a point, each as often as it is used, rounded. */
export function wholeColumns<Content>(pool: ColumnPool<Content>, point: Float64Array): readonly CoverColumn<Content>[] {
  return pool.columns.flatMap((column, index) => Array.from({ length: Math.round(point[index] ?? 0) }, () => column));
}

/** What the columns of a point hold, each once, whole or in part. */
export const usedColumns = <Content>({ columns }: ColumnPool<Content>, point: Float64Array): readonly Content[] =>
  columns.flatMap(({ content }, index) => ((point[index] ?? 0) < nothing ? [] : [content]));

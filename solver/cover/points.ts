import type { ColumnPool } from './column-pool.js';
import type { CoverColumn } from './program.js';

/** Less than this of a column is none. */
const nothing = 1e-5;

/** The groups of which parts of units are used. */
export function mixedGroups<Content>(pool: ColumnPool<Content>, point: Float64Array): readonly number[] {
  const parts = pool.columns.flatMap(({ group }, index) => {
    const share = point[index] ?? 0;
    return share >= nothing && Math.abs(share - Math.round(share)) > 1e-4 ? [group] : [];
  });
  return [...new Set(parts)];
}

/** The columns of a point, each as often as it is used, rounded. */
export function wholeColumns<Content>(pool: ColumnPool<Content>, point: Float64Array): readonly CoverColumn<Content>[] {
  return pool.columns.flatMap((column, index) => Array.from({ length: Math.round(point[index] ?? 0) }, () => column));
}

/** What the columns of a point hold, each once, whole or in part. */
export const usedColumns = <Content>({ columns }: ColumnPool<Content>, point: Float64Array): readonly Content[] =>
  columns.flatMap(({ content }, index) => ((point[index] ?? 0) < nothing ? [] : [content]));

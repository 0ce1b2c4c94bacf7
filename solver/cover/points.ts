import { gathered } from '../gathered.js';
import type { ColumnPool } from './column-pool.js';
import type { CoverColumn } from './program.js';

/** Less than this of a column is none. */
const nothing = 1e-5;

/** The groups of which parts of units are used. */
export function mixedGroups<Content>(pool: ColumnPool<Content>, point: Float64Array): readonly number[] {
  const parts = gathered(pool.columns, ({ group }, index) => {
    const share = point[index] ?? 0;
    return share >= nothing && Math.abs(share - Math.round(share)) > 1e-4 ? [group] : [];
  });
  return [...new Set(parts)];
}

/** The columns of a point, each as often as it is used, rounded. */
export function wholeColumns<Content>(pool: ColumnPool<Content>, point: Float64Array): readonly CoverColumn<Content>[] {
  const whole: CoverColumn<Content>[] = [];
  for (const [index, column] of pool.columns.entries())
    for (let left = Math.round(point[index] ?? 0); left > 0; left -= 1) whole.push(column);
  return whole;
}

/** What the columns of a point hold, each once, whole or in part. */
export const usedColumns = <Content>({ columns }: ColumnPool<Content>, point: Float64Array): readonly Content[] =>
  gathered(columns, ({ content }, index) => ((point[index] ?? 0) < nothing ? [] : [content]));

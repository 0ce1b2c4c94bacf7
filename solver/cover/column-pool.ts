import { counts } from './decisions.js';
import type { SparseColumn } from './sparse-columns.js';
import type { Amounts, CoverColumn, CoverProgram } from './program.js';

/** A column's entries in the program's own rows. */
export type PoolEntries = { readonly rows: readonly number[]; readonly values: readonly number[] };

/** All columns made so far, each once, with their entries in the program's own rows. */
export class ColumnPool<Content> {
  readonly columns: CoverColumn<Content>[] = [];
  readonly entries: PoolEntries[] = [];
  /** The program's fixed columns, for a relaxation. */
  readonly fixed: readonly SparseColumn[];
  readonly #known = new Map<string, number>();
  readonly #rows: CoverProgram<Content>['rows'];

  readonly #onNew: ((content: Content) => void) | undefined;

  /** Whoever wants to know is told of every column that is new. */
  constructor({ rows, fixed }: Pick<CoverProgram<Content>, 'rows' | 'fixed'>, onNew?: (content: Content) => void) {
    this.#rows = rows;
    this.#onNew = onNew;
    this.fixed = fixed.map(({ entries, cost }) => ({
      rows: entries.map(({ row }) => row),
      values: entries.map(({ coefficient }) => coefficient),
      cost,
    }));
  }

  /** Adds a column unless it is known. @returns its place. */
  add(column: CoverColumn<Content>): number {
    const amounts = column.amounts.map(([feature, amount]) => `${feature} ${amount}`).sort();
    const key = `${column.group}:${column.cost}:${amounts.join()}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const place = this.columns.length;
    this.#known.set(key, place);
    this.columns.push(column);
    this.#onNew?.(column.content);
    const rows: number[] = [];
    const values: number[] = [];
    for (const [index, row] of this.#rows.entries()) {
      const amount = counts(row, column.group) ? amountOf(column.amounts, row.feature) : 0;
      if (amount === 0) continue;
      rows.push(index);
      values.push(amount);
    }
    this.entries.push({ rows, values });
    return place;
  }
}

export const amountOf = (amounts: Amounts, feature: number): number => {
  for (const [each, amount] of amounts) if (each === feature) return amount;
  return 0;
};

/** Σ value · row over a column's rows, at a cost; all columns range from 0 upwards. */
export type SparseColumn = {
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly cost: number;
};

/** Columns that grow in number, one after the other in plain arrays: they are gone through at every pivot. */
export class SparseColumns {
  /** Where each column's entries begin, and behind the last one where they end. */
  begins: Int32Array;
  rows: Int32Array;
  values: Float64Array;
  costs: Float64Array;
  count = 0;

  /** Room for so many columns and entries to begin with. */
  constructor(columns = 256, entries = 1024) {
    this.begins = new Int32Array(columns);
    this.rows = new Int32Array(entries);
    this.values = new Float64Array(entries);
    this.costs = new Float64Array(columns);
  }

  add({ rows, values, cost }: SparseColumn): void {
    const begin = this.begins[this.count] ?? 0;
    const end = begin + rows.length;
    if (this.count + 2 > this.begins.length) {
      this.begins = grown(this.begins, new Int32Array(this.begins.length * 2));
      this.costs = grown(this.costs, new Float64Array(this.costs.length * 2));
    }
    while (end > this.rows.length) {
      this.rows = grown(this.rows, new Int32Array(this.rows.length * 2));
      this.values = grown(this.values, new Float64Array(this.values.length * 2));
    }
    for (let at = 0; at < rows.length; at += 1) {
      this.rows[begin + at] = rows[at] ?? 0;
      this.values[begin + at] = values[at] ?? 0;
    }
    this.costs[this.count] = cost;
    this.count += 1;
    this.begins[this.count] = end;
  }

  /** Gives the last column one entry more. */
  extend(row: number, value: number): void {
    const end = this.begins[this.count] ?? 0;
    if (end === this.rows.length) {
      this.rows = grown(this.rows, new Int32Array(end * 2));
      this.values = grown(this.values, new Float64Array(end * 2));
    }
    this.rows[end] = row;
    this.values[end] = value;
    this.begins[this.count] = end + 1;
  }

  /** A copy in which the columns have amounts in one row more, the last one. */
  withRow(row: number, amounts: Float64Array): SparseColumns {
    const { begins, rows, values, costs, count } = this;
    const copy = new SparseColumns(count + 16, this.begin(count) + count + 128);
    copy.costs.set(costs.subarray(0, count));
    copy.count = count;
    let to = 0;
    for (let column = 0; column < count; column += 1) {
      const end = begins[column + 1] ?? 0;
      for (let at = begins[column] ?? 0; at < end; at += 1, to += 1) {
        copy.rows[to] = rows[at] ?? 0;
        copy.values[to] = values[at] ?? 0;
      }
      const amount = amounts[column] ?? 0;
      if (amount !== 0) {
        copy.rows[to] = row;
        copy.values[to] = amount;
        to += 1;
      }
      copy.begins[column + 1] = to;
    }
    return copy;
  }

  begin(column: number): number {
    return this.begins[column] ?? 0;
  }

  /** Behind the last entry. */
  end(column: number): number {
    return this.begins[column + 1] ?? 0;
  }

  cost(column: number): number {
    return this.costs[column] ?? 0;
  }

  /** Σ weight of the row · value over a column's entries. */
  product(column: number, weights: Float64Array, from = 0): number {
    let sum = 0;
    const end = this.end(column);
    for (let at = this.begin(column); at < end; at += 1) {
      sum += (weights[from + (this.rows[at] ?? 0)] ?? 0) * (this.values[at] ?? 0);
    }
    return sum;
  }

  /** The same of all columns at once. */
  products(weights: Float64Array, from: number, products: Float64Array): void {
    const { begins, rows, values, count } = this;
    let at = 0;
    for (let column = 0; column < count; column += 1) {
      const end = begins[column + 1] ?? 0;
      let sum = 0;
      for (; at < end; at += 1) sum += (weights[from + (rows[at] ?? 0)] ?? 0) * (values[at] ?? 0);
      products[column] = sum;
    }
  }
}

/** The numbers of an array in a larger one. */
export function grown<Numbers extends Int32Array | Float64Array | Uint8Array>(old: Numbers, larger: Numbers): Numbers {
  larger.set(old);
  return larger;
}

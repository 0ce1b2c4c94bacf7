/**
 * The primal simplex method on a growing set of sparse columns, with a dense inverse of a small basis. It is warm: columns
 * join a solved program and the next solve goes on from the last basis, and a basis of one program is a start for the same
 * program with more rows, or with other bounds. Its numbers guide a search and prove nothing; whoever uses them checks in integers.
 * Every row is elastic, at a price, so that there always is a solution.
 */

import { Basis } from './basis.js';
import { mendBroken } from './dual-simplex.js';
import { COLD, type SimplexRow, type SimplexStart } from './simplex-start.js';
import { helper, kindOf, rowOf, SLACK } from './row-helpers.js';
import { SparseColumns, type SparseColumn } from './sparse-columns.js';

/** Smaller pivots make numbers that mean nothing. */
const PIVOT_TOLERANCE = 1e-9;
const RATIO_TOLERANCE = 1e-10;

/** Columns that were worth the most when all were looked at last; they are tried before all are looked at again. */
const SHORT_LIST = 16;

export { COLD, type SimplexBasis, type Sense, type SimplexRow, type SimplexStart } from './simplex-start.js';

export class Simplex {
  readonly #basis: Basis;
  #elastic: number;
  #stiffened = 0;
  #tolerance: number;
  readonly #duals: Float64Array;
  readonly #shortList: number[] = [];
  readonly #worths = new Float64Array(SHORT_LIST);

  /**
   * `elastic` is the cost of breaking a row by 1. Columns are added before `start`, or after.
   * @param tolerance what a column must be worth beyond its cost to come in
   * @param columns those to begin with
   */
  constructor(rows: readonly SimplexRow[], elastic: number, tolerance: number, columns = new SparseColumns()) {
    this.#basis = new Basis(rows, columns);
    this.#elastic = elastic;
    this.#tolerance = tolerance;
    this.#duals = new Float64Array(rows.length);
  }

  /** Adds a column; it is numbered from 0 in the order in which they come. */
  add(column: SparseColumn): void {
    this.#basis.add(column);
  }

  /** Gives the last column an entry in one row more. */
  extend(row: number, value: number): void {
    this.#basis.columns.extend(row, value);
  }

  /** Makes a column as dear as what breaks a row by 1 is on top. */
  raise(column: number): void {
    this.#basis.columns.costs[column] = this.#basis.columns.cost(column) + this.#elastic;
  }

  /** The same with one row more, in which the columns have these amounts, begun where this one stands. */
  withRow(row: SimplexRow, amounts: Float64Array): Simplex {
    const basis = this.#basis;
    const simplex = new Simplex(
      [...basis.rows, row],
      this.#elastic,
      this.#tolerance,
      basis.columns.withRow(basis.size, amounts),
    );
    simplex.#stiffened = this.#stiffened;
    simplex.start(basis.lent);
    return simplex;
  }

  /** Begins with a basis of the first rows of this program, where it is one, and with slacks and shortfalls elsewhere. */
  start(start: SimplexStart): void {
    if (start.basis.length === 0 || !this.#basis.begin(start)) this.#startCold();
  }

  #startCold(): void {
    this.#basis.begin(COLD);
    this.#basis.flipBroken();
  }

  #cost(name: number): number {
    if (name >= 0) return this.#basis.columns.cost(name);
    return kindOf(name) === SLACK ? 0 : this.#elastic;
  }

  /** Pivots until no column is worth coming in; false when it gave up after `most` pivots. */
  solve(most: number): boolean {
    this.#shortList.length = 0;
    this.#price();
    let pivots = this.#basis.brokenRow() < 0 ? 0 : this.#mend(most);
    for (; pivots < most; pivots += 1) {
      if (this.#basis.isStale && !this.#renew()) return false;
      const entering = this.#entering();
      if (entering === null) return true;
      this.#basis.turnTo(entering);
      const leaving = this.#leaving();
      if (leaving < 0) return false;
      this.#pivot(leaving, entering, Math.max(0, this.#basis.values[leaving] ?? 0));
    }
    return false;
  }

  /** Lifts basic values that are below zero. @returns after how many pivots. */
  #mend(most: number): number {
    const mended = mendBroken(
      {
        basis: this.#basis,
        tolerance: this.#tolerance,
        worth: (name) => this.#worth(name),
        pivot: (row, entering) => this.#pivot(row, entering, this.#basis.values[row] ?? 0),
        renew: () => this.#renew(),
      },
      most,
    );
    if (mended !== null) return mended;
    if (!this.#basis.flipBroken()) this.#startCold();
    this.#price();
    return 0;
  }

  #renew(): boolean {
    if (!this.#basis.invert()) return false;
    this.#price();
    return true;
  }

  /** The duals of the basis: its costs times its inverse. */
  #price(): void {
    const { size, names, inverse } = this.#basis;
    const duals = this.#duals;
    duals.fill(0);
    for (let row = 0; row < size; row += 1) {
      const cost = this.#cost(names[row] ?? 0);
      if (cost === 0) continue;
      const from = row * size;
      for (let column = 0; column < size; column += 1) {
        duals[column] = (duals[column] ?? 0) + cost * (inverse[from + column] ?? 0);
      }
    }
  }

  /** What a column, or a row's helper, is worth beyond its cost. */
  #worth(name: number): number {
    const duals = this.#duals;
    if (name >= 0) return this.#basis.columns.product(name, duals) - this.#basis.columns.cost(name);
    return this.#basis.sign(name) * (duals[rowOf(name)] ?? 0) - this.#cost(name);
  }

  /** What is worth the most of the short list; of all columns and slacks when nothing on it is; null when nothing is. */
  #entering(): number | null {
    const listed = this.#bestListed();
    if (listed !== null) return listed;
    const basis = this.#basis;
    const list = this.#shortList;
    const worths = this.#worths;
    list.length = 0;
    const note = (name: number, worth: number): void => {
      if (worth <= this.#tolerance || (list.length === SHORT_LIST && worth <= (worths[SHORT_LIST - 1] ?? 0))) return;
      let at = Math.min(list.length, SHORT_LIST - 1);
      for (; at > 0 && (worths[at - 1] ?? 0) < worth; at -= 1) {
        worths[at] = worths[at - 1] ?? 0;
        list[at] = list[at - 1] ?? 0;
      }
      worths[at] = worth;
      list[at] = name;
    };
    for (let name = 0; name < basis.columns.count; name += 1) if (!basis.isBasic(name)) note(name, this.#worth(name));
    for (let row = 0; row < basis.size; row += 1) {
      if (basis.rows[row]?.sense !== 'equal') note(helper(row, SLACK), this.#worth(helper(row, SLACK)));
    }
    return list[0] ?? null;
  }

  #bestListed(): number | null {
    let best: number | null = null;
    let most = this.#tolerance;
    for (const name of this.#shortList) {
      if (name >= 0 && this.#basis.isBasic(name)) continue;
      const worth = this.#worth(name);
      if (worth > most) [most, best] = [worth, name];
    }
    return best;
  }

  /** The row whose basic value is the first to reach zero; of several the one with the largest pivot; −1 for none. */
  #leaving(): number {
    const { size, values, direction } = this.#basis;
    let best = -1;
    let least = Infinity;
    let pivot = 0;
    for (let row = 0; row < size; row += 1) {
      const step = direction[row] ?? 0;
      if (step <= PIVOT_TOLERANCE) continue;
      const ratio = Math.max(0, values[row] ?? 0) / step;
      if (ratio > least + RATIO_TOLERANCE || (ratio >= least - RATIO_TOLERANCE && step <= pivot)) continue;
      [best, least, pivot] = [row, ratio, step];
    }
    return best;
  }

  /** Lets the column that the basis was turned to in for what is basic in a row, of which so much goes. */
  #pivot(row: number, entering: number, leaves: number): void {
    const basis = this.#basis;
    const worth = this.#worth(entering);
    basis.step(row, entering, leaves / (basis.direction[row] ?? 1));
    // The duals change by a multiple of the new row of the inverse.
    const from = row * basis.size;
    for (let column = 0; column < basis.size; column += 1) {
      this.#duals[column] = (this.#duals[column] ?? 0) - worth * (basis.inverse[from + column] ?? 0);
    }
  }

  /** Makes it a hundred times as dear to break a row; false when that was done often enough. */
  stiffen(): boolean {
    if (this.#stiffened >= 3) return false;
    this.#stiffened += 1;
    this.#elastic *= 100;
    this.#tolerance *= 100;
    return true;
  }

  /** What it costs to break a row by 1. */
  get elastic(): number {
    return this.#elastic;
  }

  /** The duals of the last solve, one a row: the price of one more unit of its bound. */
  get duals(): Float64Array {
    return this.#duals;
  }

  /** What is basic now and the inverse, as a start for a program with more rows. */
  get state(): SimplexStart {
    return this.#basis.state;
  }

  /** The value of every column. */
  get point(): Float64Array {
    const point = new Float64Array(this.#basis.columns.count);
    this.#basis.names.forEach((name, row) => {
      if (name >= 0) point[name] = Math.max(0, this.#basis.values[row] ?? 0);
    });
    return point;
  }

  /** What the point costs, with what breaks rows. */
  get value(): number {
    return this.#basis.names.reduce((sum, name, row) => sum + this.#cost(name) * (this.#basis.values[row] ?? 0), 0);
  }

  /** By how much rows are broken in all. */
  get broken(): number {
    return this.#basis.names.reduce(
      (sum, name, row) => (name < 0 && kindOf(name) !== SLACK ? sum + Math.max(0, this.#basis.values[row] ?? 0) : sum),
      0,
    );
  }
}

/**
 * The primal simplex method on a growing set of sparse columns, with a dense inverse of a small basis. It is warm: columns
 * join a solved program and the next solve goes on from the last basis, and a basis of one program is a start for the same
 * program with more rows. Its numbers guide a search and prove nothing; whoever uses them checks in integers.
 * Every row is elastic, at a price, so that there always is a solution.
 */

import { COLD, type SimplexRow, type SimplexStart } from './simplex-start.js';
import { inverseOf } from './dense-inverse.js';
import { EXCESS, helper, kindOf, rowOf, SHORTFALL, SLACK } from './row-helpers.js';
import { grown, SparseColumns, type SparseColumn } from './sparse-columns.js';

/** Smaller pivots make numbers that mean nothing. */
const PIVOT_TOLERANCE = 1e-9;
const RATIO_TOLERANCE = 1e-10;
/** Updates of the inverse before it is made afresh. */
const UPDATES = 80;
/** Rows are set apart by so much, so that ties in the ratio test are rare. */
const PERTURBATION = 1e-7;

/** Columns that were worth the most when all were looked at last; they are tried before all are looked at again. */
const SHORT_LIST = 16;

export { COLD, type SimplexBasis, type Sense, type SimplexRow, type SimplexStart } from './simplex-start.js';

export class Simplex {
  readonly #rows: readonly SimplexRow[];
  readonly #size: number;
  #elastic: number;
  #stiffened = 0;
  #tolerance: number;
  readonly #right: Float64Array;
  readonly #names: Int32Array;
  readonly #columns = new SparseColumns();
  #isBasic = new Uint8Array(256);
  #inverse: Float64Array;
  #values: Float64Array;
  readonly #duals: Float64Array;
  readonly #direction: Float64Array;
  readonly #shortList: number[] = [];
  readonly #worths = new Float64Array(SHORT_LIST);
  #updates = 0;

  /**
   * `elastic` is the cost of breaking a row by 1. Columns are added before `start`, or after.
   * @param tolerance what a column must be worth beyond its cost to come in
   */
  constructor(rows: readonly SimplexRow[], elastic: number, tolerance: number) {
    this.#rows = rows;
    this.#size = rows.length;
    this.#elastic = elastic;
    this.#tolerance = tolerance;
    this.#right = new Float64Array(rows.map(({ bound }, row) => bound + (PERTURBATION * (row + 1)) / rows.length));
    this.#names = new Int32Array(this.#size);
    this.#inverse = new Float64Array(this.#size * this.#size);
    this.#values = new Float64Array(this.#size);
    this.#duals = new Float64Array(this.#size);
    this.#direction = new Float64Array(this.#size);
  }

  /** Adds a column; it is numbered from 0 in the order in which they come. */
  add(column: SparseColumn): void {
    const { length } = this.#isBasic;
    if (this.#columns.count >= length) this.#isBasic = grown(this.#isBasic, new Uint8Array(length * 2));
    this.#isBasic[this.#columns.count] = 0;
    this.#columns.add(column);
  }

  /** Begins with a basis of the first rows of this program, where it is one, and with slacks and shortfalls elsewhere. */
  start(start: SimplexStart): void {
    if (start.basis.length === 0 || !this.#startFrom(start)) this.#startFrom(COLD);
  }

  #startFrom({ basis, inverse, updates }: SimplexStart): boolean {
    this.#isBasic.fill(0);
    for (let row = 0; row < this.#size; row += 1) {
      const name = basis[row] ?? helper(row, this.#rows[row]?.sense === 'equal' ? SHORTFALL : SLACK);
      this.#names[row] = name;
      if (name >= 0) this.#isBasic[name] = 1;
    }
    if (inverse !== null && updates < UPDATES) {
      this.#extend(inverse, basis.length);
      this.#updates = updates;
      this.#evaluate();
    } else if (!this.#invert()) return false;
    for (let row = 0; row < this.#size; row += 1) {
      const value = this.#values[row] ?? 0;
      if (value >= -1e-7) continue;
      if (row < basis.length) return false;
      this.#flip(row);
    }
    return true;
  }

  /**
   * The inverse of a basis of the first rows, and of slacks in the others: [B 0; R S]⁻¹ = [B⁻¹ 0; −S R B⁻¹ S] for signs S.
   */
  #extend(inverse: Float64Array, known: number): void {
    const size = this.#size;
    const all = this.#inverse;
    all.fill(0);
    for (let row = 0; row < known; row += 1) {
      all.set(inverse.subarray(row * known, (row + 1) * known), row * size);
    }
    for (let row = known; row < size; row += 1) all[row * size + row] = this.#sign(this.#names[row] ?? 0);
    for (let position = 0; position < known; position += 1) {
      const name = this.#names[position] ?? 0;
      if (name >= 0) this.#extendBy(name, position, known);
    }
  }

  /** What a basic column's entries in the new rows come to in the inverse. */
  #extendBy(name: number, position: number, known: number): void {
    const { rows, values } = this.#columns;
    const size = this.#size;
    const all = this.#inverse;
    const end = this.#columns.end(name);
    for (let at = this.#columns.begin(name); at < end; at += 1) {
      const row = rows[at] ?? 0;
      if (row < known) continue;
      const factor = (values[at] ?? 0) * this.#sign(this.#names[row] ?? 0);
      for (let column = 0; column < known; column += 1) {
        all[row * size + column] = (all[row * size + column] ?? 0) - factor * (all[position * size + column] ?? 0);
      }
    }
  }

  /** The new row is broken: what breaks it takes the place of its slack, whose column is the other way round. */
  #flip(row: number): void {
    const { sense } = this.#rows[row] ?? { sense: 'equal' };
    this.#names[row] = helper(row, sense === 'at least' ? SHORTFALL : EXCESS);
    this.#values[row] = -(this.#values[row] ?? 0);
    for (let column = 0; column < this.#size; column += 1) {
      const at = row * this.#size + column;
      this.#inverse[at] = -(this.#inverse[at] ?? 0);
    }
  }

  /** The sign of a helper's only entry. */
  #sign(name: number): number {
    const kind = kindOf(name);
    if (kind === SLACK) return this.#rows[rowOf(name)]?.sense === 'at least' ? -1 : 1;
    return kind === SHORTFALL ? 1 : -1;
  }

  #cost(name: number): number {
    if (name >= 0) return this.#columns.cost(name);
    return kindOf(name) === SLACK ? 0 : this.#elastic;
  }

  /** Gauss and Jordan on the basis; false when it is singular. */
  #invert(): boolean {
    const size = this.#size;
    const matrix = new Float64Array(size * size);
    this.#names.forEach((name, column) => {
      if (name < 0) matrix[rowOf(name) * size + column] = this.#sign(name);
      else {
        const { rows, values } = this.#columns;
        const end = this.#columns.end(name);
        for (let at = this.#columns.begin(name); at < end; at += 1) {
          matrix[(rows[at] ?? 0) * size + column] = values[at] ?? 0;
        }
      }
    });
    const inverse = inverseOf(matrix, size);
    if (inverse === null) return false;
    this.#inverse = inverse;
    this.#updates = 0;
    this.#evaluate();
    return true;
  }

  /** The basic values: the inverse times the right-hand side. */
  #evaluate(): void {
    const size = this.#size;
    for (let row = 0; row < size; row += 1) {
      let sum = 0;
      for (let column = 0; column < size; column += 1) {
        sum += (this.#inverse[row * size + column] ?? 0) * (this.#right[column] ?? 0);
      }
      this.#values[row] = sum;
    }
  }

  /** Pivots until no column is worth coming in; false when it gave up after `most` pivots. */
  solve(most: number): boolean {
    this.#shortList.length = 0;
    this.#price();
    for (let pivots = 0; pivots < most; pivots += 1) {
      if (this.#updates >= UPDATES) {
        if (!this.#invert()) return false;
        this.#price();
      }
      const entering = this.#entering();
      if (entering === null) return true;
      this.#enter(entering);
      const leaving = this.#leaving();
      if (leaving < 0) return false;
      this.#pivot(leaving, entering);
    }
    return false;
  }

  /** The duals of the basis: its costs times its inverse. */
  #price(): void {
    const size = this.#size;
    const duals = this.#duals;
    duals.fill(0);
    for (let row = 0; row < size; row += 1) {
      const cost = this.#cost(this.#names[row] ?? 0);
      if (cost === 0) continue;
      const from = row * size;
      for (let column = 0; column < size; column += 1) {
        duals[column] = (duals[column] ?? 0) + cost * (this.#inverse[from + column] ?? 0);
      }
    }
  }

  /** What a column, or a row's slack, is worth beyond its cost. */
  #worth(name: number): number {
    const duals = this.#duals;
    if (name < 0) {
      const row = rowOf(name);
      return this.#sign(name) * (duals[row] ?? 0);
    }
    return this.#columns.product(name, duals) - this.#columns.cost(name);
  }

  /** What is worth the most of the short list; of all columns and slacks when nothing on it is; null when nothing is. */
  #entering(): number | null {
    const listed = this.#bestListed();
    if (listed !== null) return listed;
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
    for (let name = 0; name < this.#columns.count; name += 1)
      if (this.#isBasic[name] === 0) note(name, this.#worth(name));
    for (let row = 0; row < this.#size; row += 1) {
      if (this.#rows[row]?.sense !== 'equal') note(helper(row, SLACK), this.#worth(helper(row, SLACK)));
    }
    return list[0] ?? null;
  }

  #bestListed(): number | null {
    let best: number | null = null;
    let most = this.#tolerance;
    for (const name of this.#shortList) {
      if (name >= 0 && this.#isBasic[name] === 1) continue;
      const worth = this.#worth(name);
      if (worth > most) [most, best] = [worth, name];
    }
    return best;
  }

  /** How the basic values fall as one unit of the entering column comes in. */
  #enter(name: number): void {
    const size = this.#size;
    const direction = this.#direction;
    const inverse = this.#inverse;
    if (name < 0) {
      const [row, sign] = [rowOf(name), this.#sign(name)];
      for (let at = 0; at < size; at += 1) direction[at] = sign * (inverse[at * size + row] ?? 0);
      return;
    }
    for (let at = 0; at < size; at += 1) direction[at] = this.#columns.product(name, inverse, at * size);
  }

  /** The row whose basic value is the first to reach zero; of several the one with the largest pivot; −1 for none. */
  #leaving(): number {
    let best = -1;
    let least = Infinity;
    let pivot = 0;
    for (let row = 0; row < this.#size; row += 1) {
      const step = this.#direction[row] ?? 0;
      if (step <= PIVOT_TOLERANCE) continue;
      const ratio = Math.max(0, this.#values[row] ?? 0) / step;
      if (ratio > least + RATIO_TOLERANCE || (ratio >= least - RATIO_TOLERANCE && step <= pivot)) continue;
      [best, least, pivot] = [row, ratio, step];
    }
    return best;
  }

  #pivot(row: number, entering: number): void {
    const worth = this.#worth(entering);
    const pivot = this.#direction[row] ?? 1;
    const step = Math.max(0, this.#values[row] ?? 0) / pivot;
    this.#eliminate(row, pivot, step);
    // The duals change by a multiple of the new row of the inverse.
    const size = this.#size;
    const from = row * size;
    for (let column = 0; column < size; column += 1) {
      this.#duals[column] = (this.#duals[column] ?? 0) - worth * (this.#inverse[from + column] ?? 0);
    }
    this.#values[row] = step;
    const leaving = this.#names[row] ?? 0;
    if (leaving >= 0) this.#isBasic[leaving] = 0;
    if (entering >= 0) this.#isBasic[entering] = 1;
    this.#names[row] = entering;
    this.#updates += 1;
  }

  /** Clears the entering column out of all rows of the inverse but one, and takes the step. */
  #eliminate(row: number, pivot: number, step: number): void {
    const size = this.#size;
    const inverse = this.#inverse;
    const from = row * size;
    for (let column = 0; column < size; column += 1) inverse[from + column] = (inverse[from + column] ?? 0) / pivot;
    for (let other = 0; other < size; other += 1) {
      const factor = this.#direction[other] ?? 0;
      if (other === row || factor === 0) continue;
      this.#values[other] = (this.#values[other] ?? 0) - factor * step;
      const to = other * size;
      for (let column = 0; column < size; column += 1) {
        inverse[to + column] = (inverse[to + column] ?? 0) - factor * (inverse[from + column] ?? 0);
      }
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

  /** The duals of the last solve, one a row: the price of one more unit of its bound. */
  get duals(): Float64Array {
    return this.#duals;
  }

  /** What is basic now and the inverse, as a start for a program with more rows. */
  get state(): SimplexStart {
    return { basis: [...this.#names], inverse: this.#inverse.slice(), updates: this.#updates };
  }

  /** The value of every column. */
  get point(): Float64Array {
    const point = new Float64Array(this.#columns.count);
    this.#names.forEach((name, row) => {
      if (name >= 0) point[name] = Math.max(0, this.#values[row] ?? 0);
    });
    return point;
  }

  /** What the point costs, with what breaks rows. */
  get value(): number {
    return this.#names.reduce((sum, name, row) => sum + this.#cost(name) * (this.#values[row] ?? 0), 0);
  }

  /** By how much rows are broken in all. */
  get broken(): number {
    return this.#names.reduce(
      (sum, name, row) => (name < 0 && kindOf(name) !== SLACK ? sum + Math.max(0, this.#values[row] ?? 0) : sum),
      0,
    );
  }
}

import { inverseOf } from './dense-inverse.js';
import { EXCESS, helper, kindOf, rowOf, SHORTFALL, SLACK } from './row-helpers.js';
import type { SimplexRow, SimplexStart } from './simplex-start.js';
import { grown, type SparseColumn, type SparseColumns } from './sparse-columns.js';

/** Updates of the inverse before it is made afresh. */
const UPDATES = 80;
/** After so many updates it is not handed on as it is. */
const FRESH = 20;
/** Rows are set apart by so much, so that ties in the ratio test are rare. */
const PERTURBATION = 1e-7;
/** A basic value is below zero when it is less than this. */
const BROKEN = -1e-7;

/** What is basic in each row of a growing program: its values, and a dense inverse of its columns, with which steps are taken. */
export class Basis {
  readonly rows: readonly SimplexRow[];
  readonly size: number;
  readonly columns: SparseColumns;
  /** What is basic in each row, see row-helpers. */
  readonly names: Int32Array;
  readonly values: Float64Array;
  /** Row by row. */
  inverse: Float64Array;
  /** How the basic values fall as one unit of the column comes in that was asked about last. */
  readonly direction: Float64Array;
  readonly #right: Float64Array;
  /** The places of a row of the inverse that are not zero: mostly few, as slacks are basic in many rows. */
  readonly #filled: Int32Array;
  #isBasic: Uint8Array;
  #updates = 0;

  constructor(rows: readonly SimplexRow[], columns: SparseColumns) {
    const size = rows.length;
    this.rows = rows;
    this.columns = columns;
    this.#isBasic = new Uint8Array(columns.count + 64);
    this.size = size;
    this.#right = new Float64Array(rows.map(({ bound }, row) => bound + (PERTURBATION * (row + 1)) / size));
    this.names = new Int32Array(size);
    this.inverse = new Float64Array(size * size);
    this.values = new Float64Array(size);
    this.direction = new Float64Array(size);
    this.#filled = new Int32Array(size);
  }

  /** Adds a column; it is numbered from 0 in the order in which they come. */
  add(column: SparseColumn): void {
    const { length } = this.#isBasic;
    if (this.columns.count >= length) this.#isBasic = grown(this.#isBasic, new Uint8Array(length * 2));
    this.#isBasic[this.columns.count] = 0;
    this.columns.add(column);
  }

  isBasic(column: number): boolean {
    return this.#isBasic[column] === 1;
  }

  /** The sign of a helper's only entry. */
  sign(name: number): number {
    const kind = kindOf(name);
    if (kind === SLACK) return this.rows[rowOf(name)]?.sense === 'at least' ? -1 : 1;
    return kind === SHORTFALL ? 1 : -1;
  }

  /**
   * Begins with what is basic in the first rows, and with slacks or shortfalls in the others. Values may be below zero then.
   * @returns false where that is no basis.
   */
  begin({ basis, inverse, updates }: SimplexStart): boolean {
    this.#isBasic.fill(0);
    for (let row = 0; row < this.size; row += 1) {
      const name = basis[row] ?? helper(row, this.rows[row]?.sense === 'equal' ? SHORTFALL : SLACK);
      this.names[row] = name;
      if (name >= 0) this.#isBasic[name] = 1;
    }
    if (inverse === null || updates >= UPDATES) return this.invert();
    this.#extend(inverse, basis.length);
    this.#updates = updates;
    this.#evaluate();
    return true;
  }

  /**
   * The inverse of a basis of the first rows, and of slacks in the others: [B 0; R S]⁻¹ = [B⁻¹ 0; −S R B⁻¹ S] for signs S.
   */
  #extend(inverse: Float64Array, known: number): void {
    const size = this.size;
    const all = this.inverse;
    all.fill(0);
    for (let row = 0; row < known; row += 1) {
      all.set(inverse.subarray(row * known, (row + 1) * known), row * size);
    }
    for (let row = known; row < size; row += 1) all[row * size + row] = this.sign(this.names[row] ?? 0);
    if (known === size) return;
    for (let position = 0; position < known; position += 1) {
      const name = this.names[position] ?? 0;
      if (name >= 0) this.#extendBy(name, position, known);
    }
  }

  /** What a basic column's entries in the new rows come to in the inverse. */
  #extendBy(name: number, position: number, known: number): void {
    const { rows, values } = this.columns;
    const size = this.size;
    const all = this.inverse;
    const end = this.columns.end(name);
    for (let at = this.columns.begin(name); at < end; at += 1) {
      const row = rows[at] ?? 0;
      if (row < known) continue;
      const factor = (values[at] ?? 0) * this.sign(this.names[row] ?? 0);
      for (let column = 0; column < known; column += 1) {
        all[row * size + column] = (all[row * size + column] ?? 0) - factor * (all[position * size + column] ?? 0);
      }
    }
  }

  /**
   * Of the rows with a basic value below zero the one that is the farthest from it, by its row of the inverse ("Steepest-edge simplex
   * algorithms for linear programming", 1992); −1 for none.
   */
  brokenRow(): number {
    let broken = -1;
    let farthest = 0;
    for (let row = 0; row < this.size; row += 1) {
      const value = this.values[row] ?? 0;
      if (value >= BROKEN) continue;
      const distance = (value * value) / this.#lengthOf(row);
      if (distance > farthest) [broken, farthest] = [row, distance];
    }
    return broken;
  }

  /** The squares of a row of the inverse. */
  #lengthOf(row: number): number {
    const end = (row + 1) * this.size;
    let sum = 0;
    for (let at = row * this.size; at < end; at += 1) {
      const value = this.inverse[at] ?? 0;
      sum += value * value;
    }
    return sum;
  }

  /**
   * Where a slack is below zero, what breaks its row takes its place, whose column is the other way round.
   * @returns false where anything else is below zero.
   */
  flipBroken(): boolean {
    for (let row = 0; row < this.size; row += 1) {
      if ((this.values[row] ?? 0) >= BROKEN) continue;
      const name = this.names[row] ?? 0;
      if (name >= 0) return false;
      this.#flip(row, name);
    }
    return true;
  }

  #flip(row: number, name: number): void {
    const becomes = this.sign(name) > 0 ? EXCESS : SHORTFALL;
    this.names[row] = helper(rowOf(name), becomes);
    this.values[row] = -(this.values[row] ?? 0);
    for (let column = 0; column < this.size; column += 1) {
      const at = row * this.size + column;
      this.inverse[at] = -(this.inverse[at] ?? 0);
    }
  }

  /** Whether the inverse has been updated so often that it is to be made afresh. */
  get isStale(): boolean {
    return this.#updates >= UPDATES;
  }

  /** Gauss and Jordan on the basis; false when it is singular. */
  invert(): boolean {
    const size = this.size;
    const matrix = new Float64Array(size * size);
    this.names.forEach((name, column) => {
      if (name < 0) matrix[rowOf(name) * size + column] = this.sign(name);
      else {
        const { rows, values } = this.columns;
        const end = this.columns.end(name);
        for (let at = this.columns.begin(name); at < end; at += 1) {
          matrix[(rows[at] ?? 0) * size + column] = values[at] ?? 0;
        }
      }
    });
    const inverse = inverseOf(matrix, size);
    if (inverse === null) return false;
    this.inverse = inverse;
    this.#updates = 0;
    this.#evaluate();
    return true;
  }

  /** The basic values: the inverse times the right-hand side. */
  #evaluate(): void {
    const size = this.size;
    for (let row = 0; row < size; row += 1) {
      let sum = 0;
      for (let column = 0; column < size; column += 1) {
        sum += (this.inverse[row * size + column] ?? 0) * (this.#right[column] ?? 0);
      }
      this.values[row] = sum;
    }
  }

  /** How the basic values fall as one unit of the column comes in. */
  turnTo(name: number): Float64Array {
    const { size, direction, inverse } = this;
    if (name < 0) {
      const [row, sign] = [rowOf(name), this.sign(name)];
      for (let at = 0; at < size; at += 1) direction[at] = sign * (inverse[at * size + row] ?? 0);
      return direction;
    }
    for (let at = 0; at < size; at += 1) direction[at] = this.columns.product(name, inverse, at * size);
    return direction;
  }

  /** Takes in so much of the column that was turned to, which becomes basic in a row. */
  step(row: number, entering: number, amount: number): void {
    this.#eliminate(row, amount);
    this.values[row] = amount;
    const leaving = this.names[row] ?? 0;
    if (leaving >= 0) this.#isBasic[leaving] = 0;
    if (entering >= 0) this.#isBasic[entering] = 1;
    this.names[row] = entering;
    this.#updates += 1;
  }

  /** Clears the entering column out of all rows of the inverse but one. */
  #eliminate(row: number, amount: number): void {
    const { size, inverse, direction, values } = this;
    const filled = this.#filled;
    const from = row * size;
    const pivot = direction[row] ?? 1;
    let count = 0;
    for (let column = 0; column < size; column += 1) {
      const value = inverse[from + column] ?? 0;
      if (value === 0) continue;
      inverse[from + column] = value / pivot;
      filled[count] = column;
      count += 1;
    }
    for (let other = 0; other < size; other += 1) {
      const factor = direction[other] ?? 0;
      if (other === row || factor === 0) continue;
      values[other] = (values[other] ?? 0) - factor * amount;
      const to = other * size;
      for (let at = 0; at < count; at += 1) {
        const column = filled[at] ?? 0;
        inverse[to + column] = (inverse[to + column] ?? 0) - factor * (inverse[from + column] ?? 0);
      }
    }
  }

  /** What is basic now and its inverse, not long since made, as a start for a program with more rows. */
  get state(): SimplexStart {
    return { ...this.lent, inverse: this.inverse.slice() };
  }

  /** The same for whoever begins with it at once: the inverse is the very one that the next step changes. */
  get lent(): SimplexStart {
    if (this.#updates > FRESH) this.invert();
    return { basis: [...this.names], inverse: this.inverse, updates: this.#updates };
  }
}

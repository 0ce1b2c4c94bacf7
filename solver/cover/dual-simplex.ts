import type { Basis } from './basis.js';
import { EXCESS, helper, SHORTFALL, SLACK } from './row-helpers.js';

/** Smaller pivots make numbers that mean nothing. */
const PIVOT_TOLERANCE = 1e-7;

/** What the simplex method that it serves knows of costs and duals. */
type Priced = {
  readonly basis: Basis;
  /** What is lost in rounding: a column may be worth so much beyond its cost. */
  readonly tolerance: number;
  /** What a column, or a row's helper, is worth beyond its cost. */
  readonly worth: (name: number) => number;
  /** Lets the column that the basis was turned to take the place of what is basic in a row. */
  readonly pivot: (row: number, entering: number) => void;
  /** Makes the inverse and the duals afresh; false where that cannot be. */
  readonly renew: () => boolean;
};

/**
 * The dual simplex method ("The dual method of solving the linear programming problem", 1954): where no column is worth more than it
 * costs, but basic values are below zero, as where a row was added or its bound moved, it mends one after the other so that
 * no column becomes worth more. What the basis costs rises at every step, and is a bound at each.
 * @returns how many steps it took; null where a column is worth more to begin with, or numbers mean nothing.
 */
export function mendBroken(simplex: Priced, most: number): number | null {
  const prices = new DualPrices(simplex);
  if (!prices.renew()) return null;
  for (let steps = 0; steps < most; steps += 1) {
    const row = simplex.basis.brokenRow();
    if (row < 0) return steps;
    if (simplex.basis.isStale && !(simplex.renew() && prices.renew())) return null;
    const entering = prices.entering(row);
    if (entering === null) return null;
    if (!((simplex.basis.turnTo(entering)[row] ?? 0) < -PIVOT_TOLERANCE / 2)) return null;
    simplex.pivot(row, entering);
    prices.step();
  }
  return most;
}

/** What is left of each column's cost when its row's duals are paid, kept from step to step. */
class DualPrices {
  readonly #simplex: Priced;
  /** Columns, then three helpers a row. */
  readonly #rests: Float64Array;
  /** How each of them would change what is basic in the row that leaves. */
  readonly #changes: Float64Array;
  readonly #count: number;
  #entering = -1;
  #leaving = -1;

  constructor(simplex: Priced) {
    const { columns, size } = simplex.basis;
    this.#simplex = simplex;
    this.#count = columns.count;
    this.#rests = new Float64Array(columns.count + 3 * size);
    this.#changes = new Float64Array(columns.count + 3 * size);
  }

  /** The place of a helper behind the columns. */
  #placeOf(name: number): number {
    return name >= 0 ? name : this.#count - name - 1;
  }

  /** False where a column is worth more than it costs. */
  renew(): boolean {
    const { basis, tolerance, worth } = this.#simplex;
    for (let column = 0; column < this.#count; column += 1) {
      const rest = basis.isBasic(column) ? 0 : -worth(column);
      if (rest < -10 * tolerance) return false;
      this.#rests[column] = Math.max(0, rest);
    }
    for (let row = 0; row < basis.size; row += 1)
      for (const kind of kindsOf(basis, row)) {
        const rest = -worth(helper(row, kind));
        if (rest < -10 * tolerance) return false;
        this.#rests[this.#placeOf(helper(row, kind))] = Math.max(0, rest);
      }
    return true;
  }

  /**
   * What comes in for what is basic in a row: of all whose cost is used up first the one with the largest pivot ("Pivot selection
   * methods of the Devex LP code", 1973). Null where nothing lifts the row.
   */
  entering(row: number): number | null {
    const { basis } = this.#simplex;
    this.#change(row);
    const rests = this.#rests;
    const changes = this.#changes;
    const least = this.#leastShare();
    let best = -1;
    let largest = -PIVOT_TOLERANCE;
    for (let place = 0; place < changes.length; place += 1) {
      const change = changes[place] ?? 0;
      if (change >= largest || (rests[place] ?? 0) > least * -change) continue;
      best = place;
      largest = change;
    }
    if (best < 0) return null;
    this.#entering = best;
    this.#leaving = this.#placeOf(basis.names[row] ?? 0);
    return best < this.#count ? best : this.#count - best - 1;
  }

  /** How each column and helper would change what is basic in a row; nothing for one that is basic itself. */
  #change(row: number): void {
    const { basis } = this.#simplex;
    const { inverse, size, columns, names } = basis;
    const changes = this.#changes;
    const from = row * size;
    columns.products(inverse, from, changes);
    for (let at = 0; at < size; at += 1) {
      const change = inverse[from + at] ?? 0;
      const place = this.#count + 3 * at;
      const sense = basis.rows[at]?.sense;
      changes[place] = sense === 'equal' ? 0 : sense === 'at least' ? -change : change;
      changes[place + 1] = sense === 'at most' ? 0 : change;
      changes[place + 2] = sense === 'at least' ? 0 : -change;
    }
    for (let at = 0; at < size; at += 1) changes[this.#placeOf(names[at] ?? 0)] = 0;
  }

  /** The least share of its change that uses up what is left of any cost. */
  #leastShare(): number {
    const { tolerance } = this.#simplex;
    const rests = this.#rests;
    const changes = this.#changes;
    let least = Infinity;
    for (let place = 0; place < changes.length; place += 1) {
      const change = changes[place] ?? 0;
      if (change < -PIVOT_TOLERANCE) least = Math.min(least, ((rests[place] ?? 0) + tolerance) / -change);
    }
    return least;
  }

  /** The rests after what was found to come in has. */
  step(): void {
    const rests = this.#rests;
    const changes = this.#changes;
    const step = (rests[this.#entering] ?? 0) / (changes[this.#entering] ?? -1);
    for (let place = 0; place < rests.length; place += 1) {
      const change = changes[place] ?? 0;
      if (change !== 0) rests[place] = Math.max(0, (rests[place] ?? 0) - step * change);
    }
    rests[this.#leaving] = -step;
    rests[this.#entering] = 0;
  }
}

/** What a row has besides columns. */
const kindsOf = ({ rows }: Basis, row: number): readonly number[] => kindsBySense[rows[row]?.sense ?? 'equal'];

const kindsBySense = {
  'at least': [SLACK, SHORTFALL],
  'at most': [SLACK, EXCESS],
  equal: [SHORTFALL, EXCESS],
} as const;

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
  const { basis, tolerance } = simplex;
  const { count } = basis.columns;
  // Of all columns, then of three helpers a row.
  const rests = new Float64Array(count + 3 * basis.size);
  const changes = rests.slice();
  if (!payDuals(simplex, rests)) return null;
  for (let steps = 0; steps < most; steps += 1) {
    const row = basis.brokenRow();
    if (row < 0) return steps;
    if (basis.isStale && !(simplex.renew() && payDuals(simplex, rests))) return null;
    changeBy(basis, row, changes);
    const place = firstUsedUp(rests, changes, tolerance);
    const entering = place < count ? place : count - place - 1;
    if (place < 0 || !((basis.turnTo(entering)[row] ?? 0) < -PIVOT_TOLERANCE / 2)) return null;
    const leaving = placeOf(basis.names[row] ?? 0, count);
    simplex.pivot(row, entering);
    payFor(place, leaving, rests, changes);
  }
  return most;
}

/** The place of a helper behind the columns, and of a column. */
const placeOf = (name: number, count: number): number => (name >= 0 ? name : count - name - 1);

/** What is left of the cost of each column and helper when duals are paid; false where one is worth more than it costs. */
function payDuals({ basis, tolerance, worth }: Priced, rests: Float64Array): boolean {
  const { count } = basis.columns;
  const isPaid = (name: number): boolean => {
    const rest = -worth(name);
    rests[placeOf(name, count)] = Math.max(0, rest);
    return rest >= -10 * tolerance;
  };
  rests.fill(0);
  for (let column = 0; column < count; column += 1) if (!basis.isBasic(column) && !isPaid(column)) return false;
  for (const [row, { sense }] of basis.rows.entries()) {
    // What breaks a row that binds the other way never comes in.
    if (sense !== 'equal' && !isPaid(helper(row, SLACK))) return false;
    if (!isPaid(helper(row, SHORTFALL)) || !isPaid(helper(row, EXCESS))) return false;
  }
  return true;
}

/** What is left when one has come in for another. */
function payFor(entering: number, leaving: number, rests: Float64Array, changes: Float64Array): void {
  const step = (rests[entering] ?? 0) / (changes[entering] ?? -1);
  for (let at = 0; at < rests.length; at += 1) {
    const change = changes[at] ?? 0;
    if (change !== 0) rests[at] = Math.max(0, (rests[at] ?? 0) - step * change);
  }
  rests[leaving] = -step;
  rests[entering] = 0;
}

/** How each column and helper would change what is basic in a row; nothing for one that is basic itself. */
function changeBy({ inverse, size, columns, names, rows }: Basis, row: number, changes: Float64Array): void {
  const from = row * size;
  columns.products(inverse, from, changes);
  for (let at = 0; at < size; at += 1) {
    const change = inverse[from + at] ?? 0;
    const place = columns.count + 3 * at;
    const sense = rows[at]?.sense;
    changes[place] = sense === 'equal' ? 0 : sense === 'at least' ? -change : change;
    changes[place + 1] = sense === 'at most' ? 0 : change;
    changes[place + 2] = sense === 'at least' ? 0 : -change;
  }
  for (const name of names) changes[placeOf(name, columns.count)] = 0;
}

/**
 * What comes in: of all whose cost is used up first the one with the largest pivot ("Pivot selection methods of the Devex LP code",
 * 1973); −1 where nothing lifts the row.
 */
function firstUsedUp(rests: Float64Array, changes: Float64Array, tolerance: number): number {
  let least = Infinity;
  for (let place = 0; place < changes.length; place += 1) {
    const change = changes[place] ?? 0;
    if (change < -PIVOT_TOLERANCE) least = Math.min(least, ((rests[place] ?? 0) + tolerance) / -change);
  }
  let best = -1;
  let largest = -PIVOT_TOLERANCE;
  for (let place = 0; place < changes.length; place += 1) {
    const change = changes[place] ?? 0;
    if (change >= largest || (rests[place] ?? 0) > least * -change) continue;
    best = place;
    largest = change;
  }
  return best;
}

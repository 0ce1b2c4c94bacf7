import { remembered } from '../remembered.js';
import { amountOf, type ColumnPool, type PoolEntries } from './column-pool.js';
import { boundOfRow, columnCaps, counts, keepsCaps, type ColumnCaps, type Decisions } from './decisions.js';
import type { BranchingConstraint, Counted, CoverColumn, CoverProgram } from './program.js';
import { Simplex, type SimplexRow, type SimplexStart } from './simplex.js';
import { grown } from './sparse-columns.js';
import { affordable, type DualPrices } from './dual-prices.js';

/** What duals add up to over the bounds of all rows stays below this, so that such sums are safe integers. */
const greatestSum = 2 ** 52;

/** Where a restricted master begins: columns of the pool that may matter, and a state in the names of its `state`. */
export type MasterStart = {
  readonly columns: readonly number[];
  /** The pool's later columns, from this one on, may matter, too. */
  readonly since: number;
  readonly state: SimplexStart;
};

/** The restricted master at one node: the relaxation's rows, with those columns of the pool only that may matter there. */
export class RestrictedMaster<Content> {
  readonly #program: CoverProgram<Content>;
  readonly #pool: ColumnPool<Content>;
  readonly #decisions: Decisions;
  readonly #conditionsOf: (group: number) => readonly (readonly [row: number, feature: number])[];
  readonly #capsOf: (group: number) => ColumnCaps;
  readonly #simplex: Simplex;
  readonly #elastic: number;
  /** The columns of the pool that are in it, and where. */
  readonly #columns: number[] = [];
  /** By column of the pool its place from 1 on; 0 for one that is not in it. */
  #places: Int32Array;
  #seen: number;

  constructor(
    program: CoverProgram<Content>,
    pool: ColumnPool<Content>,
    decisions: Decisions,
    elastic: number,
    start: MasterStart,
  ) {
    this.#program = program;
    this.#pool = pool;
    this.#decisions = decisions;
    this.#elastic = elastic;
    this.#places = new Int32Array(pool.columns.length + 64);
    this.#conditionsOf = conditionsByGroup(program, decisions.conditions);
    this.#capsOf = columnCaps(decisions.conditions, program);
    const taken = takenAmounts(
      decisions.taken.map((index) => pool.columns[index]),
      program,
    );
    const rows: SimplexRow[] = [...program.rows, ...decisions.conditions].map((row) => ({
      sense: row.sense,
      bound: boundOfRow(row, program, decisions) - taken(row),
    }));
    this.#simplex = new Simplex(rows, elastic, 1e-6 + elastic * 1e-11);
    for (const column of pool.fixed) this.#simplex.add(column);
    const { basis } = start.state;
    const basic = new Set<number>();
    for (const name of basis) if (name >= program.fixed.length) basic.add(name - program.fixed.length);
    for (const index of start.columns) {
      const allowed = this.#allowed(index);
      if (allowed || basic.has(index)) this.#add(index, allowed);
    }
    this.#seen = start.since;
    this.#addNew();
    for (const index of basic) if (!this.#has(index)) this.#add(index, this.#allowed(index));
    const named = basis.map((name) =>
      name < program.fixed.length ? name : program.fixed.length + (this.#places[name - program.fixed.length] ?? 1) - 1,
    );
    this.#simplex.start({ ...start.state, basis: named });
  }

  #has(index: number): boolean {
    return (this.#places[index] ?? 0) > 0;
  }

  #allowed(index: number): boolean {
    const column = this.#pool.columns[index];
    if (column === undefined || (this.#decisions.most[column.group] ?? 0) === 0) return false;
    return keepsCaps(column.amounts, this.#capsOf(column.group));
  }

  #addNew(): void {
    for (; this.#seen < this.#pool.columns.length; this.#seen += 1) {
      if (!this.#has(this.#seen) && this.#allowed(this.#seen)) this.#add(this.#seen, true);
    }
  }

  /** Takes a column of the pool in. @returns whether it was not there yet. */
  include(index: number): boolean {
    if (this.#has(index)) return false;
    this.#add(index, this.#allowed(index));
    return true;
  }

  /** A column that is no longer allowed is so dear that it leaves the basis. */
  #add(index: number, allowed: boolean): void {
    const column = this.#pool.columns[index];
    const entries = this.#pool.entries[index];
    if (column === undefined || entries === undefined) return;
    this.#columns.push(index);
    if (index >= this.#places.length) this.#places = grown(this.#places, new Int32Array(2 * index));
    this.#places[index] = this.#columns.length;
    const cost = allowed ? column.cost : column.cost + this.#elastic;
    const { rows, values } = this.#withConditions(column, entries);
    this.#simplex.add({ rows, values, cost });
  }

  #withConditions({ group, amounts }: CoverColumn<Content>, entries: PoolEntries): PoolEntries {
    const conditions = this.#conditionsOf(group);
    let all: { readonly rows: number[]; readonly values: number[] } | null = null;
    for (const [row, feature] of conditions) {
      const amount = amountOf(amounts, feature);
      if (amount === 0) continue;
      all ??= { rows: [...entries.rows], values: [...entries.values] };
      all.rows.push(row);
      all.values.push(amount);
    }
    return all ?? entries;
  }

  /** Solves over the columns at hand, with no more pivots than this. */
  solve(pivots = 5_000): void {
    this.#addNew();
    this.#simplex.solve(pivots);
  }

  /** What the last solve costs. */
  get value(): number {
    return this.#simplex.value;
  }

  /** Makes broken rows dearer where the last solve broke any; false when none was, or they cannot be dearer. */
  stiffen(): boolean {
    return this.#simplex.broken > 1e-4 && this.#simplex.stiffen();
  }

  /** The simplex's state, with the pool's columns by their place there, counted on from the fixed ones. */
  get state(): SimplexStart {
    const fixed = this.#program.fixed.length;
    const { state } = this.#simplex;
    const basis = state.basis.map((name) => (name < fixed ? name : fixed + (this.#columns[name - fixed] ?? 0)));
    return { ...state, basis };
  }

  /** The columns of the pool that are in it. */
  get columns(): readonly number[] {
    return this.#columns;
  }

  /** How much of each column of the pool is used. */
  get point(): Float64Array {
    const point = new Float64Array(this.#pool.columns.length);
    const found = this.#simplex.point;
    this.#columns.forEach((index, place) => (point[index] = found[this.#program.fixed.length + place] ?? 0));
    return point;
  }

  /**
   * The duals as integers, rounded down so that no column of the basis is worth more than it costs. Rows that bind one
   * way only keep their sign. Where broken rows are so dear that sums would outgrow safe integers it is a share of the
   * duals, which prices no column above its cost where the whole of them does not.
   */
  duals(scale: number): DualPrices {
    const { duals: fractional } = this.#simplex;
    const all = [...this.#program.rows, ...this.#decisions.conditions];
    const sum = all.reduce(
      (so, { bound }, row) => so + Math.abs(fractional[row] ?? 0) * Math.max(1, Math.abs(bound)),
      0,
    );
    const unit = Math.min(scale, greatestSum / sum);
    const rounded = new Float64Array(
      all.map(({ sense }, row) => {
        const dual = Math.floor((fractional[row] ?? 0) * unit + 1e-4);
        if (sense === 'equal') return dual;
        return sense === 'at least' ? Math.max(0, dual) : Math.min(0, dual);
      }),
    );
    const { length } = this.#program.rows;
    const duals = { rows: rounded.slice(0, length), conditions: rounded.slice(length), scale };
    for (const column of this.#program.fixed) if (column.most === Infinity) affordable(column, duals);
    return duals;
  }
}

/** The rows and features of the conditions that count a group's columns. */
function conditionsByGroup<Content>(
  { rows }: CoverProgram<Content>,
  conditions: readonly BranchingConstraint[],
): (group: number) => readonly (readonly [row: number, feature: number])[] {
  const known = new Map<number, readonly (readonly [number, number])[]>();
  return (group) =>
    remembered(known, group, () =>
      conditions.flatMap((condition, index) =>
        counts(condition, group) ? [[rows.length + index, condition.feature] as const] : [],
      ),
    );
}

function takenAmounts<Content>(
  columns: readonly (CoverColumn<Content> | undefined)[],
  { features }: CoverProgram<Content>,
): (of: Counted) => number {
  if (columns.length === 0) return () => 0;
  const sums = new Float64Array(features);
  for (const column of columns)
    for (const [feature, amount] of column?.amounts ?? []) sums[feature] = (sums[feature] ?? 0) + amount;
  return (of) => {
    if (of.groups === null) return sums[of.feature] ?? 0;
    return columns.reduce(
      (sum, column) =>
        column !== undefined && counts(of, column.group) ? sum + amountOf(column.amounts, of.feature) : sum,
      0,
    );
  };
}

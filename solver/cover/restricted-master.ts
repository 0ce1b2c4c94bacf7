import { gathered } from '../gathered.js';
import { remembered } from '../remembered.js';
import { amountOf, type ColumnPool } from './column-pool.js';
import {
  boundOfRow,
  columnCaps,
  counts,
  keepsCaps,
  withCondition,
  type ColumnCaps,
  type Decisions,
} from './decisions.js';
import type { BranchingConstraint, Counted, CoverColumn, CoverProgram } from './program.js';
import { Simplex, type SimplexRow, type SimplexStart } from './simplex.js';
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

/** What a restricted master is of. */
type Relaxed<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly decisions: Decisions;
  /** What it costs to break a row by 1. */
  readonly elastic: number;
};

/** The restricted master at one node: the relaxation's rows, with those columns of the pool only that may matter there. */
export class RestrictedMaster<Content> {
  readonly #relaxed: Relaxed<Content>;
  readonly #conditionsOf: (group: number) => readonly (readonly [row: number, feature: number])[];
  readonly #capsOf: (group: number) => ColumnCaps;
  /** The columns of the pool that are in it, with their places behind the fixed ones, in their order. */
  readonly #places: Map<number, number>;
  /** The pool's columns from here on have not been looked at. */
  #seen: number;
  readonly #simplex: Simplex;

  private constructor(
    relaxed: Relaxed<Content>,
    simplex: Simplex,
    seen: number,
    places: ReadonlyMap<number, number> = new Map(),
  ) {
    const { program, decisions } = relaxed;
    this.#relaxed = relaxed;
    this.#conditionsOf = conditionsByGroup(program, decisions.conditions);
    this.#capsOf = columnCaps(decisions.conditions, program);
    this.#simplex = simplex;
    this.#seen = seen;
    this.#places = new Map(places);
  }

  /** The master that begins with some columns. */
  static from<Content>(relaxed: Relaxed<Content>, start: MasterStart): RestrictedMaster<Content> {
    const { program, pool, decisions, elastic } = relaxed;
    const taken = takenAmounts(
      decisions.taken.map((index) => pool.columns[index]),
      program,
    );
    const rows: SimplexRow[] = [...program.rows, ...decisions.conditions].map((row) => ({
      sense: row.sense,
      bound: boundOfRow(row, program, decisions) - taken(row),
    }));
    const simplex = new Simplex(rows, elastic, 1e-6 + elastic * 1e-11);
    for (const column of pool.fixed) simplex.add(column);
    const master = new RestrictedMaster(relaxed, simplex, start.since);
    master.#begin(start);
    return master;
  }

  #begin({ columns, state }: MasterStart): void {
    const fixed = this.#relaxed.program.fixed.length;
    const basic = new Set<number>();
    for (const name of state.basis) if (name >= fixed) basic.add(name - fixed);
    for (const index of columns) {
      const allowed = this.#allowed(index);
      if ((allowed || basic.has(index)) && !this.#places.has(index)) this.#add(index, allowed);
    }
    this.#addNew();
    for (const index of basic) if (!this.#places.has(index)) this.#add(index, this.#allowed(index));
    const named = state.basis.map((name) => (name < fixed ? name : (this.#places.get(name - fixed) ?? 0)));
    this.#simplex.start({ ...state, basis: named });
  }

  /** The same where something more is decided, begun with what this one is solved with. */
  narrowed(condition: BranchingConstraint): RestrictedMaster<Content> {
    const { program, pool, decisions } = this.#relaxed;
    const relaxed = { ...this.#relaxed, decisions: withCondition(decisions, condition, program) };
    const amounts = new Float64Array(program.fixed.length + this.#places.size);
    const dearer: number[] = [];
    for (const [index, place] of this.#places) {
      const column = pool.columns[index];
      if (column === undefined || !counts(condition, column.group)) continue;
      const amount = this.#amountOf(column, condition.feature);
      amounts[place] = amount;
      if (amount > condition.bound && isRuledOut(condition, program)) dearer.push(place);
    }
    const simplex = this.#simplex.withRow(condition, amounts);
    for (const column of dearer) simplex.raise(column);
    return new RestrictedMaster(relaxed, simplex, this.#seen, this.#places);
  }

  #amountOf({ amounts }: CoverColumn<Content>, feature: number): number {
    return feature === this.#relaxed.program.unit ? 1 : amountOf(amounts, feature);
  }

  #allowed(index: number): boolean {
    const { pool, decisions } = this.#relaxed;
    const column = pool.columns[index];
    if (column === undefined || (decisions.most[column.group] ?? 0) === 0) return false;
    return keepsCaps(column.amounts, this.#capsOf(column.group));
  }

  #addNew(): void {
    const { columns } = this.#relaxed.pool;
    for (; this.#seen < columns.length; this.#seen += 1) {
      if (!this.#places.has(this.#seen) && this.#allowed(this.#seen)) this.#add(this.#seen, true);
    }
  }

  /** Takes a column of the pool in. @returns whether it was not there yet. */
  include(index: number): boolean {
    if (this.#places.has(index)) return false;
    this.#add(index, this.#allowed(index));
    return true;
  }

  /** A column that is no longer allowed is so dear that it leaves the basis, unless a condition that allows none has it leave. */
  #add(index: number, allowed: boolean): void {
    const { pool, program } = this.#relaxed;
    const column = pool.columns[index];
    const entries = pool.entries[index];
    if (column === undefined || entries === undefined) return;
    const place = program.fixed.length + this.#places.size;
    this.#places.set(index, place);
    const { cost, group } = column;
    this.#simplex.add({ rows: entries.rows, values: entries.values, cost });
    if (!allowed && !this.#isLeaving(column)) this.#simplex.raise(place);
    for (const [row, feature] of this.#conditionsOf(group)) {
      const amount = this.#amountOf(column, feature);
      if (amount !== 0) this.#simplex.extend(row, amount);
    }
  }

  #isLeaving(column: CoverColumn<Content>): boolean {
    return this.#relaxed.decisions.conditions.some(
      (condition) =>
        condition.sense === 'at most' &&
        condition.bound === 0 &&
        counts(condition, column.group) &&
        this.#amountOf(column, condition.feature) > 0,
    );
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

  /** What is decided where it is solved. */
  get decisions(): Decisions {
    return this.#relaxed.decisions;
  }

  /** What it costs to break a row by 1. */
  get elastic(): number {
    return this.#simplex.elastic;
  }

  /** The simplex's state, with the pool's columns by their place there, counted on from the fixed ones. */
  get state(): SimplexStart {
    const fixed = this.#relaxed.program.fixed.length;
    const { state } = this.#simplex;
    const { columns } = this;
    const basis = state.basis.map((name) => (name < fixed ? name : fixed + (columns[name - fixed] ?? 0)));
    return { ...state, basis };
  }

  /** The columns of the pool that are in it. */
  get columns(): readonly number[] {
    return [...this.#places.keys()];
  }

  /** How much of each column of the pool is used. */
  get point(): Float64Array {
    const point = new Float64Array(this.#relaxed.pool.columns.length);
    const found = this.#simplex.point;
    for (const [index, place] of this.#places) point[index] = found[place] ?? 0;
    return point;
  }

  /**
   * The duals as integers, rounded down so that no column of the basis is worth more than it costs. Rows that bind one
   * way only keep their sign. Where broken rows are so dear that sums would outgrow safe integers it is a share of the
   * duals, which prices no column above its cost where the whole of them does not.
   */
  duals(scale: number): DualPrices {
    const { duals: fractional } = this.#simplex;
    const { program, decisions } = this.#relaxed;
    const all = [...program.rows, ...decisions.conditions];
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
    const { length } = program.rows;
    const duals = { rows: rounded.slice(0, length), conditions: rounded.slice(length), scale };
    for (const column of program.fixed) if (column.most === Infinity) affordable(column, duals);
    return duals;
  }
}

/** Whether a condition rules single columns out that have more than it allows, and its row by itself has not all of them leave. */
const isRuledOut = (
  { feature, sense, bound }: BranchingConstraint,
  { capped }: Pick<CoverProgram<unknown>, 'capped'>,
): boolean => sense === 'at most' && bound > 0 && capped.includes(feature);

/** The rows and features of the conditions that count a group's columns. */
function conditionsByGroup<Content>(
  { rows }: CoverProgram<Content>,
  conditions: readonly BranchingConstraint[],
): (group: number) => readonly (readonly [row: number, feature: number])[] {
  const known = new Map<number, readonly (readonly [number, number])[]>();
  return (group) =>
    remembered(known, group, () =>
      gathered(conditions, (condition, index) =>
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

import type { Amounts, Condition, CoverColumn, CoverProgram, FixedColumn, Priced } from './program.js';
import { Simplex, type SimplexRow, type SimplexStart, type SparseColumn } from './simplex.js';

/** All columns made so far, each once, with their entries in the program's own rows. */
export class ColumnPool<Content> {
  readonly columns: CoverColumn<Content>[] = [];
  readonly entries: { readonly rows: readonly number[]; readonly values: readonly number[] }[] = [];
  readonly #known = new Map<string, number>();
  readonly #rows: CoverProgram<Content>['rows'];

  constructor({ rows }: Pick<CoverProgram<Content>, 'rows'>) {
    this.#rows = rows;
  }

  /** Adds a column unless it is known. @returns its place. */
  add(column: CoverColumn<Content>): number {
    const key = `${column.group}:${column.cost}:${[...column.amounts].sort(([a], [b]) => a - b).join(';')}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const place = this.columns.length;
    this.#known.set(key, place);
    this.columns.push(column);
    const rows: number[] = [];
    const values: number[] = [];
    for (const [index, row] of this.#rows.entries()) {
      const amount = row.group === null || row.group === column.group ? amountOf(column.amounts, row.feature) : 0;
      if (amount === 0) continue;
      rows.push(index);
      values.push(amount);
    }
    this.entries.push({ rows, values });
    return place;
  }
}

/** The state in which a relaxation is solved: what is decided on the way to a node of the search. */
export type Decisions = {
  readonly conditions: readonly Condition[];
  /** How many columns of each group at the most. */
  readonly most: readonly number[];
  /** Columns that are taken already. */
  readonly taken: readonly number[];
};

/** Where a relaxation begins: columns of the pool that may matter, and a state in the names of `Relaxation.state`. */
export type Start = {
  readonly columns: readonly number[];
  /** The pool's later columns, from this one on, may matter, too. */
  readonly since: number;
  readonly state: SimplexStart;
};

/** Integer tags, one a row and one a condition, and the bound that they make; all in `scale`-ths of the objective. */
export type Tags = { readonly rows: Float64Array; readonly conditions: Float64Array; readonly scale: number };

export type Bounded = {
  readonly tags: Tags;
  /** Every solution that keeps the decisions costs at least bound / scale; −Infinity when nothing is shown. */
  readonly bound: number;
  /** By how much more a solution costs for every column of a group; not negative. */
  readonly extra: Float64Array;
  /** The groups of which a column may be worth more than it costs: none was found, but none ruled out. */
  readonly doubtful: readonly number[];
};

/** The relaxation at one node: its rows, and the columns of the pool that may matter there. */
export class Relaxation<Content> {
  readonly #program: CoverProgram<Content>;
  readonly #pool: ColumnPool<Content>;
  readonly #decisions: Decisions;
  readonly #conditionsOf: (group: number) => readonly (readonly [row: number, feature: number])[];
  readonly #simplex: Simplex;
  readonly #elastic: number;
  /** The columns of the pool that are in the relaxation, and where. */
  readonly #columns: number[] = [];
  readonly #places = new Map<number, number>();
  #seen: number;

  constructor(
    program: CoverProgram<Content>,
    pool: ColumnPool<Content>,
    decisions: Decisions,
    elastic: number,
    start: Start,
  ) {
    this.#program = program;
    this.#pool = pool;
    this.#decisions = decisions;
    this.#elastic = elastic;
    this.#conditionsOf = conditionsByGroup(program, decisions.conditions);
    const taken = takenAmounts(decisions.taken.map((index) => pool.columns[index]), program);
    const rows: SimplexRow[] = [...program.rows, ...decisions.conditions].map((row) => ({
      sense: row.sense,
      bound: capped(row, program, decisions) - taken(row.feature, row.group),
    }));
    this.#simplex = new Simplex(rows, elastic, 1e-6 + elastic * 1e-11);
    for (const column of program.fixed) {
      this.#simplex.add({
        rows: column.entries.map(({ row }) => row),
        values: column.entries.map(({ coefficient }) => coefficient),
        cost: column.cost,
      });
    }
    const { basis } = start.state;
    const basic = new Set(basis.filter((name) => name >= program.fixed.length).map((name) => name - program.fixed.length));
    for (const index of start.columns) if (basic.has(index) || this.#allowed(index)) this.#add(index);
    this.#seen = start.since;
    this.#addNew();
    for (const index of basic) if (!this.#places.has(index)) this.#add(index);
    const named = basis.map((name) =>
      name < program.fixed.length ? name : program.fixed.length + (this.#places.get(name - program.fixed.length) ?? 0),
    );
    this.#simplex.start({ ...start.state, basis: named });
  }

  #allowed(index: number): boolean {
    return (this.#decisions.most[this.#pool.columns[index]?.group ?? -1] ?? 0) > 0;
  }

  #addNew(): void {
    for (; this.#seen < this.#pool.columns.length; this.#seen += 1) {
      if (this.#allowed(this.#seen) && !this.#places.has(this.#seen)) this.#add(this.#seen);
    }
  }

  /** Takes a column of the pool in. @returns whether it was not there yet. */
  include(index: number): boolean {
    if (this.#places.has(index)) return false;
    this.#add(index);
    return true;
  }

  #add(index: number): void {
    const column = this.#pool.columns[index];
    const entries = this.#pool.entries[index];
    if (column === undefined || entries === undefined) return;
    this.#places.set(index, this.#columns.length);
    this.#columns.push(index);
    this.#simplex.add(this.#sparse(column, entries, this.#allowed(index)));
  }

  /** A column that is no longer allowed is so dear that it leaves the basis. */
  #sparse(
    { group, cost, amounts }: CoverColumn<Content>,
    entries: Omit<SparseColumn, 'cost'>,
    allowed: boolean,
  ): SparseColumn {
    const paid = allowed ? cost : cost + this.#elastic;
    const conditions = this.#conditionsOf(group);
    if (conditions.length === 0) return { ...entries, cost: paid };
    const rows = [...entries.rows];
    const values = [...entries.values];
    for (const [row, feature] of conditions) {
      const amount = amountOf(amounts, feature);
      if (amount === 0) continue;
      rows.push(row);
      values.push(amount);
    }
    return { rows, values, cost: paid };
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
   * way only keep their sign.
   */
  tags(scale: number): Tags {
    const { duals } = this.#simplex;
    const all = [...this.#program.rows, ...this.#decisions.conditions];
    const rounded = Float64Array.from(all, ({ sense }, row) => {
      const tag = Math.floor((duals[row] ?? 0) * scale + 1e-4);
      if (sense === 'equal') return tag;
      return sense === 'at least' ? Math.max(0, tag) : Math.min(0, tag);
    });
    const { length } = this.#program.rows;
    const tags = { rows: rounded.slice(0, length), conditions: rounded.slice(length), scale };
    for (const column of this.#program.fixed) if (column.most === Infinity) affordable(column, tags);
    return tags;
  }
}

/** The bound of a row; of one that limits a group's columns what is left of their limit, with those already taken. */
function capped<Content>(
  { feature, group, sense, bound }: CoverProgram<Content>['rows'][number] | Condition,
  { unit }: CoverProgram<Content>,
  { most, taken }: Decisions,
): number {
  if (feature !== unit || group === null || sense !== 'at most' || taken.length > 0) return bound;
  return Math.min(bound, most[group] ?? bound);
}

/** What a column costs beyond its tags. */
const beyondTags = ({ cost, entries }: FixedColumn, { rows, scale }: Tags): number =>
  entries.reduce((sum, { row, coefficient }) => sum - coefficient * (rows[row] ?? 0), scale * cost);

/** Of a column without limit no more than its cost may be tagged: its first row, where it stands with −1, gives way. */
function affordable(column: FixedColumn, tags: Tags): void {
  const rest = beyondTags(column, tags);
  const row = column.entries[0]?.row ?? 0;
  if (rest < 0) tags.rows[row] = (tags.rows[row] ?? 0) - rest;
}

export const amountOf = (amounts: Amounts, feature: number): number => {
  for (const [each, amount] of amounts) if (each === feature) return amount;
  return 0;
};

/** The rows and features of the conditions that count a group's columns. */
function conditionsByGroup<Content>(
  { rows }: CoverProgram<Content>,
  conditions: readonly Condition[],
): (group: number) => readonly (readonly [row: number, feature: number])[] {
  const known = new Map<number, readonly (readonly [number, number])[]>();
  return (group) => {
    let own = known.get(group);
    if (own === undefined) {
      own = conditions.flatMap((each, index) =>
        each.group === null || each.group === group ? [[rows.length + index, each.feature] as const] : [],
      );
      known.set(group, own);
    }
    return own;
  };
}

function takenAmounts<Content>(
  columns: readonly (CoverColumn<Content> | undefined)[],
  { features }: CoverProgram<Content>,
): (feature: number, group: number | null) => number {
  if (columns.length === 0) return () => 0;
  const sums = new Float64Array(features);
  for (const column of columns) for (const [feature, amount] of column?.amounts ?? []) sums[feature] = (sums[feature] ?? 0) + amount;
  return (feature, group) => {
    if (group === null) return sums[feature] ?? 0;
    return columns.reduce((sum, column) => (column?.group === group ? sum + amountOf(column.amounts, feature) : sum), 0);
  };
}

/** What one of each feature is worth in a group under the tags. */
export function groupTags<Content>(
  { features, rows }: CoverProgram<Content>,
  conditions: readonly Condition[],
  tags: Tags,
): (group: number) => Float64Array {
  const shared = new Float64Array(features);
  const own = new Map<number, [number, number][]>();
  const note = (row: Pick<Condition, 'feature' | 'group'>, tag: number): void => {
    if (tag === 0 || row.feature < 0) return;
    if (row.group === null) shared[row.feature] = (shared[row.feature] ?? 0) + tag;
    else own.set(row.group, [...(own.get(row.group) ?? []), [row.feature, tag]]);
  };
  rows.forEach((row, index) => note(row, tags.rows[index] ?? 0));
  conditions.forEach((row, index) => note(row, tags.conditions[index] ?? 0));
  return (group) => {
    const extra = own.get(group);
    if (extra === undefined) return shared;
    const all = shared.slice();
    for (const [feature, tag] of extra) all[feature] = (all[feature] ?? 0) + tag;
    return all;
  };
}

/**
 * What tags prove: for any tags, cost ≥ Σ tag · bound + Σ most · min(0, what one column costs beyond its tags), over the
 * fixed columns and, for every group, its best column ("Integer programming", 1998, chapter on Lagrangian duality).
 */
export function boundOf<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  tags: Tags,
  worths: readonly number[],
): Bounded {
  const { conditions, most } = decisions;
  let bound = 0;
  program.rows.forEach((row, index) => (bound += capped(row, program, decisions) * (tags.rows[index] ?? 0)));
  conditions.forEach((row, index) => (bound += capped(row, program, decisions) * (tags.conditions[index] ?? 0)));
  for (const column of program.fixed) {
    const rest = beyondTags(column, tags);
    if (rest < 0) bound += column.most * rest;
  }
  const extra = new Float64Array(program.groups.length);
  const doubtful: number[] = [];
  for (const [group, worth] of worths.entries()) {
    if ((most[group] ?? 0) === 0) continue;
    if (worth <= 0) {
      extra[group] = -worth;
      continue;
    }
    bound -= (most[group] ?? 0) * worth;
    doubtful.push(group);
  }
  return { tags, bound, extra, doubtful };
}

/** The groups' bounds under tags, and columns worth having. */
export type Pricing<Content> = { readonly worths: readonly number[]; readonly found: readonly CoverColumn<Content>[] };

/**
 * Prices every group that may still be used: first what comes easily; only when that finds nothing are the groups that it
 * leaves in doubt priced exactly, one after the other until one has a column.
 */
export function priceAll<Content>(
  program: CoverProgram<Content>,
  { conditions, most }: Decisions,
  tags: Tags,
  effort: 'quick' | 'exact',
): Pricing<Content> {
  const tagsOf = groupTags(program, conditions, tags);
  const price = (group: number, how: 'quick' | 'exact'): Priced<Content> =>
    (most[group] ?? 0) === 0
      ? { bound: 0, columns: [] }
      : program.price({ group, tags: tagsOf(group), scale: tags.scale, floor: 0, effort: how });
  const quick = program.groups.map((_, group) => price(group, 'quick'));
  const found = quick.flatMap(({ columns }) => columns);
  const worths = quick.map(({ bound }) => bound);
  if (effort === 'quick' || found.length > 0) return { worths, found };
  for (const [group, worth] of worths.entries()) {
    if (worth <= 0) continue;
    const { bound, columns } = price(group, 'exact');
    worths[group] = Math.min(worth, bound);
    if (columns.length > 0) return { worths, found: columns };
  }
  return { worths, found };
}

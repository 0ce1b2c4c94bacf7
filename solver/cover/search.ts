/**
 * Branch and price ("Branch-and-price: column generation for solving huge integer programs", 1998): at every node the
 * relaxation is solved over the columns made so far (the restricted master), its duals are rounded to integers, columns are
 * priced exactly under them, and what that proves is a bound that needs no trust in the relaxation.
 */
import { splitOfGroup } from './branching.js';
import { dive, straight, wider } from './dive.js';
import { seekBeside, type Beside } from './integer-master.js';
import type { BranchingConstraint, CoverColumn, CoverProgram } from './program.js';
import { PricingRounds } from './pricing.js';
import { pausesOf, webTiming, type Timing } from '../timing.js';
import { ColumnPool } from './column-pool.js';
import { withCondition, type Decisions } from './decisions.js';
import { RestrictedMaster, type MasterStart } from './restricted-master.js';
import { dualBound, featurePrices, reducedCosts, scaleFor, type Bounded, type DualPrices } from './dual-prices.js';
import { COLD } from './simplex.js';
import { branchTrials } from './trials.js';
import { mixedGroups, usedColumns, wholeColumns } from './points.js';
import type { CoverOutcome } from './outcome.js';
import { casesOf, finishedTree, type CoverNode } from './tree.js';

export type CoverOptions<Content> = {
  /** Milliseconds that are left; asked again and again. */
  readonly remainingMs: () => number;
  readonly signal?: AbortSignal | undefined;
  /** Whether to give up after so many nodes, with the value of the best solution so far, or null; never when left out. */
  readonly givesUp?: ((nodes: number, value: number | null) => boolean) | undefined;
  /** After how many nodes it begins anew; after many when left out. */
  readonly anewAfter?: number | undefined;
  /** How the search lets others have their turn; by web standards when left out. */
  readonly timing?: Timing | undefined;
  /** Who looks for better solutions meanwhile; nobody when left out. */
  readonly beside?: Beside | undefined;
  /** A solution to begin with. */
  readonly known: { readonly value: number; readonly contents: readonly Content[] } | null;
  /** Told of the content of every column that is made. */
  readonly onColumn?: ((content: Content) => void) | undefined;
  readonly onProgress?: ((progress: { readonly value: number | null; readonly bound: number }) => void) | undefined;
};

type Impasse<Content> = Pick<Extract<CoverOutcome<Content>, { kind: 'stuck' }>, 'mixed' | 'used'>;

type OpenNode = {
  readonly decisions: Decisions;
  readonly start: MasterStart;
  /** In units of the objective: what is known before the node is solved. */
  readonly bound: number;
  readonly depth: number;
  readonly proof: CoverNode;
};

/** Columns that a node hands on to its children. */
const mostKept = 500;

/**
 * Most searches end before so many nodes. One that does not begins anew, carefully: what it branched on first was chosen when columns and
 * a good solution were wanting, and all that is below pays for it.
 */
const manyNodes = 48;

/** Rounds of pricing at one node before it is branched on as it is, once it has a bound. */
const mostRounds = 400;

export class CoverSearch<Content> {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly scale: number;
  best: { readonly value: number; readonly contents: readonly Content[] } | null;
  /** Dual prices at the root, once there are any, and the columns of all solutions: for whoever looks on meanwhile. */
  rootDuals: DualPrices | null = null;
  readonly offered = new Set<CoverColumn<Content>>();
  readonly #options: CoverOptions<Content>;
  readonly #open: OpenNode[] = [];
  #bound = 0;
  #wanted: number;
  #stuck: Impasse<Content> | null = null;
  /** Lets others have their turn. */
  readonly pause: () => Promise<void>;
  /** Whether it has begun anew. */
  isCareful = false;
  readonly statistics = { nodes: 0, rounds: 0, columns: 0 };

  constructor(program: CoverProgram<Content>, options: CoverOptions<Content>) {
    this.program = program;
    this.pool = new ColumnPool(program, options.onColumn);
    for (const column of program.start) this.pool.add(column);
    this.#options = options;
    this.pause = pausesOf(options.timing ?? webTiming);
    this.best = options.known;
    this.#wanted = this.best === null ? program.greatest : program.possible.below(this.best.value);
    this.scale = scaleFor(program, options.known?.value ?? program.greatest);
  }

  async run(): Promise<CoverOutcome<Content>> {
    let root = this.#begin();
    for (let node = this.#next(); node !== null; node = this.#next()) {
      if (!this.isCareful && this.statistics.nodes >= (this.#options.anewAfter ?? manyNodes)) {
        this.isCareful = true;
        root = this.#begin();
        continue;
      }
      if (await this.#solve(node)) continue;
      this.#raise(Math.min(...this.#open.map(({ bound, proof }) => Math.max(bound, this.#whole(proof.bound)))));
      const inHand = { best: this.best, bound: this.#bound };
      if (this.#stuck === null) return { kind: 'stopped', ...inHand };
      return { kind: 'stuck', ...this.#stuck, cases: casesOf(root), ...inHand };
    }
    const proof = { scale: this.scale, tree: finishedTree(root, this.scale * this.wanted) };
    return this.best === null ? { kind: 'infeasible', proof } : { kind: 'optimal', ...this.best, proof };
  }

  /** Leaves nothing open but the whole. @returns the root of its proof. */
  #begin(): CoverNode {
    const proof: CoverNode = { duals: null, bound: -Infinity, branch: null };
    const start = { columns: [], since: 0, state: COLD };
    this.#open.splice(0, Infinity, { decisions: this.#undecided, start, bound: 0, depth: 0, proof });
    return proof;
  }

  /** A solution must be worth less than this to be of interest. */
  get target(): number {
    return this.best?.value ?? this.program.greatest + 1;
  }

  /** The greatest cost of a solution that is of interest. */
  get wanted(): number {
    return this.#wanted;
  }

  /** Offers columns that cover everything as a solution. */
  offer(columns: readonly (typeof this.pool.columns)[number][]): boolean {
    const completed = this.program.complete(columns);
    if (completed !== null) columns.forEach((column) => this.offered.add(column));
    if (completed === null || completed.value >= this.target) return false;
    this.best = completed;
    this.#wanted = this.program.possible.below(this.target);
    this.#report();
    return true;
  }

  get over(): boolean {
    const { signal, remainingMs, givesUp } = this.#options;
    if (signal?.aborted === true || remainingMs() <= 0) return true;
    return givesUp?.(this.statistics.nodes, this.best?.value ?? null) === true;
  }

  /** The open node with the least bound, of several the deepest; null when all that are left cannot beat the best. */
  #next(): OpenNode | null {
    let best = -1;
    for (const [index, node] of this.#open.entries()) {
      const other = this.#open[best];
      if (other === undefined || node.bound < other.bound || (node.bound === other.bound && node.depth > other.depth)) {
        best = index;
      }
    }
    const [node] = best < 0 ? [] : this.#open.splice(best, 1);
    if (node === undefined || node.bound >= this.target) return null;
    this.#raise(node.bound);
    return node;
  }

  /** Takes note that no solution is worth less. */
  #raise(bound: number): void {
    if (bound <= this.#bound || bound === Infinity) return;
    this.#bound = bound;
    this.#report();
  }

  #report(): void {
    this.#options.onProgress?.({ value: this.best?.value ?? null, bound: Math.min(this.#bound, this.target) });
  }

  /** False when the search is over before its time. */
  async #solve(node: OpenNode): Promise<boolean> {
    this.statistics.nodes += 1;
    const relaxed = { program: this.program, pool: this.pool, decisions: node.decisions, elastic: this.target };
    const master = RestrictedMaster.from(relaxed, node.start);
    const solved = await this.#generate(node, master);
    if (solved === 'over') {
      this.#open.push(node);
      return false;
    }
    if (solved === 'closed') return true;
    const isDue = this.statistics.nodes % 16 === 1;
    if (isDue && (await this.#dive(node, master))) return true;
    const most = this.#tightened(node, solved);
    const start = { ...startFrom(master, this.pool), columns: this.#promising(master.columns, node, solved) };
    const trials = branchTrials(this, { ...node.decisions, most }, master, start);
    let branches = trials.telling();
    // Where nothing lifts the relaxation much, the best solution may be as good as that already: it is looked for first.
    if (branches === null && !isDue) {
      if (await this.#dive(node, master)) return true;
      branches = trials.telling();
    }
    branches ??= trials.best() ?? this.#doubt(node.decisions, solved, master.point, most);
    if (branches === null) {
      if (await this.#diveWide(node, master)) return true;
      this.#stuck = { mixed: mixedGroups(this.pool, master.point), used: usedColumns(this.pool, master.point) };
      this.#open.push(node);
      return false;
    }
    const children = branches.map((condition) => {
      const proof: CoverNode = { duals: null, bound: -Infinity, branch: null };
      this.#open.push({
        decisions: withCondition({ ...node.decisions, most }, condition, this.program),
        start,
        bound: Math.max(node.bound, this.#whole(solved.bound)),
        depth: node.depth + 1,
        proof,
      });
      return { condition, node: proof };
    });
    node.proof.branch = children;
    return true;
  }

  /** Looks for a solution straight below a node. @returns whether what it found closes the node. */
  async #dive(node: OpenNode, master: RestrictedMaster<Content>): Promise<boolean> {
    const closed = (): boolean => this.#closes(node.proof.bound);
    await dive(this, node.decisions, startFrom(master, this.pool), straight, closed);
    return closed();
  }

  /**
   * Parts of like units add up to whole numbers here: a dive often finds whole units that come to the same. One that keeps to none of
   * the node's conditions has duals that tell waste in a unit from none, where conditions on sums make all columns look alike.
   * @returns whether what it found closes the node.
   */
  async #diveWide(node: OpenNode, master: RestrictedMaster<Content>): Promise<boolean> {
    const anew = { columns: master.columns, since: this.pool.columns.length, state: COLD };
    const closed = (): boolean => this.#closes(node.proof.bound);
    for (const breadth of wider) {
      await dive(this, node.decisions, startFrom(master, this.pool), breadth, closed);
      await dive(this, this.#undecided, anew, breadth, closed);
      if (closed()) return true;
    }
    return false;
  }

  /** Nothing is decided yet. */
  get #undecided(): Decisions {
    return { conditions: [], most: this.program.groups.map(({ most }) => most), taken: [] };
  }

  /** Where it is not known that a group is not worth using: what it has of something, or more. */
  #doubt(
    { conditions }: Decisions,
    { doubtful, duals }: Bounded,
    point: Float64Array,
    most: readonly number[],
  ): readonly [BranchingConstraint, BranchingConstraint] | null {
    const pricesIn = featurePrices(this.program, conditions, duals);
    for (const group of doubtful) {
      const state = { conditions, prices: pricesIn(group), most: most[group] ?? 0 };
      const branches = splitOfGroup(group, this.program, this.pool, point, state);
      if (branches !== null) return branches;
    }
    return null;
  }

  /** Makes columns until none is missing: the bound is then as good as the relaxation allows. */
  async #generate(node: OpenNode, master: RestrictedMaster<Content>): Promise<Bounded | 'closed' | 'over'> {
    const pricing = new PricingRounds(this.program, node.decisions, 'exact');
    let best: Bounded | null = null;
    for (let round = 1; ; round += 1) {
      await this.pause();
      if (this.over) return 'over';
      this.statistics.rounds += 1;
      master.solve();
      const duals = master.duals(this.scale);
      const { worths, fresh } = pricing.next(duals, (column) => master.include(this.pool.add(column)));
      this.statistics.columns += fresh.length;
      if (worths !== null) {
        best = this.#bounded(node, duals, worths, best);
        if (this.#closes(best.bound)) return 'closed';
      }
      const isOver = fresh.length === 0 ? !master.stiffen() : round >= mostRounds;
      if (best === null || !isOver) continue;
      this.offer(wholeColumns(this.pool, master.point));
      return this.#closes(best.bound) ? 'closed' : best;
    }
  }

  /** The better of what was known of a node and of what its dual prices prove. */
  #bounded(node: OpenNode, duals: DualPrices, worths: readonly number[], known: Bounded | null): Bounded {
    const bounded = dualBound(this.program, node.decisions, duals, worths);
    if (known !== null && known.bound >= bounded.bound) return known;
    node.proof.duals = bounded.duals;
    node.proof.bound = bounded.bound;
    if (node.depth === 0) this.rootDuals = bounded.duals;
    // While nothing else is open this node's bound is that of all.
    if (this.#open.length === 0) this.#raise(Math.min(this.target, this.#whole(bounded.bound)));
    return bounded;
  }

  /** Whether nothing that keeps a bound in subunits can beat the best. */
  #closes(bound: number): boolean {
    return bound > this.scale * this.wanted;
  }

  /** A bound in subunits as the next value of the objective that is possible. */
  #whole(bound: number): number {
    return bound === -Infinity ? 0 : this.program.possible.from(Math.max(0, Math.ceil(bound / this.scale)));
  }

  /**
   * The columns whose reduced costs leave room for a better solution, the least first; no more than so many, for the others
   * are made again when they are wanted.
   */
  #promising(columns: readonly number[], { decisions }: OpenNode, { duals, bound }: Bounded): readonly number[] {
    const reducedCost = reducedCosts(this.program, decisions.conditions, duals);
    const enough = this.scale * this.wanted - bound;
    return columns
      .map((index) => ({ index, reduced: reducedCost(this.pool.columns[index]) }))
      .filter(({ reduced }) => reduced <= enough)
      .sort((one, two) => one.reduced - two.reduced)
      .slice(0, mostKept)
      .map(({ index }) => index);
  }

  /** Reduced costs leave less room: a column more of a group costs its extra at the least. */
  #tightened({ decisions }: OpenNode, { bound, extra }: Bounded): readonly number[] {
    const room = this.scale * this.wanted - bound;
    return decisions.most.map((most, group) => {
      const more = extra[group] ?? 0;
      return more > 0 && room < Infinity ? Math.min(most, Math.floor(room / more)) : most;
    });
  }
}

const startFrom = <Content>(master: RestrictedMaster<Content>, pool: ColumnPool<Content>): MasterStart => ({
  columns: master.columns,
  since: pool.columns.length,
  state: master.state,
});

/** The least cost of a covering program, with a proof that anyone can check; or how far the search came. */
export async function searchCover<Content>(
  program: CoverProgram<Content>,
  options: CoverOptions<Content>,
): Promise<CoverOutcome<Content>> {
  const { beside, timing = webTiming } = options;
  if (beside === undefined) return new CoverSearch(program, options).run();
  let ended: AbortController | null = null;
  // Most searches are over before they pause for the first time, and need no timer.
  const pause = async (): Promise<void> => {
    if (ended === null) {
      ended = new AbortController();
      void seekBeside(search, beside, timing, ended.signal);
    }
    return timing.pause();
  };
  const end = (): void => ended?.abort();
  const search = new CoverSearch(program, { ...options, timing: { ...timing, pause } });
  try {
    return await search.run();
  } finally {
    end();
  }
}

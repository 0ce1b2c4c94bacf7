import type { ColumnPool } from './column-pool.js';
import type { Decisions } from './decisions.js';
import type { CoverColumn, CoverProgram } from './program.js';
import { RestrictedMaster, type MasterStart } from './restricted-master.js';
import { COLD } from './simplex.js';
import { PricingRounds } from './pricing.js';

/** What a dive needs of the search that it serves. */
type Diver<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly scale: number;
  /** A solution must be worth less than this to be of interest. */
  readonly target: number;
  /** The greatest worth that is of interest. */
  readonly wanted: number;
  /** Whether the time is over. */
  readonly over: boolean;
  /** Lets others have their turn. */
  pause(): Promise<void>;
  /** Takes columns that cover everything as a solution. */
  offer(columns: readonly CoverColumn<Content>[]): boolean;
};

/** How widely a dive looks around. */
export type Breadth = {
  /** Beside the column that it takes it tries so many others. */
  readonly turns: number;
  /** It does so at its first so many steps. */
  readonly depth: number;
};

/** Down one way. */
export const straight: Breadth = { turns: 0, depth: 0 };
/** Down many ways that differ early, then down such as differ later, too. */
export const wider: readonly Breadth[] = [
  { turns: 8, depth: 3 },
  { turns: 3, depth: 6 },
  { turns: 2, depth: 12 },
];

/** The most rounds of pricing after each column that a dive takes. */
const mostRounds = 30;
const mostSteps = 200;
/** Less than this of a column is none. */
const nothing = 1e-3;
/** What floating point may add to the value of a relaxation. */
const slack = 0.01;

/**
 * Looks for a solution by taking columns one after the other, those that the relaxation uses most first, and solving what
 * is left of the program in between, with new columns for it; a wide one comes back to leave out what it has taken ("Primal
 * heuristics for branch and price: the assets of diving methods", 2019). It ends as soon as what was found is good enough.
 */
export async function dive<Content>(
  search: Diver<Content>,
  decisions: Decisions,
  begin: MasterStart,
  breadth: Breadth,
  isEnough: () => boolean,
): Promise<void> {
  const descend = async (now: Decisions, step: number, without: ReadonlySet<number>): Promise<void> => {
    await search.pause();
    if (search.over || isEnough() || step >= mostSteps) return;
    const first = step === 0;
    const { point, value } = solved(search, now, first ? begin : { ...begin, state: COLD }, first ? 1 : mostRounds);
    const hopeless = (): boolean => value > search.wanted + slack;
    if (!first && hopeless()) return;
    const whole = wholeIn(point);
    const left = new Set(without);
    do {
      const next = largestPart(search.pool, point, now, left);
      const more = next === null ? whole : [...whole, next];
      if (more.length === 0) search.offer(now.taken.flatMap((index) => search.pool.columns[index] ?? []));
      else await descend(withTaken(search.pool, now, more), step + 1, left);
      if (next === null) return;
      left.add(next);
    } while (!isEnough() && step < breadth.depth && left.size <= breadth.turns && !hopeless());
  };
  await descend(decisions, 0, new Set());
}

const withTaken = <Content>(pool: ColumnPool<Content>, now: Decisions, more: readonly number[]): Decisions => ({
  ...now,
  taken: [...now.taken, ...more],
  most: lessMost(pool, now.most, more),
});

/** The point of the relaxation after some rounds of new columns, and what it costs with what is taken. */
function solved<Content>(
  search: Diver<Content>,
  decisions: Decisions,
  start: MasterStart,
  rounds: number,
): { readonly point: Float64Array; readonly value: number } {
  const { program, pool, scale, target } = search;
  const master = RestrictedMaster.from({ program, pool, decisions, elastic: target }, start);
  master.solve();
  const pricing = new PricingRounds(program, decisions, 'quick');
  for (let round = 1; round < rounds; round += 1) {
    const { fresh } = pricing.next(master.duals(scale), (column) => master.include(pool.add(column)));
    if (fresh.length === 0) break;
    master.solve();
  }
  const taken = decisions.taken.reduce((sum, index) => sum + (pool.columns[index]?.cost ?? 0), 0);
  return { point: master.point, value: taken + master.value };
}

/** The columns that are used whole, each as often as it is. */
function wholeIn(point: Float64Array): readonly number[] {
  const whole: number[] = [];
  for (const [index, share] of point.entries())
    for (let left = Math.floor(share + 1e-4); left > 0; left -= 1) whole.push(index);
  return whole;
}

/** Of the columns that are not left out, the one of which the largest part is used. */
function largestPart<Content>(
  pool: ColumnPool<Content>,
  point: Float64Array,
  { most }: Decisions,
  left: ReadonlySet<number>,
): number | null {
  let best: number | null = null;
  let largest = nothing;
  for (const [index, share] of point.entries()) {
    const allowed = (most[pool.columns[index]?.group ?? -1] ?? 0) > 0 && !left.has(index);
    const part = share - Math.floor(share + 1e-4);
    if (allowed && part > largest) [best, largest] = [index, part];
  }
  return best;
}

function lessMost<Content>(
  pool: ColumnPool<Content>,
  most: readonly number[],
  taken: readonly number[],
): readonly number[] {
  const left = [...most];
  for (const index of taken) {
    const group = pool.columns[index]?.group ?? 0;
    left[group] = Math.max(0, (left[group] ?? 0) - 1);
  }
  return left;
}

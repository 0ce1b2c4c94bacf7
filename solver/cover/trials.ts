import { branchesOf } from './branching.js';
import type { ColumnPool } from './column-pool.js';
import { withCondition, type Decisions } from './decisions.js';
import { priceAll } from './dual-prices.js';
import type { BranchingConstraint, CoverProgram } from './program.js';
import { RestrictedMaster, type MasterStart } from './restricted-master.js';

/** What trials need of the search that they serve. */
type Trying<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly scale: number;
  /** A solution must be worth less than this to be of interest. */
  readonly target: number;
};

type Branches = readonly BranchingConstraint[];
type Trial = keyof typeof pivots;

/** The columns that a first trial looks at. */
const mostColumns = 400;
/** The pivots of a first trial and of a second one: with fewer the lifts of large masters tell too little apart. */
const pivots = { first: 100, second: 500 } as const;
/** So many branches have a second trial at the most. */
const mostTriedTwice = 8;
/** What lifts nothing counts for so little, so that the other side still tells. */
const leastLift = 1e-6;

/**
 * The conditions to branch on: of the most fractional numbers the one whose conditions lift the relaxation the most ("Finding
 * cuts in the TSP", 1995, calls it strong branching). A first trial is over the columns at hand. What seems a lift is often but a
 * want of columns: so the foremost have a second one with new columns, as long as another may still be better ("Improved
 * branch-cut-and-price for capacitated vehicle routing", 2017). Null where there is nothing to branch on.
 */
export function foremostBranches<Content>(
  search: Trying<Content>,
  decisions: Decisions,
  master: RestrictedMaster<Content>,
  start: MasterStart,
): Branches | null {
  const candidates = branchesOf(search.program, search.pool, master.point, decisions.conditions);
  const [first] = candidates;
  if (first === undefined || candidates.length === 1) return first ?? null;
  const scoreOf = (branches: Branches, from: MasterStart, which: Trial): number =>
    branches
      .map((condition) => tried(search, withCondition(decisions, condition, search.program), from, which))
      .reduce((product, value) => product * Math.max(value - master.value, leastLift), 1);
  const few = { ...start, columns: start.columns.slice(0, mostColumns) };
  const seeming = candidates
    .map((branches) => ({ branches, score: scoreOf(branches, few, 'first') }))
    .sort((one, other) => other.score - one.score);
  let best: { readonly branches: Branches; readonly score: number } | null = null;
  for (const { branches, score } of seeming.slice(0, mostTriedTwice)) {
    if (best !== null && best.score >= score) break;
    const now = scoreOf(branches, start, 'second');
    if (best === null || now > best.score) best = { branches, score: now };
  }
  return best?.branches ?? null;
}

/** What the relaxation comes to where something more is decided; in a second trial after a round of columns that come easily. */
function tried<Content>(
  { program, pool, scale, target }: Trying<Content>,
  decisions: Decisions,
  start: MasterStart,
  which: Trial,
): number {
  const master = new RestrictedMaster(program, pool, decisions, target, start);
  master.solve(pivots[which]);
  if (which === 'second') {
    const { found } = priceAll(program, decisions, master.duals(scale), 'quick');
    for (const column of found) master.include(pool.add(column));
    master.solve(pivots[which]);
  }
  return Math.min(target, master.value);
}

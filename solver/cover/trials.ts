import { branchesOf } from './branching.js';
import type { ColumnPool } from './column-pool.js';
import type { Decisions } from './decisions.js';
import { easyColumns } from './pricing.js';
import type { BranchingConstraint, CoverProgram } from './program.js';
import { RestrictedMaster, type MasterStart } from './restricted-master.js';

/** What trials need of the search that they serve. */
type Trying<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly scale: number;
  /** A solution must be worth less than this to be of interest. */
  readonly target: number;
  /** Whether to try all there is to branch on rather than be content with little. */
  readonly isCareful: boolean;
};

type Branches = readonly BranchingConstraint[];
type Trial = keyof typeof pivots;
/** Conditions, and the product of what each of them lifts the relaxation by. */
type Scored = { readonly branches: Branches; readonly score: number };

/** The columns that a first trial looks at. */
const mostColumns = 400;
/** The pivots of a first trial and of a second one: with fewer the lifts of large masters tell too little apart. */
const pivots = { first: 30, second: 500 } as const;
/** So many branches have a second trial at the most. */
const mostTriedTwice = 8;
/** What lifts nothing counts for so little, so that the other side still tells. */
const leastLift = 1e-6;
/** Of what would close both sides, squared: with less than this what is branched on tells little. */
const telling = { hasty: 1e-3, careful: 4e-2 } as const;

/** The conditions to branch on. */
export type BranchTrials = {
  /** Those of the foremost that lift the relaxation the most; null where none of them lifts it much. */
  readonly telling: () => Branches | null;
  /** Those of all that do so; null where there is nothing to branch on. */
  readonly best: () => Branches | null;
};

/**
 * Of the most fractional numbers the one whose conditions lift the relaxation the most ("Finding
 * cuts in the TSP", 1995, calls it strong branching). A first trial is over the columns at hand. What seems a lift is often but a
 * want of columns: so the foremost have a second one with new columns, as long as another may still be better ("Improved
 * branch-cut-and-price for capacitated vehicle routing", 2017). Where none of them lifts much all others are tried as well: which
 * pedals share a unit can be settled by a few that are not the most fractional.
 */
export function branchTrials<Content>(
  search: Trying<Content>,
  decisions: Decisions,
  master: RestrictedMaster<Content>,
  start: MasterStart,
): BranchTrials {
  const { foremost, others } = branchesOf(search.program, search.pool, master.point, decisions.conditions);
  const [first = null] = foremost;
  if (foremost.length < 2) return { telling: () => first, best: () => first };
  const { program, pool } = search;
  const relaxed = { program, pool, decisions, elastic: master.elastic };
  const few = { ...start, columns: start.columns.slice(0, mostColumns) };
  const masters = { first: RestrictedMaster.from(relaxed, few), second: RestrictedMaster.from(relaxed, start) };
  const scoreOf = (branches: Branches, which: Trial): number =>
    branches
      .map((condition) => tried(search, masters[which].narrowed(condition), which))
      .reduce((product, value) => product * Math.max(value - master.value, leastLift), 1);
  /** The better of one and of the best of these. */
  const better = (candidates: readonly Branches[], than: Scored | null): Scored | null => {
    const seeming = candidates
      .map((branches) => ({ branches, score: scoreOf(branches, 'first') }))
      .sort((one, other) => other.score - one.score);
    let best = than;
    for (const { branches, score } of seeming.slice(0, mostTriedTwice)) {
      if (best !== null && best.score >= score) break;
      const now = scoreOf(branches, 'second');
      if (best === null || now > best.score) best = { branches, score: now };
    }
    return best;
  };
  const best = better(foremost, null);
  return {
    telling: () => {
      const enough = telling[search.isCareful ? 'careful' : 'hasty'] * (search.target - master.value) ** 2;
      return best !== null && best.score >= enough ? best.branches : null;
    },
    best: () => better(others(), best)?.branches ?? null,
  };
}

/** What the relaxation comes to where something more is decided; in a second trial after a round of columns that come easily. */
function tried<Content>(
  { program, pool, scale, target }: Trying<Content>,
  master: RestrictedMaster<Content>,
  which: Trial,
): number {
  master.solve(pivots[which]);
  if (which === 'second') {
    for (const column of easyColumns(program, master.decisions, master.duals(scale))) master.include(pool.add(column));
    master.solve(pivots[which]);
  }
  return Math.min(target, master.value);
}

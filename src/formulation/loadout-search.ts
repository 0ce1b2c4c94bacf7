import { gathered } from '../../solver/gathered.js';
import { searchCover } from '../../solver/cover/search.js';
import type { CoverOutcome } from '../../solver/cover/outcome.js';
import type { Completed } from '../../solver/cover/program.js';
import { casesOf } from '../../solver/cover/tree.js';
import type { Criterion } from '../domain/aim.js';
import type { ProofStep } from '../domain/proof.js';
import type { LoadoutPricer } from '../loadout/best-loadout.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import {
  beatingObjective,
  scalarObjectives,
  limitedAtFirst,
  settledTiers,
  type ScalarObjective,
  type SettledStep,
} from './scalar-objective.js';
import { tierValues } from './digits.js';
import { kindKey, type ToldApart } from './loadout-groups.js';
import type { LoadoutPlan, LoadoutPool } from './loadout-pool.js';
import { loadoutProgram, type LoadoutProgram } from './loadout-program.js';
import { namedFeeds } from './named-feeds.js';
import { countsLimits, proofStep } from './proof-of.js';
import type { Effort, Optimiser, SearchOutcome } from './optimiser.js';
import { worthwhileSupplies } from './pinned-question.js';
import type { Question } from './question.js';
import { Workings } from './workings.js';

/** Solves the cover of the pedals by loadouts, step by step in the order of the tiers; mostly there is one step. */
export const loadoutSearch: Optimiser = async (question, effort) => {
  const job = jobOf(question, effort);
  const earlier: SettledStep[] = [...limitedAtFirst(question)];
  const settled = new Map<Criterion, number>();
  /** The best of each step. */
  const plans: LoadoutPlan[] = [];
  const steps: ProofStep[] = [];
  let cases = 0;
  let limits = false;
  for (const step of scalarObjectives(question)) {
    const objective = beatingObjective(step, question, settled);
    const { outcome, program } = await searchStep(objective, { earlier, settled }, job);
    if (outcome.kind === 'infeasible') return { kind: 'impossible' };
    if (outcome.kind !== 'optimal') return stopped(objective, outcome, plans, settled, question);
    cases += casesOf(outcome.proof.tree);
    limits ||= countsLimits(outcome.proof.tree, program);
    if (effort.proof === true) steps.push(proofStep(question, program, objective, outcome.value, outcome.proof));
    plans.push(outcome.contents);
    for (const [tier, value] of tierValues(objective, outcome.value)) settled.set(tier, value);
    // A proof keeps to whole steps.
    if (effort.proof === true) earlier.push({ objective, value: outcome.value });
    else earlier.push(...settledTiers(objective, outcome.value, question));
  }
  const proof = effort.proof === true ? steps : null;
  return {
    kind: 'proven',
    feeds: namedFeeds(plans.at(-1) ?? [], question),
    values: settled,
    evidence: { kind: 'tags', cases, limits },
    proof,
  };
};

/** How long a search has to itself before better plans are looked for beside it: most have ended by then. */
const BESIDE_MS = 2_000;

type Job = {
  readonly question: Question;
  readonly effort: Effort;
  readonly supplies: readonly SupplyUses[];
  readonly pricers: (uses: SupplyUses) => LoadoutPricer;
  readonly pool: LoadoutPool;
};

/** What earlier steps have settled. */
type Before = {
  readonly earlier: readonly SettledStep[];
  readonly settled: ReadonlyMap<Criterion, number>;
};

function jobOf(question: Question, effort: Effort): Job {
  const { bench } = question;
  const { workings = new Workings() } = effort;
  return {
    question,
    effort,
    // A proof has to speak of every supply; a search need not.
    supplies: effort.proof === true ? question.supplies : worthwhileSupplies(question),
    pricers: (uses) => workings.pricerFor(uses, bench),
    pool: workings.poolFor(bench),
  };
}

/** One step; where the search gets stuck because several units of a supply stand for one another, they are told apart. */
async function searchStep(
  objective: ScalarObjective,
  { earlier, settled }: Before,
  job: Job,
): Promise<{ readonly outcome: CoverOutcome<Loadout>; readonly program: LoadoutProgram }> {
  const { question, effort, supplies, pricers, pool } = job;
  const first = objective.tiers[0]?.tier ?? null;
  const firstOf = (value: number): number => tierValues(objective, value)[0]?.[1] ?? 0;
  let apart: ToldApart = new Set();
  // What the search has shown before units are told apart holds for them, too.
  let shown = 0;
  for (;;) {
    const terms = { apart, settled, pool, isWritten: effort.proof === true };
    const program = loadoutProgram(question, supplies, objective, earlier, pricers, terms);
    const outcome = await searchCover(program.cover, {
      remainingMs: effort.remainingMs,
      signal: effort.signal,
      timing: effort.timing,
      givesUp:
        effort.givesUp && ((nodes, value) => effort.givesUp?.(nodes, value === null ? null : firstOf(value)) === true),
      beside: effort.engine ? { engine: effort.engine, afterMs: BESIDE_MS } : undefined,
      known: bestKnown(program, job),
      onColumn: (loadout) => pool.add(loadout),
      onProgress: ({ value, bound }) =>
        effort.onProgress?.({
          tier: first,
          value: value === null ? null : firstOf(value),
          bound: firstOf(Math.max(shown, bound)),
        }),
    });
    const best = bestOf(outcome);
    if (best !== null) pool.addPlan(best);
    if (outcome.kind === 'optimal' || outcome.kind === 'infeasible') return { outcome, program };
    shown = Math.max(shown, outcome.bound);
    const mixed = outcome.kind === 'stuck' ? mixedKinds(outcome.mixed, program) : [];
    if (mixed.length === 0) return { outcome: { ...outcome, bound: shown }, program };
    apart = new Set([...apart, ...mixed]);
  }
}

/** The best that a search has come upon; null when that is nothing. */
function bestOf(outcome: CoverOutcome<Loadout>): LoadoutPlan | null {
  if (outcome.kind === 'infeasible') return null;
  return outcome.kind === 'optimal' ? outcome.contents : (outcome.best?.contents ?? null);
}

/**
 * Of the plans in hand that keep this program's limits and are worth looking at the best one, of several the latest; null when
 * there is none.
 */
function bestKnown({ cover }: LoadoutProgram, { pool, supplies }: Job): Completed<Loadout> | null {
  let best: Completed<Loadout> | null = null;
  for (const plan of pool.fittingPlans(supplies)) {
    const completed = cover.complete(plan.map(asColumn));
    if (completed !== null && completed.value < (best?.value ?? cover.greatest + 1)) best = completed;
  }
  return best;
}

const asColumn = (content: Loadout) => ({ content, group: 0, cost: 0, amounts: [] });

/** The kinds of units of which different loadouts share some, but for those that are apart already. */
const mixedKinds = (mixed: readonly number[], { groups }: LoadoutProgram): readonly string[] =>
  gathered(mixed, (index) => {
    const group = groups[index];
    // A single unit that is told apart for what is plugged into it needs no telling apart.
    return group?.slot === null && group.uses.unit === null ? [kindKey(group)] : [];
  });

/** Of the tiers of a step that has no proof those are settled in which the best plan in hand and the bound meet. */
function stopped(
  objective: ScalarObjective,
  outcome: Extract<CoverOutcome<Loadout>, { kind: 'stopped' | 'stuck' }>,
  plans: readonly LoadoutPlan[],
  settled: ReadonlyMap<Criterion, number>,
  question: Question,
): SearchOutcome {
  const { best, bound } = outcome;
  const reached = best === null ? [] : tierValues(objective, best.value);
  const bounds = tierValues(objective, Math.min(bound, best?.value ?? Infinity));
  const first = bounds.findIndex(([, value], index) => value !== reached[index]?.[1]);
  const met = new Map([...settled, ...bounds.slice(0, Math.max(0, first))]);
  const [tier, value] = bounds[first] ?? [];
  return {
    kind: 'stopped',
    candidates: [...plans, ...(best === null ? [] : [best.contents])].map((plan) => namedFeeds(plan, question)),
    reached:
      best === null || settled.size + reached.length < question.tiers.length ? null : new Map([...settled, ...reached]),
    settled: met,
    open: tier === undefined ? null : { tier, bound: value ?? null },
    impasse: outcome.kind === 'stuck' ? { parts: outcome.used, cases: outcome.cases } : null,
  };
}

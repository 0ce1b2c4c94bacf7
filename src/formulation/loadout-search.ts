import { searchCover, type CoverOutcome } from '../../solver/cover/search.js';
import { casesOf } from '../../solver/cover/tree.js';
import type { ChoosingCriterion, Criterion } from '../domain/aim.js';
import type { Feed } from '../domain/plan.js';
import type { ProofStep } from '../domain/proof.js';
import { loadoutPricer, type LoadoutPricer } from '../loadout/best-loadout.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import { scalarObjectives, limitedAtFirst, type ScalarObjective, type SettledStep } from './scalar-objective.js';
import { tierValues } from './digits.js';
import { slotKey, type Slots } from './loadout-groups.js';
import { loadoutProgram, type LoadoutProgram } from './loadout-program.js';
import { namedFeeds } from './named-feeds.js';
import { countsLimits, proofStep } from './proof-of.js';
import type { Effort, Optimiser, SearchOutcome } from './optimiser.js';
import { worthwhileSupplies } from './pinned-question.js';
import type { Question } from './question.js';

/** Solves the cover of the pedals by loadouts, step by step in the order of the tiers; mostly there is one step. */
export const loadoutSearch: Optimiser = async (question, effort) => {
  const job: Job = {
    question,
    effort,
    // A proof has to speak of every supply; a search need not.
    supplies: effort.proof === true ? question.supplies : worthwhileSupplies(question),
    pricers: remembered((uses: SupplyUses) => loadoutPricer(uses, question.bench)),
  };
  const earlier: SettledStep[] = [...limitedAtFirst(question)];
  const settled = new Map<ChoosingCriterion, number>();
  const candidates: (readonly Feed[])[] = [];
  const steps: ProofStep[] = [];
  let cases = 0;
  let limits = false;
  let contents: readonly Loadout[] | null = null;
  for (const objective of scalarObjectives(question)) {
    const { outcome, program } = await searchStep(objective, { earlier, settled, contents }, job);
    if (outcome.kind === 'infeasible') return { kind: 'impossible' };
    if (outcome.kind !== 'optimal') {
      if (outcome.best !== null) candidates.push(namedFeeds(outcome.best.contents, question));
      return stopped(objective, outcome, candidates, settled);
    }
    ({ contents } = outcome);
    cases += casesOf(outcome.proof.tree);
    limits ||= countsLimits(outcome.proof.tree, program);
    if (effort.proof === true) steps.push(proofStep(question, program, objective, outcome.value, outcome.proof));
    candidates.push(namedFeeds(contents, question));
    for (const [tier, value] of tierValues(objective, outcome.value)) settled.set(tier, value);
    earlier.push({ objective, value: outcome.value });
  }
  const proof = effort.proof === true ? steps : null;
  return {
    kind: 'proven',
    feeds: namedFeeds(contents ?? [], question),
    values: settled,
    evidence: { kind: 'tags', cases, limits },
    proof,
  };
};

type Job = {
  readonly question: Question;
  readonly effort: Effort;
  readonly supplies: readonly SupplyUses[];
  readonly pricers: (uses: SupplyUses) => LoadoutPricer;
};

/** What earlier steps have settled, and the loadouts of the last of them. */
type Before = {
  readonly earlier: readonly SettledStep[];
  readonly settled: ReadonlyMap<ChoosingCriterion, number>;
  readonly contents: readonly Loadout[] | null;
};

/** One step; where the search gets stuck because several units of a supply stand for one another, they are told apart. */
async function searchStep(
  objective: ScalarObjective,
  { earlier, settled, contents }: Before,
  { question, effort, supplies, pricers }: Job,
): Promise<{ readonly outcome: CoverOutcome<Loadout>; readonly program: LoadoutProgram }> {
  const first = objective.tiers[0]?.tier ?? null;
  const firstOf = (value: number): number => tierValues(objective, value)[0]?.[1] ?? 0;
  let slots: Slots = new Map();
  let known = contents;
  // What the search has shown before units are told apart holds for them, too.
  let shown = 0;
  for (;;) {
    const program = loadoutProgram(question, supplies, objective, earlier, pricers, { slots, settled });
    const outcome = await searchCover(program.cover, {
      remainingMs: effort.remainingMs,
      signal: effort.signal,
      timing: effort.timing,
      known: known === null ? null : program.cover.complete(known.map(asColumn)),
      onProgress: ({ value, bound }) =>
        effort.onProgress?.({
          tier: first,
          value: value === null ? null : firstOf(value),
          bound: firstOf(Math.max(shown, bound)),
        }),
    });
    if (outcome.kind === 'optimal' || outcome.kind === 'infeasible') return { outcome, program };
    shown = Math.max(shown, outcome.bound);
    const finer = outcome.kind === 'stuck' ? finerSlots(slots, outcome.mixed, program) : null;
    if (finer === null) return { outcome: { ...outcome, bound: shown }, program };
    known = outcome.best?.contents ?? null;
    slots = finer;
  }
}

const asColumn = (content: Loadout) => ({ content, group: 0, cost: 0, amounts: [] });

/** More units told apart, where different loadouts share units of a group; null when all of these are apart already. */
function finerSlots(slots: Slots, mixed: ReadonlyMap<number, number>, { groups }: LoadoutProgram): Slots | null {
  const finer = new Map(slots);
  for (const [index, units] of mixed) {
    const group = groups[index];
    if (group?.slot !== null) continue;
    const key = slotKey(group);
    finer.set(key, (finer.get(key) ?? 0) + units);
  }
  return [...finer].some(([key, count]) => count !== slots.get(key)) ? finer : null;
}

/** Of the tiers of a step that has no proof those are settled in which the best plan in hand and the bound meet. */
function stopped(
  objective: ScalarObjective,
  { best, bound }: { readonly best: { readonly value: number } | null; readonly bound: number },
  candidates: readonly (readonly Feed[])[],
  settled: ReadonlyMap<Criterion, number>,
): SearchOutcome {
  const reached = best === null ? [] : tierValues(objective, best.value);
  const bounds = tierValues(objective, Math.min(bound, best?.value ?? Infinity));
  const first = bounds.findIndex(([, value], index) => value !== reached[index]?.[1]);
  const met = new Map([...settled, ...bounds.slice(0, Math.max(0, first))]);
  const [tier, value] = bounds[first] ?? [];
  return {
    kind: 'stopped',
    candidates,
    settled: met,
    open: tier === undefined ? null : { tier, bound: value ?? null },
  };
}

function remembered(make: (uses: SupplyUses) => LoadoutPricer): (uses: SupplyUses) => LoadoutPricer {
  const known = new Map<SupplyUses, LoadoutPricer>();
  return (uses) => {
    const pricer = known.get(uses) ?? make(uses);
    known.set(uses, pricer);
    return pricer;
  };
}

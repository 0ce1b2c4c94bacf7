import { divided } from './divide.js';
import { isBetter, type Found } from './found-plan.js';
import { loadoutSearch } from './loadout-search.js';
import { hasEnded, type Effort, type Optimiser, type SearchOutcome } from './optimiser.js';
import { worthwhileSupplies } from './pinned-question.js';
import type { Question } from './question.js';
import { cheaper, isKeptByBudget, isWithinBudget, searchWithinBudget } from './within-budget.js';

type Proven = Extract<SearchOutcome, { kind: 'proven' }>;
type Stopped = Extract<SearchOutcome, { kind: 'stopped' }>;

/**
 * The best plan by loadouts. Where a budget keeps the search long, the least money is asked about. Where it gets stuck before its
 * time is over, the question is divided into such as leave no plan out together, until each of them is proven. A proof that either
 * way leads to cannot be written down.
 */
export const optimise: Optimiser = async (question, effort) => {
  if (effort.proof === true || !isWithinBudget(question)) return searchWhole(question, effort);
  if (question.tiers[0] === 'money') return searchWhole(cheaper(question), effort);
  const outcome = await loadoutSearch(question, { ...effort, givesUp: isKeptByBudget(question) });
  if (outcome.kind !== 'stopped' || hasEnded(effort)) return outcome;
  const found = await searchWithinBudget(question, outcome, effort, searchWhole);
  return found ?? searchWhole(question, effort);
};

const searchWhole: Optimiser = async (question, effort) => {
  const outcome = await loadoutSearch(question, effort);
  if (outcome.kind !== 'stopped' || outcome.impasse === null || hasEnded(effort)) return outcome;
  // Without a proof to write down there may be no impasse.
  if (effort.proof === true) return optimise(question, { ...effort, proof: false });
  return inParts({ ...question, supplies: worthwhileSupplies(question) }, outcome, effort);
};

/** What is known of a question whose search got stuck, by what its parts come to: only what is better than all in hand. */
async function inParts(
  question: Question,
  whole: Stopped,
  { onProgress: _told, proof: _proof, ...effort }: Effort,
): Promise<SearchOutcome> {
  const open = [{ question, outcome: whole }];
  const candidates = [...whole.candidates];
  const evidence = { cases: 0, limits: false };
  let best = bestOf(whole);
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { impasse } = next.outcome;
    if (impasse !== null && cannotBeat(next.outcome, best)) {
      evidence.cases += impasse.cases;
      continue;
    }
    const parts = impasse === null ? null : divided(next.question, impasse.parts);
    if (parts === null) return { ...whole, candidates };
    for (const part of parts) {
      const outcome = await loadoutSearch(best === null ? part : { ...part, beating: best.values }, effort);
      // What nothing better was found for may be so for what is limited.
      const { cases, limits } = outcome.kind === 'proven' ? outcome.evidence : { cases: 1, limits: true };
      evidence.limits ||= limits;
      if (outcome.kind === 'stopped') {
        candidates.push(...outcome.candidates);
        open.push({ question: part, outcome });
      } else evidence.cases += cases;
      const found = outcome.kind === 'impossible' ? null : bestOf(outcome);
      if (found !== null && isBetter(found, best)) best = found;
    }
  }
  if (best === null) return { kind: 'impossible' };
  return { kind: 'proven', ...best, evidence: { kind: 'tags', ...evidence }, proof: null };
}

function bestOf(outcome: Proven | Stopped): Found | null {
  if (outcome.kind === 'proven') return { feeds: outcome.feeds, values: outcome.values };
  const feeds = outcome.candidates.at(-1);
  return feeds === undefined || outcome.reached === null ? null : { feeds, values: outcome.reached };
}

/** Whether no plan for a part is better than one in hand. */
function cannotBeat({ settled, open }: Stopped, best: Found | null): boolean {
  if (best === null) return false;
  for (const [tier, value] of best.values) {
    const least = settled.get(tier) ?? (open?.tier === tier ? open.bound : null);
    if (least === null || least !== value) return least !== null && least > value;
    if (!settled.has(tier)) return false;
  }
  return true;
}

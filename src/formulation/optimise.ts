import { divided } from './divide.js';
import { loadoutSearch } from './loadout-search.js';
import { hasEnded, type Effort, type Optimiser, type SearchOutcome } from './optimiser.js';
import { worthwhileSupplies } from './pinned-question.js';
import type { Question } from './question.js';

type Proven = Extract<SearchOutcome, { kind: 'proven' }>;
type Stopped = Extract<SearchOutcome, { kind: 'stopped' }>;

/**
 * The best plan by loadouts. Where the search gets stuck before its time is over, the question is divided into such as leave
 * no plan out together, until each of them is proven. A proof that was divided so cannot be written down.
 */
export const optimise: Optimiser = async (question, effort) => {
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

/** The best plan in hand, where the values of all its tiers are known. */
type Found = Pick<Proven, 'feeds' | 'values'>;

function bestOf(outcome: Proven | Stopped): Found | null {
  if (outcome.kind === 'proven') return { feeds: outcome.feeds, values: outcome.values };
  const feeds = outcome.candidates.at(-1);
  return feeds === undefined || outcome.reached === null ? null : { feeds, values: outcome.reached };
}

const isBetter = (one: Found, other: Found | null): boolean => {
  if (other === null) return true;
  for (const [tier, value] of one.values) {
    const difference = value - (other.values.get(tier) ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
};

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

import type { Criterion } from '../domain/aim.js';
import { isBetter } from './found-plan.js';
import { hasEnded, type Effort, type Optimiser, type Progress, type SearchOutcome } from './optimiser.js';
import type { Question } from './question.js';

type Proven = Extract<SearchOutcome, { kind: 'proven' }>;
type Stopped = Extract<SearchOutcome, { kind: 'stopped' }>;

/**
 * Whether a budget may be what makes the question hard, and it can be asked in another way: not so where pedals may be left out, and
 * are counted, as the cheapest plan feeds no more of them than it must.
 */
export const isWithinBudget = ({ tiers, partial, beating, bench: { policy } }: Question): boolean =>
  policy.budget !== null && beating === undefined && (!partial || tiers.length === 0);

/**
 * Where a budget is what makes a board hard, more nodes than these settle nothing; most boards take fewer. Where any plan will do it is
 * mostly found at the first one, or the budget forbids it.
 */
const manyNodes = { any: 1, best: 16 } as const;

/**
 * Whether a search seems to be kept from its end by the budget: without one there is a better plan than the best so far, or may be.
 * What costs less than a plan, exposed pedals included, keeps to the budget where that plan does with all of this; so does what
 * costs less money than a plan that exposes none.
 */
export const isKeptByBudget =
  ({ tiers: [first], bench: { policy } }: Question) =>
  (nodes: number, value: number | null): boolean => {
    if (nodes <= (first === undefined ? manyNodes.any : manyNodes.best)) return false;
    if (value === null) return true;
    return first === 'cost' ? value > (policy.budget ?? Infinity) : first === 'exposed' && value > 0;
  };

type Inquiry = {
  readonly question: Question;
  readonly budget: number;
  readonly effort: Effort;
  readonly search: Optimiser;
  /** What the search of the whole has found before it was given up. */
  readonly early: Stopped;
};

/**
 * A question with a budget, asked by way of the least money: a relaxation spends no more than the budget by buying parts of
 * what there is, wherever it branches, while the least money is soon proven. No proof of it can be written down.
 * @param early what the search of the whole has found so far; told again where the time runs out.
 * @returns null where that tells too little, so that the whole has to be searched to its end.
 */
export async function searchWithinBudget(
  question: Question,
  early: Stopped,
  effort: Effort,
  search: Optimiser,
): Promise<SearchOutcome | null> {
  const { budget } = question.bench.policy;
  if (budget === null) return null;
  const inquiry = { question, budget, effort: { ...effort, onProgress: undefined }, search, early };
  const isByExposed = goesByExposed(question);
  const asked = isByExposed
    ? cheapestExposing(question.mostExposed ?? Infinity, budget, question)
    : cheaper({ ...question, tiers: ['money'] }, budget);
  const cheapest = await search(asked, inquiry.effort);
  if (cheapest.kind === 'impossible') return cheapest;
  if (cheapest.kind === 'stopped') return stopped(inquiry, null);
  if (question.tiers.length === 0) return ofTiers(question.tiers, cheapest);
  return isByExposed ? byExposed(cheapest, inquiry, effort.onProgress) : null;
}

/** A question of which money comes first as one without a budget: of plans that cost no more than this, or than the budget. */
export const cheaper = (question: Question, money: number = question.bench.policy.budget ?? Infinity): Question => ({
  ...unlimited(question),
  // Whatever the later tiers come to: none is below 0.
  beating: new Map(question.tiers.map((tier) => [tier, tier === 'money' ? money + 1 : 0])),
});

const unlimited = ({ bench, ...question }: Question): Question => ({
  ...question,
  bench: { ...bench, policy: { ...bench.policy, budget: null } },
});

/** Whether the exposed pedals are all that an aim weighs against money, or what it ranks before money. */
const goesByExposed = ({ tiers: [first, second], bench: { policy } }: Question): boolean =>
  policy.supplyPrice === 0 && (first === 'cost' ? policy.noisePrice > 0 : first === 'exposed' && second === 'money');

/**
 * The best plan within the budget by how many pedals it exposes: the least money whatever is exposed, which is the cheapest plan, then
 * the least with fewer and fewer exposed, until that is beyond the budget or cannot pay ("Multicriteria optimization", 2005, calls it
 * the ε-constraint method).
 */
async function byExposed(
  cheapest: Proven,
  inquiry: Inquiry,
  onProgress: Effort['onProgress'],
): Promise<SearchOutcome | null> {
  const { question, budget, effort, search, early } = inquiry;
  const { tiers } = question;
  let best = scored(cheapest, question);
  const anyMoney = await search({ ...unlimited(question), tiers: [...tiers, 'money'] }, effort);
  if (anyMoney.kind === 'impossible') return anyMoney;
  if (anyMoney.kind === 'stopped') return stopped(inquiry, best);
  if (valueOf('money', anyMoney) <= budget) return ofTiers(tiers, anyMoney);
  const fewest = fewestExposed(anyMoney, inquiry);
  let cases = anyMoney.evidence.cases + cheapest.evidence.cases;
  for (let most = valueOf('exposed', cheapest) - 1; most >= fewest;) {
    onProgress?.({ ...soFar(best), bound: early.open?.bound ?? null });
    const next = await search(cheapestExposing(most, worthSpending(best, fewest, inquiry), question), effort);
    if (next.kind === 'stopped') return stopped(inquiry, best);
    if (next.kind === 'impossible') break;
    cases += next.evidence.cases;
    const found = scored(next, question);
    if (isBetter(found, best)) best = found;
    most = valueOf('exposed', next) - 1;
  }
  return { ...best, evidence: { kind: 'tags', cases, limits: true } };
}

const soFar = ({ values }: Proven): Pick<Progress, 'tier' | 'value'> => {
  const [[tier, value] = [null, null]] = values;
  return { tier, value };
};

const isByCost = ({ tiers }: Question): boolean => tiers[0] === 'cost';

/** How many pedals a plan within the budget exposes at the least: it is no better than the best of any money, and spends less. */
const fewestExposed = (anyMoney: Proven, { question, budget }: Inquiry): number =>
  isByCost(question)
    ? Math.ceil((valueOf('cost', anyMoney) - budget) / question.bench.policy.noisePrice)
    : valueOf('exposed', anyMoney);

/** What a plan may cost that is as good as the best so far, or better: so many are exposed at the least. */
const worthSpending = (best: Proven, fewest: number, { question, budget }: Inquiry): number =>
  isByCost(question) ? Math.min(budget, valueOf('cost', best) - question.bench.policy.noisePrice * fewest) : budget;

function cheapestExposing(most: number, money: number, question: Question): Question {
  const others = question.tiers.filter((tier) => tier !== 'cost' && tier !== 'money' && tier !== 'exposed');
  const mostExposed = most === Infinity ? null : most;
  return cheaper({ ...question, tiers: ['money', 'exposed', ...others], mostExposed }, money);
}

/** A plan of which money and exposed pedals are known, with the values that were asked for. */
function scored(found: Proven, { tiers, bench: { policy } }: Question): Proven {
  const cost = valueOf('money', found) + policy.noisePrice * valueOf('exposed', found);
  return ofTiers(tiers, { ...found, values: new Map([...found.values, ['cost', cost]]) });
}

const valueOf = (tier: Criterion, { values }: Pick<Proven, 'values'>): number => values.get(tier) ?? Infinity;

/** With the values of the tiers that were asked for, in their order. */
const ofTiers = (tiers: Question['tiers'], found: Proven): Proven => ({
  ...found,
  values: new Map(tiers.map((tier) => [tier, valueOf(tier, found)])),
  proof: null,
});

/** What is known where a part was not settled: null while there is time left to search the whole. */
function stopped({ early, effort }: Inquiry, best: Proven | null): Stopped | null {
  if (!hasEnded(effort)) return null;
  if (best === null) return early;
  // Of the last one all is known.
  return early.reached === null
    ? { ...early, candidates: [...early.candidates, best.feeds], reached: best.values }
    : { ...early, candidates: [best.feeds, ...early.candidates] };
}

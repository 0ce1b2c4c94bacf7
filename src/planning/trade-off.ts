import type { ChoosingTier } from '../domain/aim.js';
import type { Effort } from '../formulation/optimiser.js';
import type { Question } from '../formulation/question.js';
import type { Terms } from './audited.js';
import type { TradeOff, TradeOffPoint } from './comparison.js';
import { provenPlan, withLimits, type Proven } from './proven-plan.js';

type Against = TradeOff['against'];

const orders: Readonly<
  Record<Against, { readonly cheapest: readonly ChoosingTier[]; readonly least: readonly ChoosingTier[] }>
> = {
  exposed: {
    cheapest: ['money', 'exposed', 'bricks', 'parts', 'offPreferred'],
    least: ['exposed', 'money', 'bricks', 'parts', 'offPreferred'],
  },
  bricks: {
    cheapest: ['money', 'bricks', 'exposed', 'parts', 'offPreferred'],
    least: ['bricks', 'money', 'exposed', 'parts', 'offPreferred'],
  },
};

/**
 * Every pair of money and exposed pedals, or money and bricks, that nothing else beats: first both ends, then from the
 * cheapest on again and again the cheapest plan with fewer of the other ("On a bicriterion formulation of the problems of
 * integrated system identification and system optimization", 1971: one of the two becomes a limit). Each plan is the
 * least in the other figure among the cheapest ones, so that none is beaten, and the limit falls by no more than one below
 * what is there, so that none is missed.
 */
export async function tradeOff(against: Against, question: Question, terms: Terms, effort: Effort): Promise<TradeOff> {
  const { cheapest, least } = orders[against];
  const solve = async (limited: Question, tiers: readonly ChoosingTier[]): Promise<TradeOffPoint | null> =>
    pointOf(against, await provenPlan({ ...limited, tiers }, terms, effort));
  const last = await solve(question, least);
  if (last === null) return { against, points: [], complete: false };
  const points: TradeOffPoint[] = [];
  for (let limited = question; ;) {
    const next = await solve(limited, cheapest);
    if (next === null) return { against, points, complete: false };
    points.push(next);
    if (next.amount === last.amount) return { against, points, complete: true };
    if (next.amount === last.amount + 1) return { against, points: [...points, last], complete: true };
    limited = limitedTo(next.amount - 1, against, question);
  }
}

function pointOf(against: Against, proven: Proven): TradeOffPoint | null {
  if (proven.kind === 'stopped') return null;
  if (proven.kind === 'none') throw new Error('a plan that exists was not found when it was sought again');
  const { wiring } = proven;
  return { money: wiring.score.money, amount: wiring.score[against], wiring };
}

const limitedTo = (most: number, against: Against, question: Question): Question =>
  against === 'exposed' ? { ...question, mostExposed: most } : withLimits(question, { bricks: most });

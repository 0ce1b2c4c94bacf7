import { compareScores } from '../../domain/aim.js';
import type { Score } from '../../domain/plan.js';
import { isNoWorse } from './box-search.js';
import type { Preferring } from './choices.js';
import type { Merit, UnbeatenPoint } from './comparison.js';
import type { UnbeatenFound } from './unbeaten.js';

/**
 * What nothing is better at than a plan with this score, as far as is known. `best` is the best under the aim; null where that is
 * not known.
 */
export function meritsOf(
  score: Score,
  best: Score | null,
  unbeaten: UnbeatenFound,
  { aim, policy }: Preferring,
): readonly Merit[] {
  const { points, least, complete } = unbeaten;
  const isBest = best !== null && compareScores(score, best, aim, policy) === 0;
  const aimed: readonly Merit[] = isBest ? ['aim'] : [];
  const point = points.find((each) => isNoWorse(each, score) && isNoWorse(score, each));
  if (point === undefined) return aimed;
  const isCheapestWith = (figure: 'exposed' | 'bricks'): boolean =>
    point[figure] === least[figure] &&
    points.every((other) => other[figure] > point[figure] || other.money >= point.money);
  const isNoBetter = (other: UnbeatenPoint): boolean =>
    other.money > (policy.budget ?? Infinity) || compareScores(score, other.wiring.score, aim, policy) <= 0;
  const isBestWithinBudget = complete && point.money <= (policy.budget ?? -1) && points.every(isNoBetter);
  const merits: readonly Merit[] = [
    ...aimed,
    ...(isCheapestWith('exposed') ? (['quiet'] as const) : []),
    ...(isCheapestWith('bricks') ? (['bricks'] as const) : []),
    ...(point.money === least.money ? (['money'] as const) : []),
    ...(isBestWithinBudget && !isBest ? (['budget'] as const) : []),
  ];
  return merits.length > 0 ? merits : ['between'];
}

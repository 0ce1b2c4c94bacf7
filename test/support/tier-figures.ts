import { tierValue, tiersOf, type ChoosingAim } from '../../src/domain/aim.js';
import type { Policy } from '../../src/domain/board.js';
import type { Score } from '../../src/domain/plan.js';

/**
 * A score as the aim sees it, its most important tier first. Two best plans have the same figures, but not always the same
 * score: twenty euros and one exposed pedal may cost as much as forty euros and none.
 */
export const tierFigures = (score: Score, aim: ChoosingAim, policy: Policy): readonly number[] =>
  tiersOf(aim, policy).map((tier) => tierValue(tier, score, policy));

/** By how much the first is more in the first tier in which the two differ; 0 where they tie. */
export const firstDifference = (one: readonly number[], two: readonly number[]): number =>
  one.map((value, index) => value - (two[index] ?? 0)).find((difference) => difference !== 0) ?? 0;

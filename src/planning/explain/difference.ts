import { countedBeside, isMoney, tiersOf, tierValue, type ChoosingAim, type Tier } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import type { Score } from '../../domain/plan.js';

/** A tier in which two plans differ, with what each comes to. */
export type TierDifference = {
  readonly tier: Tier;
  readonly from: number;
  readonly to: number;
  /** Of the cost, in which exposed pedals count as money: how many of them there are more, or fewer when below zero. */
  readonly exposed?: number;
  /** Of money in which supplies in use count: how many of them there are more, or fewer when below zero. */
  readonly supplies?: number;
};

/** The tiers of the aim in which the scores differ, the most important first. */
export function differencesOf(from: Score, to: Score, aim: ChoosingAim, policy: Policy): readonly TierDifference[] {
  const exposed = to.exposed - from.exposed;
  const supplies = policy.supplyPrice === 0 ? 0 : to.bricks - from.bricks;
  return tiersOf(aim, policy)
    .map((tier) => ({
      tier,
      from: tierValue(tier, from, policy),
      to: tierValue(tier, to, policy),
      ...(tier === 'cost' && exposed !== 0 ? { exposed } : {}),
      ...(supplies !== 0 && isMoney(tier) && countedBeside[tier].supplies ? { supplies } : {}),
    }))
    .filter((each) => each.from !== each.to);
}

import { tiersOf, tierValue, type ChoosingAim, type Tier } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import type { Score } from '../../domain/plan.js';

/** A tier in which two plans differ, with what each comes to. */
export type TierDifference = { readonly tier: Tier; readonly from: number; readonly to: number };

/** The tiers of the aim in which the scores differ, the most important first. */
export const differencesOf = (from: Score, to: Score, aim: ChoosingAim, policy: Policy): readonly TierDifference[] =>
  tiersOf(aim)
    .map((tier) => ({ tier, from: tierValue(tier, from, policy), to: tierValue(tier, to, policy) }))
    .filter((each) => each.from !== each.to);

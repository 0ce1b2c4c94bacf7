import type { Policy } from './board.js';
import type { Score } from './plan.js';

/** What is best: an ordered list, of which a later entry only breaks ties of the earlier ones. */
export const choosingAims = ['cost', 'bricks', 'quiet'] as const;
export type ChoosingAim = (typeof choosingAims)[number];

/** The things that an aim ranks. `cost` is money plus the noise price of every exposed pedal, in minor units. */
export type Tier = 'unpowered' | 'cost' | 'money' | 'exposed' | 'bricks' | 'parts' | 'offPreferred';

const orders: Readonly<Record<ChoosingAim, readonly Tier[]>> = {
  cost: ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred'],
  bricks: ['unpowered', 'bricks', 'cost', 'parts', 'offPreferred'],
  quiet: ['unpowered', 'exposed', 'money', 'bricks', 'parts', 'offPreferred'],
};

/** The aim's tiers, the most important first. */
export const tiersOf = (aim: ChoosingAim): readonly Tier[] => orders[aim];

/** The value of one tier, the smaller the better. */
export function tierValue(tier: Tier, score: Score, policy: Policy): number {
  return tier === 'cost' ? score.money + policy.noisePrice * score.exposed : score[tier];
}

/** Below zero when the first score is the better one under the aim, zero when they tie in every tier. */
export function compareScores(first: Score, second: Score, aim: ChoosingAim, policy: Policy): number {
  for (const tier of tiersOf(aim)) {
    const difference = tierValue(tier, first, policy) - tierValue(tier, second, policy);
    if (difference !== 0) return difference;
  }
  return 0;
}

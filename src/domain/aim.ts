import type { Policy } from './board.js';
import { isPedalTier, pedalTiers } from './pedal-tier.js';
import type { Score } from './plan.js';

/** What is best: an ordered list, of which a later entry only breaks ties of the earlier ones. */
export const choosingAims = ['cost', 'bricks', 'quiet'] as const;
export type ChoosingAim = (typeof choosingAims)[number];
/** `moves` is the aim of re-plugging: it looks at how the board is plugged today. */
export type Aim = ChoosingAim | 'moves';

/** The things that an aim ranks and that need not know how the board is plugged today. */
export const choosingTiers = ['unpowered', 'cost', 'money', 'exposed', 'bricks', 'parts', ...pedalTiers] as const;
export type ChoosingTier = (typeof choosingTiers)[number];

/**
 * All that an aim ranks. `cost` is money plus the noise price of every exposed pedal, `newCost` money plus the noise
 * price of every pedal that is exposed and is not today, both in minor units.
 */
export const tiers = [...choosingTiers, 'newCost', 'moved'] as const;
export type Tier = (typeof tiers)[number];

/** What a plan can be asked to have the least of: a tier, or mains sockets taken, which are limited and no aim ranks. */
export type Criterion = Tier | 'sockets';
/** The criteria that need not know how the board is plugged today. */
export type ChoosingCriterion = Exclude<Criterion, 'newCost' | 'moved'>;

/** Tiers of money, in minor units. */
export const isMoney = (tier: Criterion): boolean => tier === 'cost' || tier === 'money' || tier === 'newCost';

/** Whether the tier is known without today's wiring. */
export const isChoosingTier = (tier: Criterion): tier is ChoosingCriterion => tier !== 'newCost' && tier !== 'moved';

const choosingOrders: Readonly<Record<ChoosingAim, readonly ChoosingTier[]>> = {
  cost: ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred'],
  bricks: ['unpowered', 'bricks', 'cost', 'parts', 'offPreferred'],
  quiet: ['unpowered', 'exposed', 'money', 'bricks', 'parts', 'offPreferred'],
};
const movesOrder: readonly Tier[] = ['unpowered', 'newCost', 'moved', 'exposed', 'parts'];

/** The aim's tiers, the most important first. */
export const tiersOf = (aim: Aim): readonly Tier[] => (aim === 'moves' ? movesOrder : choosingOrders[aim]);
/** Those of an aim of choosing. */
export const choosingTiersOf = (aim: ChoosingAim): readonly ChoosingTier[] => choosingOrders[aim];

/** The value of one tier, the smaller the better. */
export function tierValue(tier: Tier, score: Score, policy: Policy): number {
  if (isPedalTier(tier)) return score[tier];
  switch (tier) {
    case 'cost':
      return score.money + policy.noisePrice * score.exposed;
    case 'newCost':
      return score.money + policy.noisePrice * (score.newlyExposed ?? score.exposed);
    case 'moved':
      return score.moved ?? 0;
    case 'unpowered':
    case 'money':
    case 'exposed':
    case 'bricks':
    case 'parts':
      return score[tier];
  }
}

/** Below zero when the first score is the better one under the aim, zero when they tie in every tier. */
export function compareScores(first: Score, second: Score, aim: Aim, policy: Policy): number {
  for (const tier of tiersOf(aim)) {
    const difference = tierValue(tier, first, policy) - tierValue(tier, second, policy);
    if (difference !== 0) return difference;
  }
  return 0;
}

import type { Policy } from './board.js';
import { countedTiers } from './counted-tiers.js';
import type { Score } from './plan.js';

/** What is best: an ordered list, of which a later entry only breaks ties of the earlier ones. */
export const choosingAims = ['cost', 'bricks', 'quiet'] as const;
export type ChoosingAim = (typeof choosingAims)[number];
/** `moves` is the aim of re-plugging: it looks at how the board is plugged today. */
export const aims = [...choosingAims, 'moves'] as const;
export type Aim = (typeof aims)[number];

/** The things that an aim ranks and that need not know how the board is plugged today. */
const choosingTiers = ['unpowered', 'cost', 'outlay', 'money', 'exposed', 'bricks', ...countedTiers] as const;
export type ChoosingTier = (typeof choosingTiers)[number];

/** All that an aim ranks. What the tiers of money count beside it, all in minor units, stands in `countedBeside`. */
export const tiers = [...choosingTiers, 'newCost', 'moved'] as const;
export type Tier = (typeof tiers)[number];

/** What a plan can be asked to have the least of: a tier, or mains sockets taken, which are limited and no aim ranks. */
export type Criterion = Tier | 'sockets';

export type MoneyTier = 'cost' | 'outlay' | 'money' | 'newCost';

/** What counts as money beside what is bought: pedals at the policy's noise price, supplies in use at its supply price. */
export const countedBeside: Readonly<
  Record<MoneyTier, { readonly noise: 'exposed' | 'newlyExposed' | null; readonly supplies: boolean }>
> = {
  money: { noise: null, supplies: false },
  outlay: { noise: null, supplies: true },
  cost: { noise: 'exposed', supplies: true },
  /** Of the exposed pedals those alone that are not exposed today. */
  newCost: { noise: 'newlyExposed', supplies: true },
};

/** Tiers of money, in minor units. */
export const isMoney = (tier: Criterion): tier is MoneyTier => Object.hasOwn(countedBeside, tier);

const choosingOrders: Readonly<Record<ChoosingAim, readonly ChoosingTier[]>> = {
  cost: ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred'],
  bricks: ['unpowered', 'bricks', 'cost', 'parts', 'offPreferred'],
  quiet: ['unpowered', 'exposed', 'outlay', 'bricks', 'parts', 'offPreferred'],
};
const movesOrder: readonly Tier[] = ['unpowered', 'newCost', 'moved', 'exposed', 'parts'];
/** Where money comes first, and nothing counts as money beside it. */
export const cheapestTiers: readonly ChoosingTier[] = ['money', 'exposed', 'bricks', ...countedTiers];

/** The aim's tiers, the most important first. */
export const tiersOf = (aim: Aim, policy: Policy): readonly Tier[] =>
  aim === 'moves' ? movesOrder : choosingTiersOf(aim, policy);

/** Those of an aim of choosing. Where supplies in use count for nothing, an outlay is money and is called so. */
export const choosingTiersOf = (aim: ChoosingAim, { supplyPrice }: Policy): readonly ChoosingTier[] =>
  choosingOrders[aim].map((tier) => (tier === 'outlay' && supplyPrice === 0 ? 'money' : tier));

/** Those of them in which plans can differ that power every pedal. */
export const rankedTiersOf = (aim: ChoosingAim, policy: Policy): readonly ChoosingTier[] =>
  choosingTiersOf(aim, policy).filter((tier) => tier !== 'unpowered');

/** The value of one tier, the smaller the better. */
export function tierValue(tier: Tier, score: Score, policy: Policy): number {
  if (isMoney(tier)) return moneyValue(tier, score, policy);
  return tier === 'moved' ? (score.moved ?? 0) : score[tier];
}

/** Money + noise price × pedals exposed, or newly so + supply price × supplies in use. */
function moneyValue(tier: MoneyTier, score: Score, { noisePrice, supplyPrice }: Policy): number {
  const { noise, supplies } = countedBeside[tier];
  const exposed = noise === null ? 0 : (score[noise] ?? score.exposed);
  return score.money + noisePrice * exposed + (supplies ? supplyPrice * score.bricks : 0);
}

/** Below zero when the first score is the better one under the aim, zero when they tie in every tier. */
export const compareScores = (first: Score, second: Score, aim: Aim, policy: Policy): number =>
  compareByTiers(first, second, tiersOf(aim, policy), policy);

/** The same with the tiers given, the most important first. */
export function compareByTiers(first: Score, second: Score, order: readonly Tier[], policy: Policy): number {
  for (const tier of order) {
    const difference = tierValue(tier, first, policy) - tierValue(tier, second, policy);
    if (difference !== 0) return difference;
  }
  return 0;
}

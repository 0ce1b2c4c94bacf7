import { perPedalTier } from '../domain/pedal-tier.js';
import type { ProofTags } from '../domain/proof.js';
import type { StepClaim } from './claim.js';
import type { Condition } from './conditions.js';
import { nodePrices, type NodePrices } from './node-prices.js';
import type { StockGroup } from './stock.js';
import { itemsOf } from './unit/items.js';
import { routeCosts } from './unit/values.js';

/** The most units of each group that a better plan can use in a case. */
export type UnitCaps = ReadonlyMap<StockGroup, number>;

/** What the tags of a node show: that no better plan is in the case, or how many units one can use at most. */
export type NodeBound =
  | { readonly kind: 'closed' }
  | {
      readonly kind: 'open';
      /** Scaled; a better plan's number is at least this. */ readonly bound: bigint;
      readonly caps: UnitCaps;
    };

/** `needsCaps`: whether anything is made of the caps. @throws Flaw when the tags are not sound. */
export function nodeBound(
  tags: ProofTags,
  path: readonly Condition[],
  before: UnitCaps,
  claim: StepClaim,
  needsCaps: boolean,
): NodeBound {
  const prices = nodePrices(tags, path, claim);
  const carried = carriedUnder(prices, claim);
  const target = claim.scale * (claim.value - 1n);
  let bound = prices.base;
  const gaining = new Set<StockGroup>();
  for (const [group, most] of before) {
    if (most === 0) continue;
    const cost = prices.unit(group);
    const gain = BigInt(carried(group, cost)) - BigInt(cost);
    if (gain <= 0n) continue;
    gaining.add(group);
    bound -= BigInt(most) * gain;
    // Every unit that carries more than it costs lowers the bound.
    if (bound <= target && !needsCaps) return { kind: 'open', bound, caps: before };
  }
  if (bound > target) return { kind: 'closed' };
  if (!needsCaps) return { kind: 'open', bound, caps: before };
  const slack = target - bound;
  const caps = new Map<StockGroup, number>();
  for (const [group, most] of before) {
    const isGaining = most === 0 || gaining.has(group);
    caps.set(group, isGaining ? most : Math.min(most, capOf(carried, group, prices.unit(group), slack)));
  }
  return { kind: 'open', bound, caps };
}

type Carried = (group: StockGroup, enough: number) => number;

/** A unit that costs more than it carries makes a plan worse by the difference: so many fit into what is left. */
function capOf(carried: Carried, group: StockGroup, cost: number, slack: bigint): number {
  // What makes a plan worse by more than what is left need not be known any better.
  const enough = BigInt(cost) - slack - 1n;
  const least = BigInt(-Number.MAX_SAFE_INTEGER);
  const excess = BigInt(cost) - BigInt(carried(group, Number(enough < least ? least : enough)));
  return excess <= 0n ? Infinity : Number(slack / excess);
}

/** The most that one unit of a group carries, known as far as it is above `enough`; worked out once for groups alike. */
function carriedUnder(prices: NodePrices, { carriers, classes, routes }: StepClaim): Carried {
  const known = new Map<unknown, Map<string, { readonly most: number; readonly exact: boolean }>>();
  const judged = new Map<string, ReturnType<typeof judgedBy>>();
  const judgedBy = (group: StockGroup) => {
    const leads = prices.leads(group);
    return {
      items: itemsOf(classes, prices.pedals(group), prices.mostPedals(group)),
      prices: {
        leads,
        routes: routeCosts(routes.sets, leads),
        exposed: prices.exposed,
        ...perPedalTier((tier) => prices[tier]),
      },
    };
  };
  return (group, enough) => {
    const carrier = carriers.get(group);
    if (carrier === undefined) return enough;
    const key = prices.key(group);
    const results = known.get(carrier) ?? new Map<string, { most: number; exact: boolean }>();
    known.set(carrier, results);
    const result = results.get(key);
    if (result !== undefined && (result.exact || result.most <= enough)) return Math.max(enough, result.most);
    const judging = judged.get(key) ?? judgedBy(group);
    judged.set(key, judging);
    const most = carrier(judging.items, judging.prices, enough);
    results.set(key, { most, exact: most > enough });
    return most;
  };
}

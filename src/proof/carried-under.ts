import { perPedalTier } from '../domain/pedal-tier.js';
import type { StepClaim } from './claim.js';
import type { NodePrices } from './node-prices.js';
import type { StockGroup } from './stock.js';
import { itemsOf } from './unit/items.js';
import type { Carried } from './unit/most-among.js';
import { routeCosts } from './unit/values.js';

/** What one unit of a group carries, known as far as it is above `enough`; null when it can carry nothing. */
export type CarriedBy = (group: StockGroup, enough: number) => Carried | null;

type Known = Carried & { readonly enough: number };

/** Worked out once for groups alike. */
export function carriedUnder(prices: NodePrices, { carriers, classes, routes }: StepClaim): CarriedBy {
  const known = new Map<unknown, Map<string, Known>>();
  const judged = new Map<string, ReturnType<typeof judgedBy>>();
  const judgedBy = (group: StockGroup) => {
    const leads = prices.leads(group);
    return {
      items: itemsOf(classes, prices.pedals(group), prices.mostPedals(group)),
      prices: {
        leads,
        routes: routeCosts(routes.sets, leads),
        exposed: prices.exposed,
        newlyExposed: prices.newlyExposed,
        moved: prices.moved,
        ...perPedalTier((tier) => prices[tier]),
      },
    };
  };
  return (group, enough) => {
    const carrier = carriers.get(group);
    if (carrier === undefined) return null;
    const key = prices.key(group);
    const results = known.get(carrier) ?? new Map<string, Known>();
    known.set(carrier, results);
    const result = results.get(key);
    if (result !== undefined && result.enough <= enough) return result;
    const judging = judged.get(key) ?? judgedBy(group);
    judged.set(key, judging);
    const carried = carrier(judging.items, judging.prices, enough);
    results.set(key, { ...carried, enough });
    return carried;
  };
}

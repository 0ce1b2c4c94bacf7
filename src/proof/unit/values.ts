import { pedalTiers, perPedalTier, type PerPedalTier } from '../../domain/pedal-tier.js';
import type { CaseModel, CaseChain, CaseWay } from './case-model.js';

/** What things are worth and cost, a pedal that counts in a tier among them: whole numbers, Infinity for what cannot be had. */
export type CasePrices = PerPedalTier<number> & {
  /** By item. */
  readonly tags: readonly number[];
  /** By lead kind. */
  readonly leads: readonly number[];
  /** The least that the adapters of each set of ways cost. */
  readonly routes: readonly number[];
  /** Of a pedal that is exposed. */
  readonly exposed: number;
  /** On top, of one that is not exposed today. */
  readonly newlyExposed: number;
  /** Of a pedal that is plugged today and does not stay. */
  readonly moved: number;
};

/** The same in grains of so much, rounded so that nothing is worth less. */
export const inGrains = (prices: CasePrices, grain: number): CasePrices => {
  const { tags, leads, routes, exposed, newlyExposed, moved, ...counted } = prices;
  const cost = (value: number): number => Math.floor(value / grain);
  return {
    tags: tags.map((tag) => Math.ceil(tag / grain)),
    leads: leads.map(cost),
    routes: routes.map(cost),
    exposed: cost(exposed),
    newlyExposed: cost(newlyExposed),
    moved: cost(moved),
    ...perPedalTier((tier) => cost(counted[tier])),
  };
};

/** What everything that a case allows is worth, in whole numbers; −Infinity for what cannot be had or is never worth it. */
export type CaseValues = {
  /** By place. */
  readonly places: readonly number[];
  /** By chain and link. */
  readonly links: readonly (readonly number[])[];
  /** By chain, what the lead for so many pedals costs; it never falls with their number. */
  readonly leads: readonly (readonly number[])[];
  /** By item, the most that one of its pedals is worth anywhere; at least 0. */
  readonly bests: readonly number[];
  /** More than all that a unit carries can be worth. */
  readonly ceiling: number;
};

/** `steps` divides every worth into so many equal parts, so that rents can be finer than whole ones. */
export function valuesOf(model: CaseModel, prices: CasePrices, steps: number): CaseValues {
  const { places, links, leads } = plainValues(model, prices, steps);
  const bests = bestsOf(model, places, links);
  const ceiling = ceilingOf(model, bests, leads);
  // What costs more than all else together could make up for is never taken: so sums stay small.
  const possible = (value: number): number => (value < -ceiling ? -Infinity : value);
  return {
    places: places.map(possible),
    links: links.map((chain) => chain.map(possible)),
    leads: leads.map((costs) => costs.map((cost) => (cost > ceiling ? Infinity : cost))),
    bests,
    ceiling,
  };
}

/** The same, whether it is ever worth it or not. */
export function plainValues(
  model: CaseModel,
  prices: CasePrices,
  steps = 1,
): Pick<CaseValues, 'places' | 'links' | 'leads'> {
  const worth = (item: number, way: CaseWay): number => ((prices.tags[item] ?? 0) - costOf(way, prices)) * steps;
  return {
    places: model.places.map(({ item, ways }) =>
      ways.reduce((best, way) => Math.max(best, worth(item, way)), -Infinity),
    ),
    links: model.chains.map((chain) => chain.links.map(({ item, way }) => worth(item, way))),
    leads: model.chains.map((chain) => leadCosts(chain, prices).map((cost) => cost * steps)),
  };
}

function bestsOf(
  { counts, places, chains }: CaseModel,
  placeWorths: readonly number[],
  linkWorths: readonly (readonly number[])[],
): readonly number[] {
  const bests = counts.map(() => 0);
  const note = (item: number, worth: number): void => {
    bests[item] = Math.max(bests[item] ?? 0, worth);
  };
  for (const [index, { item }] of places.entries()) note(item, placeWorths[index] ?? 0);
  for (const [index, { links }] of chains.entries())
    for (const [link, { item }] of links.entries()) note(item, linkWorths[index]?.[link] ?? 0);
  return bests;
}

/** All pedals at their best, and every output with the chain lead that pays most, if any pays. */
function ceilingOf(
  { counts, outputs }: CaseModel,
  bests: readonly number[],
  leads: readonly (readonly number[])[],
): number {
  const pedals = counts.reduce((sum, count, item) => sum + count * (bests[item] ?? 0), 1);
  const paid = leads.flat().reduce((most, cost) => Math.max(most, -cost), 0);
  return outputs.reduce((sum, count) => sum + count * paid, pedals);
}

function costOf({ route, join, counts, exposed, newlyExposed, moved }: CaseWay, prices: CasePrices): number {
  let cost = (prices.routes[route] ?? Infinity) + (join === null ? 0 : (prices.leads[join] ?? Infinity));
  for (const tier of pedalTiers) if (counts[tier]) cost += prices[tier];
  if (exposed) cost += prices.exposed;
  if (newlyExposed) cost += prices.newlyExposed;
  return moved ? cost + prices.moved : cost;
}

function leadCosts({ leads }: CaseChain, prices: CasePrices): readonly number[] {
  const longest = leads.reduce((most, { tails }) => Math.max(most, tails), 0);
  return Array.from({ length: longest + 1 }, (_, pedals) =>
    leads.reduce(
      (least, { kind, tails }) => (tails < pedals ? least : Math.min(least, prices.leads[kind] ?? Infinity)),
      Infinity,
    ),
  );
}

/** The least that each set of ways costs, as far as that is a safe integer, else the largest one. */
export function routeCosts(
  sets: readonly (readonly (readonly number[])[])[],
  leads: readonly number[],
): readonly number[] {
  const costOfWay = (way: readonly number[]): number => way.reduce((sum, kind) => sum + (leads[kind] ?? Infinity), 0);
  const exactly = (cost: number): number => (cost === Infinity ? cost : Math.min(cost, Number.MAX_SAFE_INTEGER));
  return sets.map((ways) => exactly(ways.reduce((least, way) => Math.min(least, costOfWay(way)), Infinity)));
}

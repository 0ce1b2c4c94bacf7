import { remembered } from '../../solver/remembered.js';
import { pedalTiers } from '../domain/pedal-tier.js';
import type { ChainOption, PlaceOption } from './frame.js';
import type { LoadoutDuals } from './loadout-duals.js';
import type { ChainPool } from './uses.js';

/** What one pedal of a class is worth in a chain of a pool, by its best route. */
export type ChainCandidate = {
  readonly place: PlaceOption;
  readonly value: number;
  /** How many pedals of the class there are. */
  readonly count: number;
};

/** The pedals of a chain, and what they are worth with their chain lead paid. */
export type Pattern = {
  readonly chain: ChainOption;
  readonly places: readonly PlaceOption[];
  /** Its lead: the cheapest with enough tails. */
  readonly lead: number;
  readonly value: number;
};

/** The cheapest lead for a number of pedals, by that number; the first two are not used. */
export type LeadCosts = readonly { readonly kind: number; readonly cost: number }[];

export type LeadSize = { readonly tails: number; readonly cost: number };

/** Of chains behind the same leads under the same prices the very same. */
export function leadCostsOf({ pool: { leads } }: Pick<ChainOption, 'pool'>, duals: LoadoutDuals): LeadCosts {
  const known = remembered(knownCosts, duals, () => new Map<ChainPool['leads'], LeadCosts>());
  return remembered(known, leads, () => cheapestLeads(leads, duals));
}

const knownCosts = new WeakMap<LoadoutDuals, Map<ChainPool['leads'], LeadCosts>>();

function cheapestLeads(leads: ChainPool['leads'], duals: LoadoutDuals): LeadCosts {
  const most = Math.max(...leads.map(({ tails }) => tails));
  const cheapest: { kind: number; cost: number }[] = [];
  for (let pedals = 0; pedals <= most; pedals += 1) {
    let best = { kind: -1, cost: Infinity };
    for (const { kind, tails } of leads) {
      const cost = duals.leads[kind] ?? 0;
      if (tails >= pedals && cost < best.cost) best = { kind, cost };
    }
    cheapest.push(best);
  }
  return cheapest;
}

/** The leads that are the cheapest for some number of pedals, each with its most tails. */
export function leadSizes(leads: LeadCosts): readonly LeadSize[] {
  const sizes: LeadSize[] = [];
  for (let tails = 2; tails < leads.length; tails += 1) {
    const { cost = Infinity } = leads[tails] ?? {};
    if (cost < Infinity && cost !== leads[tails + 1]?.cost) sizes.push({ tails, cost });
  }
  return sizes;
}

/** What a place is worth: the pedal's dual price less its leads and what its volts and its company cost. */
export function placeValue(
  option: Omit<PlaceOption, 'place' | 'load' | 'surge' | 'sole' | 'begins'>,
  duals: LoadoutDuals,
): number {
  let value = duals.pedals[option.pedal] ?? 0;
  const taking = duals.taking?.get(option.pedal);
  for (const kind of option.leads) value += (taking?.[kind] ?? 0) - (duals.leads[kind] ?? 0);
  for (const tier of pedalTiers) value -= option[tier] * duals[tier];
  return value - option.exposed * duals.exposed - option.newlyExposed * duals.newlyExposed - option.moved * duals.moved;
}

/** The candidates of a pool, each class by its best route. */
export function candidatesOf(
  chain: ChainOption,
  duals: LoadoutDuals,
  counts: readonly number[],
): readonly ChainCandidate[] {
  const best = new Map<number, ChainCandidate>();
  for (const place of chain.places) {
    const value = placeValue(place, duals);
    const count = counts[place.pedal] ?? 0;
    if (count > 0 && value > (best.get(place.pedal)?.value ?? -Infinity))
      best.set(place.pedal, { place, value, count });
  }
  return [...best.values()];
}

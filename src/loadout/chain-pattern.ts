import type { ChainOption, PlaceOption } from './frame.js';
import type { Tags } from './tags.js';

/** What one pedal of a class is worth in a chain of a pool, by its best route. */
export type Candidate = {
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

export function leadCostsOf({ pool, mostTails }: ChainOption, tags: Tags): LeadCosts {
  return Array.from({ length: mostTails + 1 }, (_, pedals) => {
    let best = { kind: -1, cost: Infinity };
    for (const { kind, tails } of pool.leads) {
      const cost = tags.leads[kind] ?? 0;
      if (tails >= pedals && cost < best.cost) best = { kind, cost };
    }
    return best;
  });
}

/** What a place is worth: the pedal's tag less its leads and what its volts and its company cost. */
export function placeValue(option: Omit<PlaceOption, 'place' | 'load' | 'excess' | 'sole'>, tags: Tags): number {
  let value = tags.pedals[option.pedal] ?? 0;
  for (const kind of option.leads) value -= tags.leads[kind] ?? 0;
  return value - option.off * tags.offPreferred - option.exposed * tags.exposed;
}

/** The candidates of a pool, each class by its best route, the most value for its load first. */
export function candidatesOf(chain: ChainOption, tags: Tags, counts: readonly number[]): readonly Candidate[] {
  const best = new Map<number, Candidate>();
  for (const place of chain.places) {
    const value = placeValue(place, tags);
    const count = counts[place.pedal] ?? 0;
    if (count > 0 && value > (best.get(place.pedal)?.value ?? -Infinity))
      best.set(place.pedal, { place, value, count });
  }
  return [...best.values()].sort(byDensity);
}

/** The most value for a unit of load first. */
export const byDensity = (a: Pick<Candidate, 'value' | 'place'>, b: Pick<Candidate, 'value' | 'place'>): number =>
  b.value * (a.place.load || 1e-6) - a.value * (b.place.load || 1e-6);

/** Steps of one search for patterns; a search that takes more gives up. */
const stepLimit = 20_000;

/**
 * Calls `found` for patterns worth more than the floor, which `found` returns anew: the value itself for the best one only,
 * the old floor for all of them. Depth first, with the fractional knapsack as a bound.
 * @returns false when it gave up.
 */
export function searchPatterns(
  chain: ChainOption,
  candidates: readonly Candidate[],
  leads: LeadCosts,
  capacities: readonly number[],
  search: { readonly floor: number; readonly found: (places: readonly PlaceOption[], value: number) => number },
): boolean {
  const state = { floor: search.floor, steps: 0 };
  const sack = sackOf(candidates);
  const chosen: PlaceOption[] = [];
  const rooms = [...capacities];
  const take = ({ weights }: PlaceOption, times: 1 | -1): void => {
    for (const [at, weight] of weights.entries()) rooms[at] = (rooms[at] ?? 0) - times * weight;
  };
  const extend = (from: number, so: Sum): void => {
    const size = chosen.length;
    if (size >= 2 && so.value - costOf(leads, size) > state.floor) {
      state.floor = search.found([...chosen], so.value - costOf(leads, size));
    }
    if (size >= chain.mostTails) return;
    const room = Math.min(chain.mostLoad, chain.rating - so.excess) - so.load;
    const worthless = state.floor - so.value + costOf(leads, Math.max(2, size + 1));
    for (let index = from; index < candidates.length; index += 1) {
      const candidate = candidates[index];
      if (candidate === undefined || fractional(sack, index, room, chain.mostTails - size) <= worthless) return;
      const { place } = candidate;
      const next = added(so, candidate);
      if (!holds(next, chain) || place.weights.some((weight, at) => weight > (rooms[at] ?? 0))) continue;
      if ((state.steps += 1) > stepLimit) return;
      take(place, 1);
      chosen.push(place);
      extend(taken(chosen, place) < candidate.count ? index : index + 1, next);
      chosen.pop();
      take(place, -1);
    }
  };
  extend(0, { load: 0, excess: 0, value: 0, soles: 0 });
  return state.steps <= stepLimit;
}

/** What the pedals chosen so far add up to. */
type Sum = { readonly load: number; readonly excess: number; readonly value: number; readonly soles: number };

const added = (so: Sum, { place, value }: Candidate): Sum => ({
  load: so.load + place.load,
  excess: Math.max(so.excess, place.excess),
  value: so.value + value,
  soles: so.soles + (place.sole ? 1 : 0),
});

/** Rules `current` and `startup`, and one digital pedal on a `sole` chain. */
const holds = ({ load, excess, soles }: Sum, { mostLoad, rating }: ChainOption): boolean =>
  load <= mostLoad && load + excess <= rating && soles <= 1;

const costOf = (leads: LeadCosts, pedals: number): number => leads[pedals]?.cost ?? Infinity;

/** How many of the last chosen ones are this place. */
function taken(chosen: readonly PlaceOption[], place: PlaceOption): number {
  let count = 0;
  for (let at = chosen.length - 1; at >= 0 && chosen[at] === place; at -= 1) count += 1;
  return count;
}

/** Candidates as plain numbers, for the bound that is asked for at every step. */
type Sack = {
  readonly values: Float64Array;
  readonly loads: Float64Array;
  readonly counts: Float64Array;
  /** The largest value from an index on. */
  readonly best: Float64Array;
  /** How many of them are worth anything; the order puts these first. */
  readonly useful: number;
};

function sackOf(candidates: readonly Candidate[]): Sack {
  const values = Float64Array.from(candidates, ({ value }) => value);
  const best = values.slice();
  for (let index = best.length - 2; index >= 0; index -= 1) {
    best[index] = Math.max(best[index] ?? 0, best[index + 1] ?? 0);
  }
  return {
    values,
    loads: Float64Array.from(candidates, ({ place }) => place.load),
    counts: Float64Array.from(candidates, ({ count }) => count),
    best,
    useful: candidates.filter(({ value }) => value > 0).length,
  };
}

/** The most that candidates from an index on can add: the last of them in part, and no more than so many of the best. */
function fractional({ values, loads, counts, best, useful }: Sack, from: number, room: number, most: number): number {
  let left = room;
  let sum = 0;
  for (let index = from; index < useful && (left > 0 || loads[index] === 0); index += 1) {
    const [value, load, count] = [values[index] ?? 0, loads[index] ?? 0, counts[index] ?? 0];
    const whole = load === 0 ? count : Math.min(count, Math.floor(left / load));
    sum += whole * value;
    left -= whole * load;
    if (whole === count) continue;
    // One more than the share, for what floating point loses in it and in the order of the candidates.
    sum += Math.ceil((value * left) / load) + 1;
    left = 0;
  }
  return Math.min(sum, most * Math.max(0, best[from] ?? 0));
}

/** The pattern of the most value above the floor; null when there is none. */
export function bestPattern(
  chain: ChainOption,
  tags: Tags,
  counts: readonly number[],
  capacities: readonly number[],
  floor: number,
): { readonly pattern: Pattern | null; readonly complete: boolean } {
  const leads = leadCostsOf(chain, tags);
  let pattern: Pattern | null = null;
  const complete = searchPatterns(chain, candidatesOf(chain, tags, counts), leads, capacities, {
    floor,
    found: (places, value) => {
      pattern = { chain, places, value, lead: leads[places.length]?.kind ?? -1 };
      return value;
    },
  });
  return { pattern, complete };
}

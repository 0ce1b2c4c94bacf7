import { Beginnings, type Sums } from './chain-beginnings.js';
import { chainBound, type ChainBound } from './chain-bound.js';
import { leadSizes, type ChainCandidate, type LeadCosts } from './chain-pattern.js';
import type { ChainOption, PlaceOption } from './frame.js';

/** Which pedals may hang on one chain, and what its lead costs. */
export type ChainQuestion = {
  readonly chain: ChainOption;
  readonly candidates: readonly ChainCandidate[];
  readonly leads: LeadCosts;
};

/** Pedals of a chain, and what they are worth with the chain lead paid. */
export type ChainFound = { readonly places: readonly PlaceOption[]; readonly value: number };

type ChainAnswer = {
  /** No chain is worth more than this or the floor: exact, or above the truth where the search gave up. */
  readonly bound: number;
  /** Chains worth more than the floor, the best one first, and a few that were the best on the way. */
  readonly found: readonly ChainFound[];
};

/** Beginnings of chains that one search may make, where nothing else is said. */
const mostLabels = 20_000;
/** So many of the chains that were the best for a while are told. */
const mostFound = 4;

/**
 * The best chain of two pedals or more: pedal by pedal, the most valuable first, all beginnings that may become better than the
 * floor, by their number of pedals. Of two as long the one that is worth no more and draws no less is dropped ("Knapsack problems",
 * 1990). For every lead prices say which beginnings cannot become good enough, and beforehand which leads and which pedals cannot
 * be part of anything that is. Prices take it that all room is filled: where too little is left to fill it, the next pedals on all
 * tails that are left say more.
 */
export function bestChains(question: ChainQuestion, floor: number, most = mostLabels): ChainAnswer {
  const items = itemsOf(question);
  const sizes = sizesOf(question, items, floor);
  if (sizes.length === 0) return { bound: floor, found: [] };
  const useful = items.filter((item) => sizes.some((size) => size.worth + lossOf(item, size) > floor));
  return searched(
    useful.sort((one, other) => other.value - one.value),
    sizes,
    question,
    floor,
    most,
  );
}

type Item = Pick<ChainCandidate, 'place' | 'value'>;

/** Every pedal by itself; more of a class than there are tails find no place. */
function itemsOf({ candidates, chain }: ChainQuestion): Item[] {
  const items: Item[] = [];
  for (const candidate of candidates) {
    for (let copy = Math.min(candidate.count, chain.mostTails); copy > 0; copy -= 1) items.push(candidate);
  }
  return items;
}

/** A lead with the prices that bound what is worth hanging on it. */
type Size = ChainBound & {
  readonly tails: number;
  readonly cost: number;
  /** No chain on it is worth more. */
  readonly worth: number;
};

/** The leads that are the cheapest for some number of pedals and may carry more than the floor, each with its most tails. */
function sizesOf({ leads, chain }: ChainQuestion, items: readonly Item[], floor: number): readonly Size[] {
  const sack = { values: items.map(({ value }) => value), loads: items.map(({ place }) => place.load) };
  const room = roomOf(chain, 0, 0);
  const sizes: Size[] = [];
  for (const { tails, cost } of leadSizes(leads)) {
    const bounded = chainBound(sack, room, tails, cost + floor);
    const worth = bounded.bound - cost;
    if (worth > floor) sizes.push({ tails, cost, worth, ...bounded });
  }
  return sizes;
}

/** What is lost against a lead's bound at the least where the pedal is on it; not above zero. */
const lossOf = ({ value, place }: Item, { perLoad, perPedal }: Size): number =>
  Math.min(0, value - perLoad * place.load - perPedal);

/** What more a chain can bear: a pedal takes no less at switch-on than its load. */
const roomOf = ({ mostLoad, mostSurge }: ChainOption, load: number, surge: number): number =>
  Math.min(mostLoad - load, mostSurge - surge);

/** One search after the other makes its beginnings here. */
const beginnings = new Beginnings();

function searched(
  items: readonly Item[],
  sizes: readonly Size[],
  { chain, leads }: ChainQuestion,
  floor: number,
  most: number,
): ChainAnswer {
  const rests = sizes.map((size) => restsOf(items, size));
  const valueOfFirst = sumsOf(items);
  const found: ChainFound[] = [];
  let best = floor;
  let made = 0;
  /** Whether a beginning may become better than the best with items from the next one on. */
  const isPromising = (value: number, room: number, length: number, next: number): boolean => {
    for (let at = 0; at < sizes.length; at += 1) {
      const { tails = 0, cost = 0, perLoad = 0, perPedal = 0 } = sizes[at] ?? {};
      if (tails <= length) continue;
      const more = Math.min(
        perLoad * room + perPedal * (tails - length) + (rests[at]?.[next] ?? 0),
        (valueOfFirst[Math.min(items.length, next + tails - length)] ?? 0) - (valueOfFirst[next] ?? 0),
      );
      if (value + more - cost > best) return true;
    }
    return false;
  };
  beginnings.clear();
  const byLength: (readonly number[])[] = [[0]];
  while (byLength.length < chain.mostTails) byLength.push([]);
  for (const [index, item] of items.entries()) {
    for (let length = chain.mostTails - 1; length >= 0; length -= 1) {
      const shorter = (byLength[length] ?? []).filter((beginning) => {
        const room = roomOf(chain, beginnings.load(beginning), beginnings.surge(beginning));
        return isPromising(beginnings.value(beginning), room, length, index);
      });
      byLength[length] = shorter;
      const longer: number[] = [];
      for (const beginning of shorter) {
        const sums = withItem(beginning, item, chain);
        if (sums === null) continue;
        const value = length === 0 ? -Infinity : sums.value - (leads[length + 1]?.cost ?? Infinity);
        if (value > best) {
          best = value;
          found.unshift({ places: [...placesOf(beginning, items), item.place], value });
        }
        if (isPromising(sums.value, roomOf(chain, sums.load, sums.surge), length + 1, index + 1))
          longer.push(beginnings.add(sums, index, beginning));
      }
      if (longer.length === 0) continue;
      made += longer.length;
      byLength[length + 1] = beginnings.merged(byLength[length + 1] ?? [], longer);
    }
    if (made > most) return answerOf(found, Math.max(best, ...sizes.map(({ worth }) => worth)));
  }
  return answerOf(found, best);
}

/** By number what so many of the first items earn at the most. */
function sumsOf(items: readonly Item[]): Float64Array {
  const sums = new Float64Array(items.length + 1);
  for (const [index, { value }] of items.entries()) sums[index + 1] = (sums[index] ?? 0) + Math.max(0, value);
  return sums;
}

/** By index what the items from there on earn at the most when a lead's prices are paid. */
function restsOf(items: readonly Item[], { perLoad, perPedal }: Size): Float64Array {
  const rests = new Float64Array(items.length + 1);
  for (let index = items.length - 1; index >= 0; index -= 1) {
    const { value = 0, place } = items[index] ?? {};
    rests[index] = (rests[index + 1] ?? 0) + Math.max(0, value - perLoad * (place?.load ?? 0) - perPedal);
  }
  return rests;
}

/** Rules `current` and `startup`, and one digital pedal on a `sole` chain; null where one breaks. */
function withItem(beginning: number, { place, value }: Item, { mostLoad, mostSurge }: ChainOption): Sums | null {
  const load = beginnings.load(beginning) + place.load;
  const surge = beginnings.surge(beginning) + place.surge;
  const soles = beginnings.soles(beginning) + (place.sole ? 1 : 0);
  if (load > mostLoad || surge > mostSurge || soles > 1) return null;
  return { value: beginnings.value(beginning) + value, load, surge, soles };
}

const answerOf = (found: readonly ChainFound[], bound: number): ChainAnswer => ({
  bound,
  found: found.slice(0, mostFound),
});

const placesOf = (beginning: number, items: readonly Item[]): readonly PlaceOption[] =>
  beginnings
    .items(beginning)
    .map((index) => items[index]?.place)
    .filter((place) => place !== undefined);

import { chainBound, type ChainBound } from './chain-bound.js';
import { byDensity, leadSizes, type ChainCandidate, type LeadCosts } from './chain-pattern.js';
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
 * The best chain of two pedals or more: pedal by pedal all beginnings that may become better than the floor, by their
 * number of pedals. Of two as long the one that is worth no more and draws no less is dropped ("Knapsack problems", 1990).
 * For every lead prices say which beginnings cannot become good enough, and beforehand which leads and which pedals cannot
 * be part of anything that is.
 */
export function bestChains(question: ChainQuestion, floor: number, most = mostLabels): ChainAnswer {
  const items = itemsOf(question);
  const sizes = sizesOf(question, items, floor);
  if (sizes.length === 0) return { bound: floor, found: [] };
  const useful = items.filter((item) => sizes.some((size) => size.worth + lossOf(item, size) > floor));
  return searched(useful.sort(byDensity), sizes, question, floor, most);
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
  const room = roomOf(chain, nothingYet);
  const sizes: Size[] = [];
  for (const { tails, cost } of leadSizes(leads)) {
    const bounded = chainBound(sack, room, tails, cost + floor);
    const worth = bounded.bound - cost;
    if (worth > floor) sizes.push({ ...bounded, tails, cost, worth });
  }
  return sizes;
}

/** What is lost against a lead's bound at the least where the pedal is on it; not above zero. */
const lossOf = ({ value, place }: Item, { perLoad, perPedal }: Size): number =>
  Math.min(0, value - perLoad * place.load - perPedal);

/** A beginning: what its pedals add up to, and how it came about. */
type Label = {
  readonly value: number;
  readonly load: number;
  readonly surge: number;
  readonly soles: number;
  readonly place: PlaceOption | null;
  readonly before: Label | null;
};

const nothingYet: Label = { value: 0, load: 0, surge: 0, soles: 0, place: null, before: null };

/** What more a beginning can bear: a pedal takes no less at switch-on than its load. */
const roomOf = ({ mostLoad, mostSurge }: ChainOption, { load, surge }: Label): number =>
  Math.min(mostLoad - load, mostSurge - surge);

function searched(
  items: readonly Item[],
  sizes: readonly Size[],
  { chain, leads }: ChainQuestion,
  floor: number,
  most: number,
): ChainAnswer {
  const rests = sizes.map((size) => restsOf(items, size));
  const byLength: Label[][] = Array.from({ length: chain.mostTails + 1 }, () => []);
  byLength[0] = [nothingYet];
  const found: { label: Label; value: number }[] = [];
  let best = floor;
  let made = 0;
  const promising = (label: Label, length: number, next: number): boolean => {
    const room = roomOf(chain, label);
    for (let at = 0; at < sizes.length; at += 1) {
      const { tails = 0, cost = 0, perLoad = 0, perPedal = 0 } = sizes[at] ?? {};
      if (tails < length) continue;
      const more = perLoad * room + perPedal * (tails - length) + (rests[at]?.[next] ?? 0);
      if (label.value + more - cost > best) return true;
    }
    return false;
  };
  const keep = (label: Label, length: number, next: number): void => {
    const value = length === 1 ? -Infinity : label.value - (leads[length]?.cost ?? Infinity);
    if (value > best) {
      best = value;
      found.unshift({ label, value });
    }
    const alike = byLength[length] ?? [];
    if (!promising(label, length, next) || alike.some((other) => replaces(other, label))) return;
    alike.push(label);
    made += 1;
  };
  for (const [index, item] of items.entries()) {
    for (let length = chain.mostTails - 1; length >= 0; length -= 1) {
      byLength[length] = (byLength[length] ?? []).filter((label) => promising(label, length, index));
      for (const label of byLength[length] ?? []) {
        const extended = withItem(label, item, chain);
        if (extended !== null) keep(extended, length + 1, index + 1);
      }
    }
    if (made > most) return answerOf(found, Math.max(best, ...sizes.map(({ worth }) => worth)));
  }
  return answerOf(found, best);
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
function withItem(before: Label, { place, value }: Item, { mostLoad, mostSurge }: ChainOption): Label | null {
  const load = before.load + place.load;
  const surge = before.surge + place.surge;
  const soles = before.soles + (place.sole ? 1 : 0);
  if (load > mostLoad || surge > mostSurge || soles > 1) return null;
  return { value: before.value + value, load, surge, soles, place, before };
}

const replaces = (other: Label, label: Label): boolean =>
  other.value >= label.value && other.load <= label.load && other.surge <= label.surge && other.soles <= label.soles;

const answerOf = (found: readonly { label: Label; value: number }[], bound: number): ChainAnswer => ({
  bound,
  found: found.slice(0, mostFound).map(({ label, value }) => ({ places: placesOf(label), value })),
});

function placesOf(last: Label): readonly PlaceOption[] {
  const places: PlaceOption[] = [];
  for (let label: Label | null = last; label !== null; label = label.before) {
    if (label.place !== null) places.unshift(label.place);
  }
  return places;
}

import type { ChainCandidate, LeadCosts } from './chain-pattern.js';
import type { ChainOption, PlaceOption } from './frame.js';

/** Which pedals may hang on one chain, and what its lead costs. */
export type ChainQuestion = {
  readonly chain: ChainOption;
  /** The most value for its load first. */
  readonly candidates: readonly ChainCandidate[];
  readonly leads: LeadCosts;
  /** What the unit's limits can bear. */
  readonly capacities: readonly number[];
};

/** Pedals of a chain, and what they are worth with the chain lead paid. */
export type ChainFound = { readonly places: readonly PlaceOption[]; readonly value: number };

export type ChainAnswer = {
  /** No chain is worth more than this or the floor: exact, or above the truth where the search gave up. */
  readonly bound: number;
  /** Chains worth more than the floor, the best one first, and a few that were the best on the way. */
  readonly found: readonly ChainFound[];
};

/** Beginnings of chains that one search may make. */
const mostLabels = 20_000;
/** So many of the chains that were the best for a while are told. */
const mostFound = 4;

/**
 * The best chain of two pedals or more: candidate by candidate all beginnings that may become better than the floor, by the
 * number of their pedals. Of two as long the one that is worth no more, draws no less and leaves no more is dropped; the
 * fractional knapsack says which cannot become good enough ("Knapsack problems", 1990).
 */
export function bestChains(question: ChainQuestion, floor: number, most = mostLabels): ChainAnswer {
  const { chain, candidates, leads, capacities } = question;
  const sack = sackOf(candidates);
  const byLength: Label[][] = Array.from({ length: chain.mostTails + 1 }, () => []);
  byLength[0] = [{ value: 0, load: 0, surge: 0, soles: 0, rooms: capacities, place: null, before: null }];
  const found: { label: Label; value: number }[] = [];
  let best = floor;
  let made = 0;
  const promising = (label: Label, length: number, next: number): boolean => {
    // A pedal takes no less at switch-on than its load.
    const room = Math.min(chain.mostLoad - label.load, chain.mostSurge - label.surge);
    const more = fractional(sack, next, room, chain.mostTails - length);
    return label.value + more - costOf(leads, Math.max(2, length)) > best;
  };
  const keep = (label: Label, length: number, next: number): void => {
    const value = length === 1 ? -Infinity : label.value - costOf(leads, length);
    if (value > best) {
      best = value;
      found.unshift({ label, value });
    }
    const alike = byLength[length] ?? [];
    if (!promising(label, length, next) || alike.some((other) => replaces(other, label))) return;
    alike.push(label);
    made += 1;
  };
  const grow = (candidate: ChainCandidate, index: number, next: number): void => {
    for (let length = chain.mostTails - 1; length >= 0; length -= 1) {
      byLength[length] = (byLength[length] ?? []).filter((label) => promising(label, length, index));
      for (const label of byLength[length] ?? []) {
        const extended = withCandidate(label, candidate, chain);
        if (extended !== null) keep(extended, length + 1, next);
      }
    }
  };
  for (const [index, candidate] of candidates.entries()) {
    for (let copy = 1; copy <= candidate.count; copy += 1) {
      grow(candidate, index, copy < candidate.count ? index : index + 1);
      if (made > most) return answerOf(found, Math.max(best, rootBound(question, sack)));
    }
  }
  return answerOf(found, best);
}

/** A beginning: what its pedals add up to, and how it came about. */
type Label = {
  readonly value: number;
  readonly load: number;
  readonly surge: number;
  readonly soles: number;
  readonly rooms: readonly number[];
  readonly place: PlaceOption | null;
  readonly before: Label | null;
};

/** Rules `current` and `startup`, the unit's limits, and one digital pedal on a `sole` chain; null where one breaks. */
function withCandidate(
  before: Label,
  { place, value }: ChainCandidate,
  { mostLoad, mostSurge }: ChainOption,
): Label | null {
  const load = before.load + place.load;
  const surge = before.surge + place.surge;
  const soles = before.soles + (place.sole ? 1 : 0);
  if (load > mostLoad || surge > mostSurge || soles > 1) return null;
  for (const [at, weight] of place.weights.entries()) if (weight > (before.rooms[at] ?? 0)) return null;
  const rooms = before.rooms.map((room, at) => room - (place.weights[at] ?? 0));
  return { value: before.value + value, load, surge, soles, rooms, place, before };
}

const replaces = (other: Label, label: Label): boolean =>
  other.value >= label.value &&
  other.load <= label.load &&
  other.surge <= label.surge &&
  other.soles <= label.soles &&
  other.rooms.every((room, at) => room >= (label.rooms[at] ?? 0));

const costOf = (leads: LeadCosts, pedals: number): number => leads[pedals]?.cost ?? Infinity;

const rootBound = ({ chain, leads }: ChainQuestion, sack: Sack): number =>
  fractional(sack, 0, Math.min(chain.mostLoad, chain.mostSurge), chain.mostTails) - costOf(leads, 2);

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

function sackOf(candidates: readonly ChainCandidate[]): Sack {
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

/** Everything that can hang on one unit of a frame, by trying all of it, for about six pedals. */
import { pedalTiers } from '../../../src/domain/pedal-tier.js';
import type { Span } from '../../../src/loadout/rents.js';
import type { ChainOption, UnitFrame, PlaceOption, SoloOption } from '../../../src/loadout/frame.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';

/** One content: what it is worth, how many pedals it has, and each of its chains. */
export type Filled = { readonly value: number; readonly pedals: number; readonly chains: readonly number[] };

/**
 * The most that a content within the span is worth, nothing at all included; −Infinity where there is none. A pedal by
 * itself is worth something, and so is one on every output's sort of chain: others are not worth hanging.
 */
export function mostWorth(
  frame: UnitFrame,
  duals: LoadoutDuals,
  counts: readonly number[],
  span: Span = new Map(),
): number {
  let most = -Infinity;
  for (const { value, pedals, chains } of everyContent(frame, duals, counts)) {
    const within = [...span].every(([of, { least, most: greatest }]) => {
      const number = of === 'pedals' ? pedals : chains.filter((length) => length >= of).length;
      return least <= number && number <= greatest;
    });
    if (within && value > most) most = value;
  }
  return most;
}

/** What is left of a unit. */
type Left = { readonly outputs: readonly number[]; readonly capacities: readonly number[]; readonly filled: Filled };

function* everyContent(frame: UnitFrame, duals: LoadoutDuals, counts: readonly number[]): Generator<Filled> {
  const pedals = counts.flatMap((count, pedal) => new Array<number>(count).fill(pedal));
  const nothing = { value: 0, pedals: 0, chains: [] };
  yield* extended(pedals, { outputs: frame.outputs, capacities: frame.capacities, filled: nothing }, frame, duals);
}

/** The first pedal stays out, hangs alone, or begins a chain with some of the others. */
function* extended(waiting: readonly number[], left: Left, frame: UnitFrame, duals: LoadoutDuals): Generator<Filled> {
  const [pedal, ...rest] = waiting;
  if (pedal === undefined) {
    yield left.filled;
    return;
  }
  yield* extended(rest, left, frame, duals);
  for (const option of frame.solos) {
    if (option.pedal !== pedal || worthOf(option, duals) <= 0) continue;
    const less = taken(left, option.banks, [option], worthOf(option, duals), []);
    if (less !== null) yield* extended(rest, less, frame, duals);
  }
  for (const chain of frame.chains) {
    if (chain.places.every((place) => worthOf(place, duals) <= 0)) continue;
    for (const [places, others] of chainsFrom(pedal, rest, chain)) {
      const value = places.reduce((sum, place) => sum + worthOf(place, duals), -leadCost(chain, places.length, duals));
      const less = holds(chain, places) ? taken(left, [chain.bank], places, value, [places.length]) : null;
      if (less !== null) yield* extended(others, less, frame, duals);
    }
  }
}

type Option = SoloOption | PlaceOption;

/** A pedal's dual less its leads, its volts and its company, and what it gains by its leads. */
export const worthOf = ({ pedal, leads, exposed, ...counted }: Option, duals: LoadoutDuals): number =>
  leads.reduce(
    (value, kind) => value - (duals.leads[kind] ?? NaN) + (duals.taking?.get(pedal)?.[kind] ?? 0),
    duals.pedals[pedal] ?? NaN,
  ) -
  pedalTiers.reduce((sum, tier) => sum + counted[tier] * duals[tier], 0) -
  exposed * duals.exposed;

/** The cheapest lead with tails enough; Infinity when none has. */
export const leadCost = ({ pool }: ChainOption, pedals: number, duals: LoadoutDuals): number =>
  Math.min(...pool.leads.filter(({ tails }) => tails >= pedals).map(({ kind }) => duals.leads[kind] ?? NaN));

/** Rules `current`, `startup` and `chain`, and one digital pedal on a `sole` ground. */
export function holds({ mostLoad, mostSurge, mostTails }: ChainOption, places: readonly PlaceOption[]): boolean {
  const sum = (of: (place: PlaceOption) => number): number => places.reduce((all, place) => all + of(place), 0);
  return (
    places.length >= 2 &&
    places.length <= mostTails &&
    sum(({ load }) => load) <= mostLoad &&
    sum(({ surge }) => surge) <= mostSurge &&
    places.filter(({ sole }) => sole).length <= 1
  );
}

function* chainsFrom(
  first: number,
  rest: readonly number[],
  chain: ChainOption,
): Generator<readonly [places: readonly PlaceOption[], others: readonly number[]]> {
  const placesFor = (pedal: number): readonly PlaceOption[] => chain.places.filter((each) => each.pedal === pedal);
  function* grown(
    waiting: readonly number[],
    places: readonly PlaceOption[],
    others: readonly number[],
  ): Generator<readonly [readonly PlaceOption[], readonly number[]]> {
    const [pedal, ...later] = waiting;
    if (pedal === undefined) {
      yield [places, others];
      return;
    }
    yield* grown(later, places, [...others, pedal]);
    for (const place of placesFor(pedal)) yield* grown(later, [...places, place], others);
  }
  for (const place of placesFor(first)) yield* grown(rest, [place], []);
}

function taken(
  { outputs, capacities, filled }: Left,
  banks: readonly number[],
  options: readonly Option[],
  value: number,
  chains: readonly number[],
): Left | null {
  const free = outputs.map((count, bank) => count - banks.filter((each) => each === bank).length);
  const room = capacities.map((capacity, at) =>
    options.reduce((rest, { weights }) => rest - (weights[at] ?? 0), capacity),
  );
  if ([...free, ...room].some((rest) => rest < 0)) return null;
  return {
    outputs: free,
    capacities: room,
    filled: {
      value: filled.value + value,
      pedals: filled.pedals + options.length,
      chains: [...filled.chains, ...chains],
    },
  };
}

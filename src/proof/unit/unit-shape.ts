import type { Supply } from '../../domain/supply.js';
import { feedsInlets, mayBeUsed, suitsVenues, wayStart, type WayStart } from '../sources.js';
import { chainShapes } from './chain-shapes.js';
import { ownPlaces } from './own-places.js';
import { placeShapes } from './place-shapes.js';
import type { ChainShape, PlaceShape, ProofBench, RawChain, RawPlace, UnitShape } from './shape.js';
import { staysOn, type Stays, type UnitNumber } from './stays.js';
import { burdensIn, limitsOf, type Limit } from './totals.js';

/** Null when the unit can carry nothing, or may not be plugged in at all. */
export function unitShape(supply: Supply, unit: UnitNumber, bench: ProofBench): UnitShape | null {
  if (!mayBeUsed(supply.source, bench.policy) || !suitsVenues(supply.source, bench.policy.mains)) return null;
  const limits = limitsOf(supply, bench.policy);
  const { places, chains } = shapesFrom[wayStart(supply.source)](supply, limits, bench);
  if (places.length + chains.length === 0) return null;
  const all = [...places, ...chains.flatMap(({ links }) => links)].map(({ taken }) => taken);
  const pedals = bench.classes.reduce((sum, { members }) => sum + members.length, 0);
  const burdens = burdensIn(limits, all, pedals);
  const stays = staysOn(supply, unit, bench.classes);
  const terms: Terms = { stays, burdensOf: burdens.of, idle: burdens.caps.map(() => 0) };
  return {
    banks: supply.banks,
    caps: [...burdens.caps, ...stays.watched.map(() => 1)],
    places: places.flatMap((place) => settledPlaces(place, terms)),
    chains: chains.flatMap((chain) => settledChains(chain, terms)),
  };
}

type Terms = {
  readonly stays: Stays;
  readonly burdensOf: (taken: readonly bigint[]) => readonly number[];
  /** No burden on any total. */
  readonly idle: readonly number[];
};

/** One of each watched output that something goes on as. */
const watchedIn = ({ watched }: Stays, goesOn: readonly number[]): readonly number[] =>
  watched.map((output) => (goesOn.includes(output) ? 1 : 0));

/** A place in which its pedal stays, and in which it is moved, as far as that may be. */
function settledPlaces({ taken, volts, ...place }: RawPlace, { stays, burdensOf }: Terms): readonly PlaceShape[] {
  const { pedal, seats } = place;
  const goesOn = stays.of(pedal, seats, volts);
  const settled = (moved: boolean, as: readonly number[]): PlaceShape => ({
    ...place,
    moved,
    burdens: [...burdensOf(taken), ...watchedIn(stays, as)],
  });
  const staying = goesOn === null ? [] : [settled(false, goesOn)];
  return stays.mustStay(pedal) ? staying : [...staying, settled(stays.isPlugged(pedal), [])];
}

/** Chains that go on as none of today's outputs, and those that go on as each one that a pedal of theirs has. */
function settledChains({ volts, ...chain }: RawChain, { stays, burdensOf, idle }: Terms): readonly ChainShape[] {
  const homeOf = (pedal: number): number | null => stays.of(pedal, [chain.seat], volts)?.[0] ?? null;
  const homes = new Set(chain.links.flatMap(({ pedal }) => homeOf(pedal) ?? []));
  return [null, ...homes].map((home) => ({
    ...chain,
    burdens: [...idle, ...watchedIn(stays, home === null ? [] : [home])],
    links: chain.links.flatMap(({ taken, ...link }) => {
      const isStaying = home !== null && homeOf(link.pedal) === home;
      if (stays.mustStay(link.pedal) && !isStaying) return [];
      const moved = !isStaying && stays.isPlugged(link.pedal);
      return [{ ...link, moved, burdens: [...burdensOf(taken), ...watchedIn(stays, [])] }];
    }),
  }));
}

type Shapes = { readonly places: readonly RawPlace[]; readonly chains: readonly RawChain[] };

/** What could hang on the unit, by where the ways start. */
const shapesFrom: Readonly<Record<WayStart, (supply: Supply, limits: readonly Limit[], bench: ProofBench) => Shapes>> =
  {
    plug: (supply, limits, bench) => ({
      places: placeShapes(supply, limits, bench).filter(
        (place) => isWithin(place.taken, limits) && mayHang(place, supply, bench),
      ),
      chains: bench.policy.chains === 'never' ? [] : chainShapes(supply, limits, bench),
    }),
    pedal: (supply, _, bench) => ({ places: ownPlaces(supply, bench), chains: [] }),
  };

/** An inlet hangs on one output of what stands on the mains or on its own charge. */
const mayHang = ({ pedal, seats }: RawPlace, { source }: Supply, { classes }: ProofBench): boolean =>
  classes[pedal]?.isInlet !== true || (feedsInlets(source) && seats.length === 1);

const isWithin = (taken: readonly bigint[], limits: readonly Limit[]): boolean =>
  limits.every(({ most }, index) => (taken[index] ?? 0n) <= most);

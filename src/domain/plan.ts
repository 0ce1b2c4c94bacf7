import type { UnitRef } from './inlet.js';
import type { PerCountedTier } from './counted-tiers.js';
import { polarities, type Polarity, type PolarityOrUnknown } from './pedal.js';
import type { Millivolts, MinorUnits, PartId, PedalId, SupplyId } from './quantities.js';
import type { JoinMode } from './supply.js';

/** For each way in which a label may read, the adapters to use then, from the supply's side to the pedal's. */
export type Readings = Readonly<Record<Polarity, readonly PartId[]>>;

/** One pedal's path: supply, outputs, settings, leads. */
export type Feed = {
  readonly pedal: PedalId;
  readonly supply: SupplyId;
  /** Units of one supply model are numbered from 1, the owned ones first. */
  readonly unit: number;
  /** One output number, or the two of a join in rising order. */
  readonly outputs: readonly number[];
  /** The volts that each of `outputs` is set to, in the same order. */
  readonly settings: readonly Millivolts[];
  /** What the pedal's inlet gets; null for AC; `unknown` where its label decides by which of the `readings` it is plugged. */
  readonly polarity: PolarityOrUnknown | null;
  readonly join: { readonly mode: JoinMode; readonly part: PartId } | null;
  /** The chain lead that all pedals on this output share; null for a pedal alone. */
  readonly chain: PartId | null;
  /**
   * The adapters of this pedal's own tail, from the supply's side to the pedal's. With `readings` each as often as the
   * reading that needs it most.
   */
  readonly adapters: readonly PartId[];
  /** There only where the polarity is unknown: the same output at the same volts serves either way. */
  readonly readings?: Readings;
  /** There only where it is the inlet of this fed unit that hangs there, in place of a pedal (`inletId`). */
  readonly inletOf?: UnitRef;
};

/** What the inlet of a fed supply hangs on: one output, without a chain or a join. */
export type InletFeed = Feed & { readonly inletOf: UnitRef };

export const isInletFeed = (feed: Feed): feed is InletFeed => feed.inletOf !== undefined;

/** A feed with the polarity that its pedal's label turned out to have. */
export type ReadFeed = Feed & { readonly polarity: Polarity | null };

/** The feed as it is plugged when the label has been read: one, or one for either way in which the label may read. */
export function readFeeds({ polarity, readings, ...rest }: Feed): readonly ReadFeed[] {
  if (polarity !== 'unknown') return [{ ...rest, polarity }];
  return polarities.map((read) => ({ ...rest, polarity: read, adapters: readings?.[read] ?? rest.adapters }));
}

/** The volts that reach the pedal: the sum of both settings of a series join, else the setting. */
export function feedMillivolts(feed: Feed): Millivolts {
  const [first, second] = feed.settings;
  if (first === undefined) throw new RangeError(`the feed of ${feed.pedal} has no setting`);
  return feed.join?.mode === 'series' && second !== undefined ? ((first + second) as Millivolts) : first;
}

/** All leads between the supply's own lead and the pedal, from the supply's side. */
export const leadsOf = ({ join, chain, adapters }: Pick<Feed, 'join' | 'chain' | 'adapters'>): readonly PartId[] => [
  ...(join === null ? [] : [join.part]),
  ...(chain === null ? [] : [chain]),
  ...adapters,
];

/** What a plan is measured by; every aim orders these. Of the pedal tiers: how many powered pedals each counts; of the lead tiers: how many leads. */
export type Score = PerCountedTier<number> & {
  readonly unpowered: number;
  /** What must be bought, without the noise price. */
  readonly money: MinorUnits;
  readonly exposed: number;
  /** Supply units in use, owned or bought. */
  readonly bricks: number;
  /** Pedals plugged in today whose supply unit, outputs or volts differ, or that get no power; null unless the aim is `moves`. */
  readonly moved: number | null;
  /** Exposed pedals that are not exposed as the board is plugged today; there only when the aim is `moves`. */
  readonly newlyExposed?: number;
};

export type Purchase<Id> = { readonly id: Id; readonly units: number; readonly price: MinorUnits };

/** One supply unit, or some of its outputs: the list is empty where the whole unit is meant. */
export type Place = { readonly supply: SupplyId; readonly unit: number; readonly outputs: readonly number[] };

/** What is plugged where, and what that needs and costs. */
export type Wiring = {
  /** In the order of the board's pedals. */
  readonly feeds: readonly Feed[];
  /** What the fed supplies in use hang on, in the order of the supplies. */
  readonly inlets: readonly InletFeed[];
  readonly unpowered: readonly PedalId[];
  readonly exposed: readonly PedalId[];
  /** Pedals that are plugged in today, and here elsewhere, at other volts or not at all; there only when the aim is `moves`. */
  readonly moved?: readonly PedalId[];
  readonly buy: { readonly supplies: readonly Purchase<SupplyId>[]; readonly parts: readonly Purchase<PartId>[] };
  readonly score: Score;
};

/** All that is plugged into outputs: pedals, then inlets. */
export const everyFeed = ({ feeds, inlets }: Pick<Wiring, 'feeds' | 'inlets'>): readonly Feed[] => [
  ...feeds,
  ...inlets,
];

/** A high-gain pedal with the digital ones that share a ground with it, all in the order of the board. */
export type Exposure = { readonly pedal: PedalId; readonly by: readonly PedalId[] };

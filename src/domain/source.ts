import type { AcceptedVolts, Polarity, Power } from './pedal.js';
import type { Microamps, MicroampHours, Millivolts, MilliwattHours, PartId, PedalId } from './quantities.js';

/** Mains volts that are accepted, both ends included; null when not stated. */
export type MainsVolts = { readonly from: Millivolts; readonly to: Millivolts } | null;

/** By what a fed supply hangs on an output of another one. */
export type Inlet = {
  readonly power: Power;
  readonly plug: string;
  /** Null for AC. */
  readonly polarity: Polarity | null;
  readonly accepts: AcceptedVolts;
  /** What it draws, whatever hangs on the supply. */
  readonly microamps: Microamps;
  /** The current at switch-on; null when not stated. */
  readonly startup: Microamps | null;
};

/** What a supply draws its power from. */
export type Source =
  | { readonly kind: 'mains'; readonly volts: MainsVolts }
  /** The adapter that a pedal came with: on mains, and for that pedal alone, for which it is right by itself. */
  | { readonly kind: 'adapter'; readonly volts: MainsVolts }
  /** Its own charge: the supply is a power bank. */
  | { readonly kind: 'charge'; readonly milliwattHours: MilliwattHours }
  /** An output of another supply, on which it hangs by an inlet of its own: the supply is a fed one. */
  | { readonly kind: 'fed'; readonly inlet: Inlet }
  /** A set of batteries in a pedal: a source for that pedal alone. */
  | {
      readonly kind: 'battery';
      readonly pedal: PedalId;
      /** What it is bought as. */
      readonly battery: PartId;
      /** How many make a set. */
      readonly count: number;
      readonly microampHours: MicroampHours;
    };

/** What a pedal is fed by: an output of a supply, the adapter that it came with, or a battery. */
export const feedSources = ['output', 'adapter', 'battery'] as const;
export type FeedSource = (typeof feedSources)[number];

export const feedSourceOf = (source: Source | undefined): FeedSource =>
  source?.kind === 'adapter' || source?.kind === 'battery' ? source.kind : 'output';

/** What a source makes of the units that stand on it. */
export type Nature = {
  /** How many bricks one unit in use is: what aims and policies count as supplies in use. */
  readonly bricks: 0 | 1;
  /** How many mains sockets it takes. */
  readonly sockets: 0 | 1;
  /** Where the way to a pedal starts: at the plug that the output's own lead offers, or at the pedal that it belongs to. */
  readonly wayStartsAt: 'plug' | 'its pedal';
  /** Whether the inlets of fed supplies may hang on it: so nothing can feed itself in a circle. */
  readonly feedsInlets: boolean;
};

const natures: Readonly<Record<Source['kind'], Nature>> = {
  mains: { bricks: 1, sockets: 1, wayStartsAt: 'plug', feedsInlets: true },
  adapter: { bricks: 1, sockets: 1, wayStartsAt: 'its pedal', feedsInlets: false },
  charge: { bricks: 1, sockets: 0, wayStartsAt: 'plug', feedsInlets: true },
  fed: { bricks: 1, sockets: 0, wayStartsAt: 'plug', feedsInlets: false },
  battery: { bricks: 0, sockets: 0, wayStartsAt: 'its pedal', feedsInlets: false },
};

export const natureOf = ({ kind }: Source): Nature => natures[kind];

/** Whether what stands on the source belongs to one pedal, which it suits by itself, so that no figure of it is compared. */
export const isOfOnePedal = (source: Source): boolean => natureOf(source).wayStartsAt === 'its pedal';

/** Rule `mains`: a source on mains that does not state its volts is refused where the venue's are stated. */
const acceptsAt: { readonly [Kind in Source['kind']]: (source: OfKind<Kind>, venue: Millivolts) => boolean } = {
  mains: ({ volts }, venue) => isAmong(venue, volts),
  adapter: ({ volts }, venue) => isAmong(venue, volts),
  charge: () => true,
  fed: () => true,
  battery: () => true,
};

type OfKind<Kind extends Source['kind']> = Extract<Source, { readonly kind: Kind }>;

const isAmong = (venue: Millivolts, volts: MainsVolts): boolean =>
  volts !== null && volts.from <= venue && venue <= volts.to;

/** Whether a supply on the source may be used at a venue of these mains volts. */
export const acceptsVenue = (source: Source, venue: Millivolts): boolean =>
  (acceptsAt[source.kind] as (source: Source, venue: Millivolts) => boolean)(source, venue);

/** The mains volts that it accepts; null where they are not stated, or where it stands on no mains. */
export const mainsOf = (source: Source): MainsVolts => ('volts' in source ? source.volts : null);

/** Whether the policy lets it be used at all: without `runtime` no power bank is, without `batteries` no battery. */
export function isAllowed(
  { kind }: Source,
  policy: { readonly runtime: object | null; readonly batteries: object | null },
) {
  if (kind === 'charge') return policy.runtime !== null;
  return kind !== 'battery' || policy.batteries !== null;
}

/** Whether it may be used at all of them; nothing is asked of it where none are stated. */
export const acceptsVenues = (source: Source, venues: readonly Millivolts[]): boolean =>
  venues.every((venue) => acceptsVenue(source, venue));

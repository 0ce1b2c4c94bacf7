import type { Millivolts } from './quantities.js';

/** What a supply draws its power from. */
export type Source = {
  readonly kind: 'mains';
  /** The mains volts that it accepts, both ends included; null when not stated. */
  readonly volts: { readonly from: Millivolts; readonly to: Millivolts } | null;
};

/** What a source makes of the units that stand on it. */
export type Nature = {
  /** How many bricks one unit in use is: what aims and policies count as supplies in use. */
  readonly bricks: 0 | 1;
  /** How many mains sockets it takes. */
  readonly sockets: 0 | 1;
  /** Where the way to a pedal starts: at the plug that the output's own lead offers. */
  readonly wayStartsAt: 'plug';
};

const natures: Readonly<Record<Source['kind'], Nature>> = {
  mains: { bricks: 1, sockets: 1, wayStartsAt: 'plug' },
};

export const natureOf = ({ kind }: Source): Nature => natures[kind];

/** Rule `mains`: a source on mains that does not state its volts is refused where the venue's are stated. */
const acceptsAt: Readonly<Record<Source['kind'], (source: Source, venue: Millivolts) => boolean>> = {
  mains: ({ volts }, venue) => volts !== null && volts.from <= venue && venue <= volts.to,
};

/** Whether a supply on the source may be used at a venue of these mains volts. */
export const acceptsVenue = (source: Source, venue: Millivolts): boolean => acceptsAt[source.kind](source, venue);

/** Whether it may be used at all of them; nothing is asked of it where none are stated. */
export const acceptsVenues = (source: Source, venues: readonly Millivolts[]): boolean =>
  venues.every((venue) => acceptsVenue(source, venue));

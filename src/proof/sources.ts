import type { Source } from '../domain/source.js';

/** What a unit in use counts as, by what it stands on. */
export type UnitCounts = { readonly bricks: bigint; readonly sockets: bigint };

const counts: Readonly<Record<Source['kind'], UnitCounts>> = { mains: { bricks: 1n, sockets: 1n } };

export const unitCounts = ({ kind }: Source): UnitCounts => counts[kind];

/** Where the ways from a unit to pedals start: at the plugs of its outputs' own leads. */
export type WayStart = 'plug';
const starts: Readonly<Record<Source['kind'], WayStart>> = { mains: 'plug' };

export const wayStart = ({ kind }: Source): WayStart => starts[kind];

/** The rule `mains`: a supply that does not state its mains is refused where the venue's are stated. */
const mainsSuit: Readonly<Record<Source['kind'], (source: Source, venue: number) => boolean>> = {
  mains: ({ volts }, venue) => volts !== null && volts.from <= venue && venue <= volts.to,
};

/** Whether it suits every venue. */
export const suitsVenues = (source: Source, venues: readonly number[]): boolean =>
  venues.every((venue) => mainsSuit[source.kind](source, venue));

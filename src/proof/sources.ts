import type { Policy } from '../domain/board.js';
import type { MainsVolts, Source } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';

/** What a unit in use counts as, by what it stands on. */
type UnitCounts = { readonly bricks: bigint; readonly sockets: bigint };

const counts: Readonly<Record<Source['kind'], UnitCounts>> = {
  mains: { bricks: 1n, sockets: 1n },
  adapter: { bricks: 1n, sockets: 1n },
  charge: { bricks: 1n, sockets: 0n },
  fed: { bricks: 1n, sockets: 0n },
  battery: { bricks: 0n, sockets: 0n },
};

export const unitCounts = ({ kind }: Source): UnitCounts => counts[kind];

/** Where the ways from a unit to pedals start: at the plugs of its outputs' own leads, or in the pedal that it came with. */
export type WayStart = 'plug' | 'pedal';
const starts: Readonly<Record<Source['kind'], WayStart>> = {
  mains: 'plug',
  adapter: 'pedal',
  charge: 'plug',
  fed: 'plug',
  battery: 'pedal',
};

export const wayStart = ({ kind }: Source): WayStart => starts[kind];

/** The rule `mains`: a supply that does not state its mains is refused where the venue's are stated. */
function suitsVenue(source: Source, venue: number): boolean {
  switch (source.kind) {
    case 'mains':
    case 'adapter':
      return reaches(source.volts, venue);
    case 'charge':
    case 'fed':
    case 'battery':
      return true;
  }
}

const reaches = (volts: MainsVolts, venue: number): boolean =>
  volts !== null && volts.from <= venue && venue <= volts.to;

/**
 * Whether the policy says what has to be known of such a source: of a power bank and of batteries
 * how long they have to last.
 */
export const mayBeUsed = ({ kind }: Source, { runtime, batteries }: Policy): boolean =>
  (kind !== 'charge' || runtime !== null) && (kind !== 'battery' || batteries !== null);

/** Whether it suits every venue. */
export const suitsVenues = (source: Source, venues: readonly number[]): boolean =>
  venues.every((venue) => suitsVenue(source, venue));

/** What tells one sort of inlets from another; null for a supply without an inlet. */
export function inletKey({ source }: Supply): string | null {
  if (source.kind !== 'fed') return null;
  const { power, plug, polarity, accepts, microamps, startup } = source.inlet;
  return JSON.stringify({ power, plug, polarity, accepts, microamps, startup });
}

/** Whether the inlet of a supply may hang on what stands on this. */
export const feedsInlets = ({ kind }: Source): boolean => kind === 'mains' || kind === 'charge';

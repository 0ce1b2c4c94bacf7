/** What a unit counts as by what it stands on, for brute force alone. */
import type { Policy } from '../../src/domain/board.js';
import type { Source } from '../../src/domain/source.js';
import type { Supply } from '../../src/domain/supply.js';

const kinds: Readonly<Record<Source['kind'], { brick: boolean; socket: boolean }>> = {
  mains: { brick: true, socket: true },
  adapter: { brick: true, socket: true },
  charge: { brick: true, socket: false },
  fed: { brick: true, socket: false },
  battery: { brick: false, socket: false },
};

function accepts(source: Source, venue: number): boolean {
  if (source.kind === 'charge' || source.kind === 'fed' || source.kind === 'battery') return true;
  return source.volts !== null && source.volts.from <= venue && venue <= source.volts.to;
}

/** Whether a supply may be used: at every venue, and a power bank where it is said how long it has to last. */
export const mayBeUsed = ({ source }: Supply, { mains, runtime, batteries }: Policy): boolean =>
  mains.every((venue) => accepts(source, venue)) &&
  (source.kind !== 'charge' || runtime !== null) &&
  (source.kind !== 'battery' || batteries !== null);

/** Whether the inlets of fed supplies may hang on it. */
export const mayFeedInlets = ({ kind }: Source): boolean => kind === 'mains' || kind === 'charge';

/** How many of the supplies, one for each unit, are supplies in use. */
export const bricksAmong = (units: readonly Supply[]): number =>
  units.filter(({ source }) => kinds[source.kind].brick).length;

/** How many of them take a mains socket. */
export const socketsAmong = (units: readonly Supply[]): number =>
  units.filter(({ source }) => kinds[source.kind].socket).length;

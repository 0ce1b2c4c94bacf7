/** What a unit counts as by what it stands on, for brute force alone. */
import type { Policy } from '../../src/domain/board.js';
import type { Source } from '../../src/domain/source.js';
import type { Supply } from '../../src/domain/supply.js';

const kinds: Readonly<Record<Source['kind'], { brick: boolean; socket: boolean }>> = {
  mains: { brick: true, socket: true },
  adapter: { brick: true, socket: true },
};

function accepts({ volts }: Source, venue: number): boolean {
  return volts !== null && volts.from <= venue && venue <= volts.to;
}

export const acceptsMains = ({ source }: Supply, { mains }: Policy): boolean =>
  mains.every((venue) => accepts(source, venue));

/** How many of the supplies, one for each unit, are supplies in use. */
export const bricksAmong = (units: readonly Supply[]): number =>
  units.filter(({ source }) => kinds[source.kind].brick).length;

/** How many of them take a mains socket. */
export const socketsAmong = (units: readonly Supply[]): number =>
  units.filter(({ source }) => kinds[source.kind].socket).length;

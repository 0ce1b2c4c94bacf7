/** What the inlets of fed supplies hang on. */
import type { Policy } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import { nothingMoreStated, type Pedal } from '../../src/domain/pedal.js';
import { pedalId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { hookupsOf, type Hookup } from './brute-force-hookups.js';
import type { Unit } from './brute-force-unit.js';

/** A fed unit in use, and its number among those of its supply. */
export type UnfedUnit = { readonly supply: Supply; readonly number: number };

/** The first fed unit in use whose inlet hangs on nothing yet; null when there is none. */
export function firstUnfed(units: readonly Unit[]): UnfedUnit | null {
  const fed = units.flatMap(({ hookups }) => hookups.flatMap(({ inletOf }) => inletOf ?? []));
  for (const [index, { supply }] of units.entries()) {
    const number = units.slice(0, index + 1).filter((other) => other.supply === supply).length;
    const isFed = fed.some((inlet) => inlet.supply === supply.id && inlet.unit === number);
    if (supply.source.kind === 'fed' && !isFed) return { supply, number };
  }
  return null;
}

/** Every way to hang the inlet on one output of a supply: as a pedal would that stands alone, on no ground with another one. */
export function inletHookupsOf(
  fed: Supply,
  number: number,
  feeder: Supply,
  parts: readonly Part[],
  policy: Policy,
): readonly Hookup[] {
  const like = inletLike(fed, number);
  if (like === null) return [];
  return hookupsOf([like], feeder, parts, policy)
    .filter(({ join }) => join === null)
    .map((hookup) => ({ ...hookup, inletOf: { supply: fed.id, unit: number } }));
}

/** The inlet as a pedal; null for a supply that has none. */
export function inletLike({ id, name, source }: Supply, number: number): Pedal | null {
  if (source.kind !== 'fed') return null;
  const { power, plug, polarity, accepts, microamps, startup } = source.inlet;
  return {
    ...nothingMoreStated,
    id: pedalId(`inlet of ${id} ${number}`),
    name: `${name} inlet`,
    power,
    polarity,
    inlet: plug,
    ground: 'unknown',
    accepts,
    draw: { kind: 'flat', microamps },
    startup,
  };
}

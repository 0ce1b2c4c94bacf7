import { gathered } from '../../solver/gathered.js';
import type { Board, WiredInlet } from '../domain/board.js';
import { inletId, inletPedal, isFed, type FedSupply } from '../domain/inlet.js';
import type { Pedal } from '../domain/pedal.js';
import { millivolts, type PedalId, type SupplyId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import { inletSortOf, type InletSort } from '../loadout/inlet-sort.js';
import type { Berth, Today } from '../loadout/today.js';

/** A unit in use, with its number. */
export type NumberedUnit = { readonly supply: Supply; readonly number: number };

/** Which unit's inlet it is that hangs on a unit; each is given away once. */
export type InletNamer = (sort: InletSort, on: NumberedUnit) => Pedal;

/**
 * Gives the inlets of a sort their names, but those that must stay where they are: first that of a unit which hangs on the same
 * unit today, else that of the next one which no unit in use waits for.
 */
export function inletNamer(
  units: readonly NumberedUnit[],
  { inlets }: Pick<Board, 'inlets'>,
  { pinned }: Pick<Today, 'pinned'>,
): InletNamer {
  const waiting = gathered(units, ({ supply, number }): Waiting[] =>
    isFed(supply) && !pinned.has(inletId({ supply: supply.id, unit: number })) ? [{ supply, number }] : [],
  );
  const homeOf = ({ supply, number }: Waiting): WiredInlet | undefined =>
    inlets.find(({ inletOf }) => inletOf.supply === supply.id && inletOf.unit === number);
  return (sort, on) => {
    const alike = waiting.filter(({ supply }) => inletSortOf(supply) === sort);
    const isHome = (unit: Waiting): boolean => isOn(homeOf(unit), on.supply.id, on.number);
    const isElsewhere = (unit: Waiting): boolean =>
      units.some(({ supply, number }) => isOn(homeOf(unit), supply.id, number));
    const next = alike.find(isHome) ?? alike.find((unit) => !isElsewhere(unit)) ?? alike[0];
    if (next === undefined) throw new RangeError('more inlets are fed than there are units in use');
    waiting.splice(waiting.indexOf(next), 1);
    return inletPedal(next.supply, next.number);
  };
}

type Waiting = { readonly supply: FedSupply; readonly number: number };

const isOn = (home: WiredInlet | undefined, supply: SupplyId, unit: number): boolean =>
  home?.supply === supply && home.unit === unit;

/** Volts that nothing is set to: whose berth has these keeps nothing, and is given today's output where it is free. */
const noVolts = millivolts(0);

/** Where an inlet is plugged today, as far as it is to have that output again where no pedal wants it. */
export function inletBerth(id: PedalId, { inlets }: Pick<Board, 'inlets'>): Berth | null {
  const wired = inlets.find(({ pedal }) => pedal === id);
  return wired === undefined ? null : { ...wired, millivolts: noVolts };
}

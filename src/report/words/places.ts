import type { Place } from '../../domain/plan.js';
import { isFedByOwn, unitName, type Inventory, type SupplyUnit } from './inventory.js';
import { outputsText } from './words.js';

/** "Quay 6 output 5", or "Quay 6" for a whole unit; the unit's number stands with it where it could be mixed up with another. */
export const placeText = (inventory: Inventory, units: readonly SupplyUnit[], place: Place, dash = '-'): string =>
  place.outputs.length === 0 || isFedByOwn(inventory, place)
    ? unitName(inventory, units, place)
    : onUnit(inventory, units, place, outputsText(place.outputs, dash));

/** What a unit has, behind its name: "Quay 6 common ground", "Jetty 6, unit 2, common ground". */
export function onUnit(inventory: Inventory, units: readonly SupplyUnit[], unit: SupplyUnit, what: string): string {
  const name = unitName(inventory, units, unit);
  return `${name}${name === inventory.supplyName(unit.supply) ? '' : ','} ${what}`;
}

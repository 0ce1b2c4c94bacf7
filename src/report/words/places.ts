import type { Place } from '../../domain/plan.js';
import { isFedByOwn, unitName, type Inventory, type SupplyUnit } from './inventory.js';
import { outputsText } from './words.js';

/** "Quay 6 output 5", or "Quay 6" for a whole unit; the unit's number stands with it where it could be mixed up with another. */
export function placeText(inventory: Inventory, units: readonly SupplyUnit[], place: Place, dash = '-'): string {
  const unit = unitName(inventory, units, place);
  return place.outputs.length === 0 || isFedByOwn(inventory, place)
    ? unit.replace(/,$/, '')
    : `${unit} ${outputsText(place.outputs, dash)}`;
}

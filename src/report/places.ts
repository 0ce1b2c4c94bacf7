import type { Feed, Place } from '../domain/plan.js';
import { unitName, type Inventory } from './inventory.js';
import { outputsText } from './words.js';

/** "Quay 6 output 5", or "Quay 6" for a whole unit; the unit's number stands with it where units could be mixed up. */
export function placeText(inventory: Inventory, feeds: readonly Feed[], place: Place, dash = '-'): string {
  const unit = unitName(inventory, feeds, place);
  return place.outputs.length === 0 ? unit.replace(/,$/, '') : `${unit} ${outputsText(place.outputs, dash)}`;
}

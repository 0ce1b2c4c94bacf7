import type { PartId } from '../../domain/quantities.js';
import type { Inventory } from '../words/inventory.js';
import { safeText } from '../words/safe-text.js';
import type { DrawnPart } from './drawn-board.js';

/** A lead with what it changes. */
export function drawnPart(inventory: Inventory, id: PartId): DrawnPart {
  const { fits, gives, reverses } = inventory.part(id);
  return {
    id,
    isBattery: false,
    name: inventory.partName(id),
    notes: fits === gives ? [] : [`to ${safeText(gives)}`],
    hazards: reverses ? ['reverses'] : [],
  };
}

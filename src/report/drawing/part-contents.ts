import type { PartId } from '../../domain/quantities.js';
import { connectorText } from '../words/connector-words.js';
import type { Inventory } from '../words/inventory.js';
import type { DrawnPart } from './drawn-board.js';

/** A lead with what it changes. */
export function drawnPart(inventory: Inventory, id: PartId): DrawnPart {
  const { fits, gives, reverses } = inventory.part(id);
  return {
    id,
    isBattery: false,
    name: inventory.partName(id),
    notes: fits === gives ? [] : [`to ${connectorText(gives)}`],
    hazards: reverses ? ['reverses'] : [],
  };
}

import type { Feed, ReadFeed } from '../../domain/plan.js';
import type { Inventory } from './inventory.js';

/** The pedal's name; of one whose label nobody has read, with what the label must say for this way to be the right one. */
export const readName = (inventory: Inventory, { pedal, readings }: Feed, { polarity }: ReadFeed): string =>
  readings === undefined
    ? inventory.pedalName(pedal)
    : `${inventory.pedalName(pedal)}, if its label says ${polarity ?? 'AC'}`;

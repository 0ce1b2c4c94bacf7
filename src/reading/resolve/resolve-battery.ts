import type { Part } from '../../domain/part.js';
import { microampHours, partId, type PartId } from '../../domain/quantities.js';
import type { RawBattery } from '../schema/schema-battery.js';
import type { Entry } from './entry.js';
import { resolvePrice, type Counter, type Found } from './resolve-for-sale.js';
import { noteId, resolveId } from './resolve-id.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';

/** A battery of a catalogue or of the gear: a part, whose id stands for the plugs that it has not. */
export function resolveBattery(entry: Entry<RawBattery>, counter: Counter): Found<PartId, Part> {
  const { name, type, volts, milliampHours, stock } = entry.fields;
  const id = resolveId(entry, counter.report);
  if (id !== null) noteId('parts and batteries', id, entry, counter.seen, counter.report);
  const price = resolvePrice(entry, counter);
  const found = id === null ? null : partId(id);
  if (found === null || price === 'reported' || name === undefined) return { id: found, thing: null };
  if (type === undefined || volts === undefined || milliampHours === undefined) return { id: found, thing: null };
  const held = microampHours(microampsOf(milliampHours));
  return {
    id: found,
    thing: {
      id: found,
      name,
      price,
      stock: counter.forSale ? (stock ?? null) : 0,
      fits: found,
      gives: found,
      reverses: false,
      role: { kind: 'battery', type, millivolts: millivoltsOf(volts), microampHours: held },
    },
  };
}

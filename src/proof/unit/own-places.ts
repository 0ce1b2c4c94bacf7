import type { Supply } from '../../domain/supply.js';
import { piecesPaid } from '../batteries.js';
import { countsOf, type ProofBench, type RawPlace } from './shape.js';

/** The pedal that a supply belongs to, on its one output: without a lead, but with the batteries that are paid for. */
export function ownPlaces(supply: Supply, { classes, kinds, policy, routes }: ProofBench): readonly RawPlace[] {
  const { id, banks, source } = supply;
  const volts = banks[0]?.settings[0]?.millivolts;
  if (volts === undefined) return [];
  return classes.flatMap(({ pedal }, index) => {
    const seats = [{ bank: 0, setting: 0 }];
    const place = { pedal: index, seats, volts, join: null, counts: countsOf(pedal, volts), taken: [] };
    if (source.kind !== 'battery') return pedal.adapter?.supply === id ? [{ ...place, route: routes.nothing }] : [];
    const pieces = piecesPaid(pedal, supply, policy);
    const kind = kinds.findIndex(({ parts }) => parts.some((part) => part.id === source.battery));
    if (pieces === null || kind < 0 || kinds[kind]?.offers.length === 0) return [];
    return [{ ...place, route: routes.of(Array.from({ length: pieces }, () => kind)) }];
  });
}

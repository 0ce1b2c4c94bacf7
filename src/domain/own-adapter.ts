import { drawAt } from './load.js';
import { lowestMillivolts, type Pedal } from './pedal.js';
import { supplyId, type Millivolts, type PedalId, type SupplyId } from './quantities.js';
import type { MainsVolts } from './source.js';
import type { Supply } from './supply.js';
import { singleOutputFor } from './single-output.js';

/** The id of the adapter that a pedal came with. */
export const ownAdapterId = (pedal: PedalId): SupplyId => supplyId(`own-${pedal}`);

/**
 * The adapter that a pedal came with, as a supply that is owned and not for sale: one output that gives what this pedal
 * takes, whatever that is. No rule compares its figures, for what it is right for is known already.
 */
export function ownAdapterOf(pedal: Pedal, volts: MainsVolts): Supply {
  const given = (pedal.prefers ?? lowestMillivolts(pedal.accepts)) as Millivolts;
  return singleOutputFor(pedal, {
    id: ownAdapterId(pedal.id),
    name: `Own adapter of ${pedal.name}`,
    source: { kind: 'adapter', volts },
    setting: { millivolts: given, rating: drawAt(pedal, given), openCircuit: null },
    otherwise: 'centre-negative',
  });
}

/** Whether a supply belongs to the pedal alone: the adapter that it came with, or a set of batteries in it. */
export function isOwnSupplyOf({ id, source }: Supply, pedal: Pedal): boolean {
  if (source.kind === 'battery') return source.pedal === pedal.id;
  return source.kind === 'adapter' && pedal.adapter?.supply === id;
}

/** Whether only the pedal's own adapter may feed it. */
export const takesNothingElse = ({ adapter }: Pedal): boolean => adapter?.only === true;

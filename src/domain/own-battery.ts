import { loadAt, type Exact } from './load.js';
import type { Part } from './part.js';
import type { Pedal } from './pedal.js';
import {
  microamps,
  millivolts,
  supplyId,
  type Factor,
  type PartId,
  type PedalId,
  type SupplyId,
} from './quantities.js';
import type { Source } from './source.js';
import type { Supply } from './supply.js';
import { singleOutputFor } from './single-output.js';

/** The id of a set of batteries in a pedal. */
export const ownBatteryId = (pedal: PedalId, battery: PartId): SupplyId => supplyId(`battery-${pedal}-${battery}`);

export type BatterySource = Extract<Source, { readonly kind: 'battery' }>;

/** A set of these batteries in the pedal, as a supply that is not bought by itself; null for what does not go in there. */
export function ownBatteryOf(pedal: Pedal, { id, name, role }: Part): Supply | null {
  const { battery } = pedal;
  if (battery === null || role.kind !== 'battery' || role.type !== battery.type) return null;
  const { count } = battery;
  return singleOutputFor(pedal, {
    id: ownBatteryId(pedal.id, id),
    name: `${count} × ${name} in ${pedal.name}`,
    source: { kind: 'battery', pedal: pedal.id, battery: id, count, microampHours: role.microampHours },
    setting: { millivolts: millivolts(count * role.millivolts), rating: microamps(0), openCircuit: null },
    otherwise: 'centre-negative',
  });
}

/** How long a set lasts in the pedal, exactly, in hours: mAh ÷ load. What draws nothing makes it last for ever: null. */
export function hoursOf(pedal: Pedal, { banks, source }: Supply, guess: Factor): Exact | null {
  const at = banks[0]?.settings[0]?.millivolts;
  if (at === undefined || source.kind !== 'battery') return null;
  const load = loadAt(pedal, at, guess);
  return load.numerator === 0n
    ? null
    : { numerator: BigInt(source.microampHours) * load.denominator, denominator: load.numerator };
}

import type { Supply } from '../../domain/supply.js';
import { countsOf, type ProofBench, type RawPlace } from './shape.js';

/** The pedal that a supply came with, on its one output: right for it whatever is stated, without a lead. */
export function ownPlaces({ id, banks }: Supply, { classes, routes }: ProofBench): readonly RawPlace[] {
  const volts = banks[0]?.settings[0]?.millivolts;
  if (volts === undefined) return [];
  return classes.flatMap(({ pedal }, index) => {
    if (pedal.adapter?.supply !== id) return [];
    const seats = [{ bank: 0, setting: 0 }];
    return [
      { pedal: index, seats, volts, route: routes.nothing, join: null, counts: countsOf(pedal, volts), taken: [] },
    ];
  });
}

import type { Millivolts } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import type { Berth } from './today.js';
import type { OutputSetting } from './uses.js';

/** The bank of each of a berth's outputs. */
export const banksOf = (berth: Berth, supply: Supply): readonly number[] =>
  berth.outputs.map((output) =>
    supply.banks.findIndex(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs),
  );

/** Whether outputs of these kinds, for a pedal that gets so many volts, can be those of the berth. */
export function matchesBerth(
  berth: Berth,
  supply: Supply,
  outputs: readonly OutputSetting[],
  millivolts: Millivolts,
): boolean {
  if (berth.supply !== supply.id || berth.millivolts !== millivolts || berth.outputs.length !== outputs.length)
    return false;
  const banks = [...banksOf(berth, supply)].sort((a, b) => a - b);
  const others = outputs.map(({ bank }) => bank).sort((a, b) => a - b);
  return banks.every((bank, index) => bank === others[index]);
}

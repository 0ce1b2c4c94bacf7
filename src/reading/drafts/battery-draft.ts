import type { LabelBattery } from '../typed/battery-line.js';
import { batteryTypeSaid } from '../typed/source-words.js';
import type { DraftEntry } from './entry.js';

/** Batteries that are owned, as an entry of the gear. */
export function batteryEntry({ type, volts, milliampHours, isUsual }: LabelBattery): DraftEntry {
  const name = `${batteryTypeSaid(type)} ${milliampHours} mAh`;
  return {
    name,
    fields: [
      { key: 'name', value: name },
      { key: 'type', value: type },
      { key: 'volts', value: volts },
      {
        key: 'milliampHours',
        value: milliampHours,
        ...(isUsual && { remark: 'as such batteries usually hold: an estimate' }),
      },
    ],
    missing: [],
  };
}

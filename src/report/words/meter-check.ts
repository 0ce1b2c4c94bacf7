import { feedMillivolts, type Feed, type ReadFeed } from '../../domain/plan.js';
import { millivolts, type Millivolts } from '../../domain/quantities.js';
import { bankOf, firstBankOf, type Inventory } from './inventory.js';
import { settingOf } from './usage.js';
import { voltsText } from './words.js';

/** What a meter must show at a plug before its pedal goes on. */
export type MeterCheck = {
  readonly range: 'DC volts' | 'AC volts';
  /** Where each probe goes; null for AC, where it is all the same. */
  readonly probes: { readonly black: PlugPart; readonly red: PlugPart } | null;
  /** "+9 V", or for AC "9 V". */
  readonly reads: string;
  /** What the reading may do with nothing on the plug; null where it stays as it is. */
  readonly note: string | null;
};

type PlugPart = 'centre' | 'sleeve';

/** Minus goes to the black probe, so that a right plug never reads below zero. */
export function meterCheck(inventory: Inventory, feed: ReadFeed): MeterCheck {
  const volts = feedMillivolts(feed);
  const open = openVolts(inventory, feed);
  if (firstBankOf(inventory.supply(feed.supply), feed).power === 'AC') {
    const note =
      open === null
        ? 'it may read somewhat more with no pedal on it'
        : `up to ${voltsText(open)} with no pedal on it: this output is unregulated`;
    return { range: 'AC volts', probes: null, reads: voltsText(volts), note };
  }
  return {
    range: 'DC volts',
    probes:
      feed.polarity === 'centre-positive' ? { black: 'sleeve', red: 'centre' } : { black: 'centre', red: 'sleeve' },
    reads: `+${voltsText(open ?? volts)}`,
    note: open === null ? null : `it falls to ${voltsText(volts)} under full load: this output is unregulated`,
  };
}

/** The volts without a load; null when every output of the feed is regulated. */
function openVolts(inventory: Inventory, feed: Feed): Millivolts | null {
  const settings = feed.outputs.map((output, at) =>
    settingOf(bankOf(inventory.supply(feed.supply), output), feed.settings[at]),
  );
  if (settings.every(({ openCircuit }) => openCircuit === null)) return null;
  const open = settings.map(({ openCircuit, millivolts: rated }) => openCircuit ?? rated);
  return millivolts(feed.join?.mode === 'series' ? open.reduce((sum, one) => sum + one, 0) : Math.max(...open));
}

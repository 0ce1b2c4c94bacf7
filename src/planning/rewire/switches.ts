import { bankAt, type Kit, outputsOf } from '../../domain/kit.js';
import type { PolarityOrUnknown } from '../../domain/pedal.js';
import { leadsOf, readFeeds, type Feed, type Place } from '../../domain/plan.js';
import type { Millivolts } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import { isSameUnit } from './places.js';
import { behind } from '../today/wired-polarities.js';

/** A switch that sets the volts of an output, or of all outputs of a bank that is switched together. */
export type VoltsSwitch = {
  readonly place: Place;
  readonly millivolts: Millivolts;
  /** How it stands today; null where nothing that is plugged in tells. */
  readonly was: Millivolts | null;
};

/** The polarity switch of one output; `unknown` is as the label of its pedal turns out to say. */
export type PolaritySwitch = { readonly place: Place; readonly polarity: PolarityOrUnknown };

/** The switches of volts that a plan needs to stand otherwise than they are known to stand today. */
export function voltsSwitches(kit: Kit, today: readonly Feed[], plan: readonly Feed[]): readonly VoltsSwitch[] {
  const found = new Map<string, VoltsSwitch>();
  for (const feed of plan) {
    for (const [at, output] of feed.outputs.entries()) {
      const bank = bankAt(kit, feed.supply, output);
      const millivolts = feed.settings[at];
      if (bank === undefined || millivolts === undefined || bank.settings.length < 2) continue;
      const place = { supply: feed.supply, unit: feed.unit, outputs: underOneSwitch(bank, output) };
      const was = voltsToday(place, today);
      if (was !== millivolts) found.set(JSON.stringify(place), { place, millivolts, was });
    }
  }
  return [...found.values()];
}

/** The polarity switches of the feeds' outputs, and how they must stand. */
export function polaritySwitches(kit: Kit, feeds: readonly Feed[]): readonly PolaritySwitch[] {
  const found = new Map<string, PolaritySwitch>();
  for (const feed of feeds) {
    const polarity = positionFor(feed, kit);
    if (polarity === null) continue;
    for (const output of feed.outputs.filter((each) => bankAt(kit, feed.supply, each)?.polarity === 'either')) {
      const place = { supply: feed.supply, unit: feed.unit, outputs: [output] };
      found.set(JSON.stringify(place), { place, polarity });
    }
  }
  return [...found.values()];
}

/** How a switch at the beginning of the feed must stand; null for AC. */
function positionFor(feed: Feed, kit: Kit): PolarityOrUnknown | null {
  const [position = null, other] = new Set(readFeeds(feed).map((read) => behind(read.polarity, leadsOf(read), kit)));
  return other === undefined ? position : 'unknown';
}

const underOneSwitch = (bank: Bank, output: number): readonly number[] =>
  bank.switching === 'each' ? [output] : outputsOf(bank);

/** What the feeds on some outputs say of their volts, where they agree. */
function voltsToday(place: Place, today: readonly Feed[]): Millivolts | null {
  const stated = today
    .filter((feed) => isSameUnit(feed, place))
    .flatMap(({ outputs, settings }) =>
      outputs.flatMap((output, at) => (place.outputs.includes(output) ? (settings[at] ?? []) : [])),
    );
  const [first, ...others] = new Set(stated);
  return first !== undefined && others.length === 0 ? first : null;
}

import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { connectorText } from './connector-words.js';
import { bankOf, batteriesOf, firstBankOf, isFedByOwn } from './inventory.js';
import { isOwnedUnit, type Lead, type LeadEnd, type UnitHookup } from './hookup.js';
import { wayText } from './route.js';
import type { Speech } from './speech.js';
import { settingTexts } from './free-outputs.js';
import { switchPosition } from './usage.js';
import { countText, meterText, peakText, percentOf, polarityWord, voltsText, type Meter } from './words.js';

/** How one pedal is fed, in words that are ready for any table. */
export type FeedRow = {
  readonly mark: string;
  readonly feed: Feed;
  readonly pedal: string;
  readonly unit: string;
  /** Null for batteries. */
  readonly owned: boolean | null;
  /** "5", or "5+6" for a join; empty where it is fed by what is its own. */
  readonly outputs: string;
  /** What the output is set to: "9 V", or "9 V + 9 V" for a series join. */
  readonly setting: string;
  /** Whether there is a switch to set to these volts. */
  readonly switched: boolean;
  /** Where the polarity switch must stand; null when there is none. */
  readonly polaritySwitch: string | null;
  /** What reaches the pedal: "9 V DC"; "its own" from the adapter that it came with. */
  readonly volts: string;
  /** Null for AC. */
  readonly polarity: string | null;
  /** Empty of a battery, which has none. */
  readonly plug: string;
  /** All leads in order: "own lead → Reversing lead". */
  readonly way: string;
  readonly ground: 'isolated' | 'common ground';
  /** "216 of 400 mA, 54 %"; on a chain with the number of pedals that it counts; empty where nothing is compared. */
  readonly load: string;
  readonly meter: Meter | null;
  /** "up to 350 of 400 mA at switch-on", where that is more than the load; else null. */
  readonly peak: string | null;
};

/** One row for each fed pedal, in the order of hooking up. */
export const feedRows = (speech: Speech, hookup: readonly UnitHookup[]): readonly FeedRow[] =>
  hookup.flatMap((unit) => unit.leads.flatMap((lead) => lead.ends.map((end) => feedRow(speech, unit, lead, end))));

const wordOf = (polarity: Feed['polarity']): string | null => (polarity === null ? null : polarityWord(polarity));

function feedRow(speech: Speech, { unit, name }: UnitHookup, { use }: Lead, { mark, feed }: LeadEnd): FeedRow {
  const { inventory } = speech;
  const bank = firstBankOf(unit.supply, feed);
  const isOwn = isFedByOwn(inventory, feed);
  const isBattery = batteriesOf(inventory, feed) !== null;
  const shared = use.feeds.length > 1 ? ` for ${countText(use.feeds.length, 'pedal')}` : '';
  return {
    mark,
    feed,
    pedal: inventory.pedalName(feed.pedal),
    unit: name,
    owned: isOwnedUnit(unit),
    outputs: isOwn ? '' : feed.outputs.join('+'),
    setting: settingTexts(use).join(' '),
    switched: feed.outputs.some((output) => bankOf(unit.supply, output).settings.length > 1),
    polaritySwitch: wordOf(switchPosition(inventory, feed)),
    volts: isOwn && !isBattery ? 'its own' : `${voltsText(feedMillivolts(feed))} ${bank.power}`,
    polarity: isOwn ? null : wordOf(feed.polarity),
    plug: isBattery ? '' : connectorText(inventory.pedal(feed.pedal).inlet),
    way: wayText(speech, feed),
    ground: bank.isolated ? 'isolated' : 'common ground',
    load: use.meter === null ? '' : `${meterText(use.meter)}, ${percentOf(use.meter)} %${shared}`,
    meter: use.meter,
    peak: use.peak === null ? null : peakText(use.peak),
  };
}

import type { BatterySource } from '../../domain/own-battery.js';
import type { Pedal } from '../../domain/pedal.js';
import { everyFeed, feedMillivolts, readFeeds, type Feed } from '../../domain/plan.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { PlanHandout } from '../words/handout.js';
import { feedHazards } from '../words/hazards.js';
import { batteriesOf, firstBankOf, isFedByOwn, type Inventory } from '../words/inventory.js';
import { voltsText } from '../words/words.js';
import type { DrawnPart, DrawnPedal } from './drawn-board.js';
import { drawnPart } from './part-contents.js';

/** The pedals in the order of the board, with what each gets, then the inlets of supplies that hang on others. */
export function drawnPedals({ speech, wiring }: PlanHandout): readonly DrawnPedal[] {
  const { board, inventory } = speech;
  const feeds = new Map(everyFeed(wiring).map((feed) => [feed.pedal, feed]));
  const inlets = wiring.inlets.map(({ pedal }) => inventory.pedal(pedal));
  return [...board.pedals, ...inlets].flatMap((pedal): readonly DrawnPedal[] => {
    const feed = feeds.get(pedal.id);
    const common = { id: pedal.id, name: inventory.pedalName(pedal.id) };
    if (feed !== undefined)
      return [
        {
          ...common,
          state: pedal.kept === null ? 'plugged' : 'kept',
          ...getsTexts(inventory, pedal, feed),
          polarity: feed.polarity === 'unknown' || isFedByOwn(inventory, feed) ? null : feed.polarity,
          traits: traitsOf(pedal, feed, isFedByOwn(inventory, feed)),
          isExposed: wiring.exposed.includes(pedal.id),
          hazards: feedHazards(speech, wiring, feed),
          parts: partsOf(inventory, feed),
        },
      ];
    // What the plan does not speak of is not drawn.
    if (!wiring.unpowered.includes(pedal.id)) return [];
    return [{ ...common, ...withoutPower, power: pedal.power }];
  });
}

const withoutPower = {
  state: 'off',
  volts: null,
  draw: null,
  polarity: null,
  traits: [],
  isExposed: false,
  hazards: [],
  parts: [],
} as const;

function getsTexts(inventory: Inventory, pedal: Pedal, feed: Feed): Pick<DrawnPedal, 'volts' | 'power' | 'draw'> {
  const at = feedMillivolts(feed);
  const drawn = pedal.draw.kind === 'flat' ? pedal.draw.microamps : pedal.draw.microamps.get(at);
  const about = pedal.figure === 'guess' ? 'about ' : '';
  const supply = inventory.supply(feed.supply);
  const isOwn = isFedByOwn(inventory, feed);
  return {
    volts: isOwn ? ownWord(supply) : voltsText(at),
    power: isOwn ? null : firstBankOf(supply, feed).power,
    draw:
      drawn === undefined || (isOwn && pedal.adapter?.only === true)
        ? null
        : `${about}${decimalOfThousandths(drawn)} mA`,
  };
}

const ownWord = ({ source }: Supply): string => (source.kind === 'battery' ? 'its own battery' : 'its own adapter');

/** What it came with is right for it, whatever is not known. */
const traitsOf = (
  { digital, highGain, ground }: Pedal,
  { polarity, inletOf }: Feed,
  isOwn: boolean,
): readonly string[] => [
  ...(polarity === 'unknown' && !isOwn ? ['read its label'] : []),
  ...(ground === 'unknown' && !isOwn && inletOf === undefined ? ['ground not known'] : []),
  ...(inletOf === undefined ? [] : ['inlet of a supply']),
  ...(digital ? ['digital'] : []),
  ...(highGain ? ['high gain'] : []),
];

function partsOf(inventory: Inventory, feed: Feed): readonly DrawnPart[] {
  const batteries = batteriesOf(inventory, feed);
  if (batteries !== null) return [drawnBatteries(inventory, batteries)];
  const own = readFeeds(feed).flatMap((read) =>
    read.adapters.map((id) => {
      const part = drawnPart(inventory, id);
      return feed.readings === undefined
        ? part
        : { ...part, notes: [...part.notes, `if labelled ${read.polarity ?? 'AC'}`] };
    }),
  );
  if (feed.join === null) return own;
  const join = drawnPart(inventory, feed.join.part);
  const together = feed.join.mode === 'series' ? 'volts add to' : 'milliamps add at';
  return [{ ...join, notes: [`${together} ${voltsText(feedMillivolts(feed))}`, ...join.notes] }, ...own];
}

/** A set of batteries. */
const drawnBatteries = (inventory: Inventory, batteries: BatterySource): DrawnPart => ({
  id: batteries.battery,
  isBattery: true,
  name: inventory.batteriesName(batteries),
  notes: [],
  hazards: [],
});

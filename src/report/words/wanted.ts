import { groupBy } from '../../domain/group-by.js';
import type { Part } from '../../domain/part.js';
import { takesNothingElse } from '../../domain/own-adapter.js';
import { isInletId } from '../../domain/inlet.js';
import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { decimalOfThousandths, factorText, type MilliwattHours } from '../../domain/quantities.js';
import type { WantedOutputs } from '../../planning/wanted/found-outputs.js';
import type { Wanted, WantedBatteries, WantedLead } from '../../planning/wanted/wanted.js';
import { batteryTypeText } from './battery-words.js';
import { connectorText } from './connector-words.js';
import { lastingText } from './explain-ways.js';
import { ownedUnitsOf } from './inventory.js';
import { reserveAlone } from './load-legend.js';
import { placeText } from './places.js';
import { pedalCounts } from './pedal-counts.js';
import { describedOnlyTexts } from './described-only.js';
import { ownText, unownedPassage, type Passage, type PassageEntry } from './reasons.js';
import type { Remark } from './remark.js';
import { cautionRemarks, confirmRemarks, groundRemarks } from './remarks.js';
import { wayText } from './route.js';
import type { Speech } from './speech.js';
import { changesPassages } from './wanted-changes.js';
import { countText, listText, percentText, voltsText } from './words.js';

/** What to look for, and what becomes of every pedal then. */
export function wantedLead(speech: Speech, wanted: Wanted): string {
  const { outputs, leads, batteries, feeds } = wanted;
  const pieces = batteries.reduce((sum, battery) => sum + battery.units, 0);
  const units = leads.reduce((sum, lead) => sum + lead.units, 0);
  const things = [
    ...(outputs.length === 0
      ? []
      : [
          `${countText(countOutputs(wanted), 'isolated output')} with ${decimalOfThousandths(totalRating(wanted))} mA in all${wanted.charge === null ? '' : ', of a power bank'}`,
        ]),
    ...(pieces === 0 ? [] : [countText(pieces, 'battery', 'batteries')]),
    ...(units === 0 ? [] : [countText(units, 'lead')]),
  ];
  const owned = fedByOwned(wanted).length;
  const beside = owned === 0 ? [] : [`what you own (${owned} of them)`];
  const from = [...beside, ...(outputs.length + batteries.length === 0 ? [] : ['what to look for'])];
  return `Look for ${listText(things)}. ${pedalCounts(speech, feeds, listText(from))}.`;
}

/** The feeds from what is owned already. */
const fedByOwned = ({ installed, batteries }: Wanted): readonly Feed[] =>
  installed.feeds.filter(({ pedal }) => !batteries.some((found) => found.pedal === pedal));

/** What has been proven of it, or that nothing has. */
export function wantedStanding(wanted: Wanted): string {
  if (!wanted.isProven) {
    const fewer =
      wanted.batteries.length > 0 ? 'batteries' : wanted.outputs.length === 0 ? 'leads' : 'outputs or milliamps';
    return `Best found, not proven: the search stopped early. With this list every pedal has power; perhaps fewer ${fewer} do.`;
  }
  if (wanted.batteries.length > 0)
    return 'Proven: with no mains socket and no power bank for them, no fewer batteries do, of those milliamp-hours.';
  if (wanted.outputs.length === 0) return 'Proven: what you own feeds every pedal then, and with no fewer leads.';
  const beside = wanted.installed.feeds.length === 0 ? '' : ' beside what you own';
  const hanging = wanted.outputs.some(({ pedals }) => pedals.some(isInletId)) ? 'a pedal or an inlet' : 'a pedal';
  return `Proven, with ${hanging} on each: no fewer outputs do${beside}, and no as many with fewer milliamps in all.`;
}

/** All the rest of it, under headings. */
export function wantedPassages(speech: Speech, wanted: Wanted): readonly Passage[] {
  const { installed, unowned, changes } = wanted;
  const owned = [...wanted.inlets, ...fedByOwned(wanted)].map((feed) => ownedEntry(speech, feed));
  const passages: readonly Passage[] = [
    ...(unowned === null ? [] : [unownedPassage(speech, unowned)]),
    {
      title: 'Look for',
      entries: [
        ...sortsOf(wanted.outputs).map((sort) => outputsEntry(speech, sort)),
        ...batteryEntries(speech, wanted),
        ...leadEntries(speech, wanted),
      ],
    },
    { title: 'In the shop', entries: shopTexts(speech, wanted).map(just) },
    { title: 'Confirm before you buy', entries: confirmRemarks(speech, installed).map(toEntry) },
    { title: 'What you own feeds', entries: owned },
    ...(changes === undefined ? [] : changesPassages(speech, installed, changes)),
    {
      title: 'Grounds and noise on what you own',
      entries: owned.length === 0 ? [] : groundRemarks(speech, installed).map(toEntry),
    },
    { title: 'Cautions', entries: owned.length === 0 ? [] : cautionRemarks(speech, installed).map(toEntry) },
    {
      title: 'What to do next',
      entries: [
        ...(unowned === null ? [] : [ownText(speech, unowned)]),
        ...describedOnlyTexts(speech),
        nextText(wanted),
      ].map(just),
    },
  ];
  return passages.filter(({ entries }) => entries.length > 0);
}

const just = (text: string): PassageEntry => ({ name: null, text, below: [] });

const toEntry = ({ text }: Remark): PassageEntry => just(text);

/** How many outputs to look for. */
export const countOutputs = ({ outputs }: Pick<Wanted, 'outputs'>): number =>
  outputs.reduce((sum, { pedals }) => sum + pedals.length, 0);

/** Of all those outputs together, in microamps. */
export const totalRating = ({ outputs }: Pick<Wanted, 'outputs'>): number =>
  outputs.reduce((sum, { rating, pedals }) => sum + rating * pedals.length, 0);

/** One thing on the list, so many of it. */
export type WantedItem = {
  readonly kind: 'output' | 'battery' | 'lead';
  readonly name: string;
  readonly units: number;
};

/** The list without what it is for: outputs first. */
export const wantedItems = ({ outputs, batteries, leads }: Wanted): readonly WantedItem[] => [
  ...outputs.map((each) => ({
    kind: 'output' as const,
    name: ['isolated output', ...sortWords(each, ratingText(each))].join(', '),
    units: each.pedals.length,
  })),
  ...batteries.map(({ battery, units }) => ({ kind: 'battery' as const, name: batteryWords(battery, 1), units })),
  ...leads.map(({ lead, units }) => ({ kind: 'lead' as const, name: leadWords(lead, 1), units })),
];

/** "2 isolated outputs, 9 V DC, 120 mA or more each, centre-negative, plug 2.1 mm barrel: for Echo and Drive."; by rating below. */
function outputsEntry({ inventory }: Speech, sort: readonly [WantedOutputs, ...WantedOutputs[]]): PassageEntry {
  const [one, ...others] = sort;
  const pedalsOf = ({ pedals }: WantedOutputs): string => listText(pedals.map(inventory.pedalName));
  const count = countText(countOutputs({ outputs: sort }), 'isolated output');
  if (others.length === 0) {
    const rating = `${ratingText(one)}${one.pedals.length > 1 ? ' each' : ''}`;
    return just(`${[count, ...sortWords(one, rating)].join(', ')}: for ${pedalsOf(one)}.`);
  }
  const below = [...sort]
    .sort((first, second) => second.rating - first.rating)
    .map((each) => `${each.pedals.length} of ${ratingText(each)}: for ${pedalsOf(each)}.`);
  return { name: null, text: `${[count, ...sortWords(one)].join(', ')}:`, below };
}

/** Outputs that differ in nothing but their rating, in the order of the first of each. */
const sortsOf = (outputs: readonly WantedOutputs[]) => groupBy(outputs, (each) => sortWords(each).join());

const ratingText = ({ rating }: WantedOutputs): string => `${decimalOfThousandths(rating)} mA or more`;

const sortWords = (
  { power, millivolts, polarity, plug }: WantedOutputs,
  ...rating: readonly string[]
): readonly string[] => [
  `${voltsText(millivolts)} ${power}`,
  ...rating,
  ...(polarity === null ? [] : [polarity]),
  `plug ${connectorText(plug)}`,
];

/** "2 9 V block batteries of 9 V with 16 mAh or more each: for Sedge wah, one set of 1 at a time." */
const batteryEntries = ({ board, inventory }: Speech, { batteries }: Wanted): readonly PassageEntry[] =>
  batteries.map(({ battery, count, units, pedal }) =>
    just(
      `${units} × ${batteryWords(battery, units)}: for ${inventory.pedalName(pedal)}, ${count} at a time, which then ${lastingText(board.policy)}.`,
    ),
  );

const batteryWords = ({ role }: WantedBatteries['battery'], units: number): string =>
  `${batteryTypeText(role.type, units)} of ${voltsText(role.millivolts)} with ${decimalOfThousandths(role.microampHours)} mAh or more${units > 1 ? ' each' : ''}`;

/** Every lead to look for, then how the pedals on outputs to look for use leads at all. */
const leadEntries = (speech: Speech, { leads, ledThere }: Wanted): readonly PassageEntry[] => [
  ...leads.map((lead) => leadEntry(speech, lead)),
  ...ledThere.map((feed) => just(`To ${speech.inventory.pedalName(feed.pedal)} from there: ${wayText(speech, feed)}.`)),
];

function leadEntry({ inventory }: Speech, { lead, units, pedals }: WantedLead): PassageEntry {
  return just(`${units} ${leadWords(lead, units)}: for ${listText(pedals.map(inventory.pedalName))}.`);
}

/** "reversing leads, each from 2.1 mm barrel to 2.1 mm barrel". */
function leadWords({ role, reverses, fits, gives }: Part, units: number): string {
  const joined = role.kind === 'join' ? ` for two outputs in ${role.mode}` : '';
  const kind = reverses ? 'reversing lead' : role.kind === 'join' ? 'lead' : 'adapter lead';
  return `${kind}${units > 1 ? 's' : ''}${joined}, ${units > 1 ? 'each ' : ''}from ${connectorText(fits)} to ${connectorText(gives)}`;
}

/** "Box output 3, 9 V, own lead → reversing lead (to find)". */
function ownedEntry(speech: Speech, feed: Feed): PassageEntry {
  const { board, inventory, marks } = speech;
  const place = placeText(inventory, ownedUnitsOf(board), feed, marks.dash);
  // Of what only its own adapter may feed nobody has said the volts.
  const isStated = !takesNothingElse(inventory.pedal(feed.pedal));
  const words = [place, ...(isStated ? [voltsText(feedMillivolts(feed))] : []), wayText(speech, feed)];
  return just(`${inventory.pedalName(feed.pedal)}: ${words.join(', ')}.`);
}

/** What is true of every supply that comes into question. */
function shopTexts(speech: Speech, wanted: Wanted): readonly string[] {
  const { outputs, sockets, together, charge } = wanted;
  if (outputs.length === 0) return [];
  const { mains } = speech.board.policy;
  const reserve = reserveAlone(speech);
  return [
    'Isolated: each output has a ground of its own.',
    ...(outputs.some(({ power }) => power === 'DC')
      ? [
          'DC outputs must be regulated: others rise above their volts when little hangs on them.',
          'An output of the other polarity or with another plug does as well, with the lead that reverses it or changes its plug.',
        ]
      : []),
    ...(reserve === null
      ? []
      : [`The reserve is in these milliamps: at least the draw of what hangs there ${reserve}.`]),
    'More milliamps do as well. Other volts do not, unless the label of the pedal allows them.',
    ...(countOutputs(wanted) > 1
      ? [
          `Where one supply has all of them and states a total for its outputs: ${decimalOfThousandths(together)} mA or more.`,
        ]
      : []),
    ...(charge === null
      ? [
          socketsText(sockets),
          mains.length === 0
            ? 'Look whether the supply accepts the mains volts of the venue.'
            : `The supply must accept mains of ${listText(mains.map(voltsText))}.`,
        ]
      : bankTexts(speech, charge)),
  ];
}

/** What is true of every power bank that comes into question. */
function bankTexts({ board: { policy } }: Speech, charge: MilliwattHours): readonly string[] {
  const { runtime } = policy;
  const lasting =
    runtime === null
      ? ''
      : `, so that they last ${factorText(runtime.hours)} h by ${percentText(runtime.usable)} of their watt-hours`;
  return [
    `No mains socket is left for them: power banks have to hold ${decimalOfThousandths(charge)} Wh or more in all${lasting}. That is an estimate from figures.`,
    'A power bank of other volts does with a converter lead that makes these of them; it is then the draw of that lead that counts.',
    'Power banks may switch off where little is drawn. In an aeroplane they go into the cabin, never into checked luggage; the rule of the airline comes first.',
  ];
}

function socketsText({ owned, least, most }: Wanted['sockets']): string {
  const own = owned === 0 ? '' : `, ${owned} of them for what you own`;
  if (least === most) return `It takes ${countText(least, 'mains socket')} in all${own}.`;
  return `Mains sockets in all: ${least} where one supply has all these outputs, ${most} at the most${own}.`;
}

function nextText({ outputs, batteries, charge }: Wanted): string {
  const hasOutputs = outputs.length > 0;
  const supplies = charge === null ? 'supplies' : 'power banks';
  const found = [...(hasOutputs ? [supplies] : []), ...(batteries.length > 0 ? ['batteries'] : [])];
  if (found.length === 0)
    return 'When you have found them, note what they cost and ask again: the plan then says which goes where.';
  const says = hasOutputs ? 'give' : 'hold';
  const then = hasOutputs ? 'which output feeds which pedal' : 'which go into which pedal';
  return `When you have found ${listText(found)}, note what they ${says} and cost and ask again: the plan then says what to buy and ${then}.`;
}

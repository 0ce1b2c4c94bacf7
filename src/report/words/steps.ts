import { outputsOf } from '../../domain/kit.js';
import { isInletFeed, readFeeds, type Feed } from '../../domain/plan.js';
import type { FeedRow } from './feed-row.js';
import type { Lead, LeadEnd, UnitHookup } from './hookup.js';
import { bankOf, batteriesOf, isFedByOwn, type Inventory } from './inventory.js';
import { meterCheck, type MeterCheck } from './meter-check.js';
import { readName } from './read-name.js';
import { trunkText, wayText } from './route.js';
import type { Speech } from './speech.js';
import { allOff, allOn, standsOf, stopText, watchText, type Stands } from './stands.js';
import { switchedOutputs, switchPosition } from './usage.js';
import { listText, outputsText, polarityText, voltsText } from './words.js';

/** One step of hooking up. */
export type HookupStep = {
  readonly title: string;
  readonly text: string;
  /** What to do one by one; may be empty. */
  readonly items: readonly string[];
  /** What to measure in this step; null where there is nothing to. */
  readonly checks: readonly CheckRow[] | null;
};

/** One plug, and what the meter must show there. */
export type CheckRow = MeterCheck & { readonly mark: string; readonly pedal: string };

/** From everything unplugged to everything powered, so that no pedal meets a plug that was not measured. */
export function hookupSteps(
  speech: Speech,
  hookup: readonly UnitHookup[],
  rows: readonly FeedRow[],
): readonly HookupStep[] {
  const { inventory } = speech;
  const plugged = hookup.map((unit) => ({
    ...unit,
    leads: unit.leads.flatMap((lead) => {
      const ends = lead.ends.filter(({ feed }) => !isKept(inventory, feed));
      return ends.length === 0 ? [] : [{ ...lead, ends }];
    }),
  }));
  const switches = plugged.flatMap((unit) => switchTexts(speech, unit));
  const plugs = rows.filter(({ feed }) => !isKept(inventory, feed));
  const inlets = plugs.filter(({ feed }) => isInletFeed(feed));
  const checksOf = (some: readonly FeedRow[]): readonly CheckRow[] =>
    some.flatMap(({ mark, feed }) => plugChecks(inventory, mark, feed));
  const checks = checksOf(plugs.filter(({ feed }) => !isInletFeed(feed)));
  const leads = plugged.flatMap((unit) =>
    unit.leads.filter(({ number }) => number > 0).map((lead) => placingText(speech, unit, lead)),
  );
  const batteries = plugs.flatMap(({ feed }) => batteryItems(speech, feed));
  const stands = standsOf(
    inventory,
    rows.map(({ feed }) => feed),
  );
  const free = keptPlaces(inventory, rows);
  return [
    ...(stands.mains || stands.banks
      ? [plainStep('Unplug everything', `${allOff(stands)}, and pull every power lead from its pedal.`)]
      : []),
    ...stepWith('Set the switches', 'Set these before any lead goes on, and tape them over.', switches),
    ...stepWith('Keep these places free', 'Plug nothing in here yet.', free),
    ...stepWith(
      'Put the leads on the supplies',
      'Mark both ends of each with its number. Connect no pedal yet.',
      leads,
    ),
    ...(inlets.length === 0 ? [] : feedingSteps(inlets, checksOf(inlets), stands)),
    ...(checks.length === 0
      ? []
      : [{ ...plainStep('Measure every plug', `${allOn(stands)}. ${stopText(stands)}`), checks }]),
    ...(leads.length === 0
      ? []
      : [
          plainStep(
            'Connect the pedals',
            checks.length === 0
              ? 'Connect each pedal to its own plug.'
              : `${allOff(stands, ' again')}. Connect each pedal to the plug that was measured for it.`,
          ),
        ]),
    ...stepWith('Put the batteries in', batteryText, batteries),
    ...(leads.length === 0 ? [] : [plainStep('Switch on', `${allOn(stands)}. ${watchText(stands)}`)]),
  ];
}

/** What fed supplies give can only be measured once they are fed, and they are only once their own plugs were measured. */
const feedingSteps = (
  inlets: readonly FeedRow[],
  checks: readonly CheckRow[],
  stands: Stands,
): readonly HookupStep[] => [
  {
    ...plainStep(
      'Measure the plugs for supplies',
      `These go into supplies that hang on others. ${allOn(stands)}. ${stopText(stands)}`,
    ),
    checks,
  },
  plainStep(
    'Connect the supplies that hang on others',
    `${allOff(stands, ' again')}. Put each plug into the inlet that it was measured for.`,
    inlets.map(({ mark, pedal }) => `Lead ${mark}: ${pedal}.`),
  ),
];

/** What to measure at batteries, which have no leads. */
export const batteryText =
  'Hold the meter across each battery first, on DC volts: a fresh one reads what is printed on it, or a little more.';

/** "6 × Penlight cell into Cockle tuner, the right way round."; nothing of a pedal on anything else. */
export function batteryItems({ inventory }: Speech, feed: Feed): readonly string[] {
  const batteries = batteriesOf(inventory, feed);
  if (batteries === null) return [];
  const what = inventory.batteriesName(batteries);
  return [`${what} into ${inventory.pedalName(feed.pedal)}, the right way round.`];
}

const stepWith = (title: string, text: string, items: readonly string[]): readonly HookupStep[] =>
  items.length === 0 ? [] : [plainStep(title, text, items)];

/** Whether nothing is plugged in there yet. */
export const isKept = (inventory: Inventory, { pedal }: Feed): boolean => inventory.pedal(pedal).kept !== null;

/**
 * "Quay 6, output 5: for Ruff tuner (label unread)." for every place that is only kept; on a chain with the tail that
 * stays bare.
 */
export const keptPlaces = (inventory: Inventory, rows: readonly FeedRow[]): readonly string[] =>
  rows
    .filter(({ feed }) => isKept(inventory, feed))
    .map(({ unit, mark, pedal, feed }) => {
      const tail = feed.chain === null ? '' : `, tail ${mark} (cover it)`;
      return `${unit}, ${outputsText(feed.outputs)}${tail}: for ${pedal}.`;
    });

/** What to measure at a plug, nothing at that of an own adapter; where nobody has read the label, for either way in which it may read. */
export const plugChecks = (inventory: Inventory, mark: string, feed: Feed): readonly CheckRow[] =>
  (isFedByOwn(inventory, feed) ? [] : readFeeds(feed)).map((read) => ({
    mark,
    pedal: readName(inventory, feed, read),
    ...meterCheck(inventory, read),
  }));

/** A step with nothing to measure. */
export const plainStep = (title: string, text: string, items: readonly string[] = []): HookupStep => ({
  title,
  text,
  items,
  checks: null,
});

/** Every switch of the unit that has to be set, the volts first. */
function switchTexts({ inventory, marks }: Speech, { unit, name, leads }: UnitHookup): readonly string[] {
  const volts = leads.flatMap(({ use }) =>
    use.outputs.flatMap((output, at) => {
      const setting = use.settings[at];
      const bank = bankOf(unit.supply, output);
      if (bank.settings.length < 2 || setting === undefined) return [];
      const all = bank.switching === 'together' && bank.outputs > 1;
      const outputs = all ? outputsOf(bank) : [output];
      return [`${name}, ${outputsText(outputs, marks.dash)}${all ? ' together' : ''}: ${voltsText(setting)}.`];
    }),
  );
  const polarities = leads.flatMap(({ use: { feeds } }) => {
    const position = switchPosition(inventory, feeds[0]);
    if (position === null) return [];
    const outputs = switchedOutputs(inventory, feeds[0]);
    return [`${name}, ${outputsText(outputs)}: polarity switch on ${polarityText(position)}.`];
  });
  return [...new Set([...volts, ...polarities])];
}

function placingText(speech: Speech, { name }: UnitHookup, { number, use, ends }: Lead): string {
  const { inventory } = speech;
  const [feed] = use.feeds;
  if (isFedByOwn(inventory, feed)) return `Lead ${number}: ${name}, for ${inventory.pedalName(feed.pedal)} alone.`;
  const from = `Lead ${number}: ${name}, ${outputsText(use.outputs)}`;
  if (feed.chain === null) return `${from}, ${wayText(speech, feed)}, for ${inventory.pedalName(feed.pedal)}.`;
  return `${from}, ${trunkText(speech, feed)}, ${tailsText(inventory, ends)}.`;
}

/** "with the tails 1a for Chorus and 1b for Wah through Reversing lead". */
export function tailsText(inventory: Inventory, ends: readonly LeadEnd[]): string {
  const tails = ends.flatMap(({ mark, feed }) =>
    readFeeds(feed).map((read) => {
      const through = read.adapters.length === 0 ? '' : ` through ${listText(read.adapters.map(inventory.partName))}`;
      return `${mark} for ${readName(inventory, feed, read)}${through}`;
    }),
  );
  return `with the ${tails.length === 1 ? 'tail' : 'tails'} ${listText(tails)}`;
}

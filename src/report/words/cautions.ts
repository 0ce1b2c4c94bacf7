import { groupBy } from '../../domain/group-by.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, feedMillivolts, isInletFeed, leadsOf, type Exposure, type Feed } from '../../domain/plan.js';
import { bankOf, batteriesOf, firstBankOf, isFedByOwn, unitName, type Inventory } from './inventory.js';
import { placeText } from './places.js';
import { digitalTogether, mixedGrounds } from './shared-grounds.js';
import { offBefore, type Stands } from './stands.js';
import { isKept } from './steps.js';
import { settingOf, switchedOutputs, switchPosition } from './usage.js';
import { countText, hoursText, listText, percentText, polarityText, voltsText } from './words.js';

/** What holds for every board, before anything is plugged in. */
export const generalCautions = (stands: Stands, of: 'plan' | 'check'): readonly string[] => [
  'Never open a power supply: it holds dangerous voltages even when it is unplugged.',
  ...offBefore(stands),
  'Measure volts and polarity at each plug with a meter before its pedal goes on. If a plug reads wrong, stop.',
  'Keep the probes apart: one that touches pin and sleeve at once shorts the output.',
  `Local electrical codes and a qualified technician come before this ${of}.`,
];

/** What in this very plan asks for care, one or two sentences each; none for plain leads on plain outputs. */
export const planCautions = (
  inventory: Inventory,
  plan: Pick<JudgedPlan, 'feeds' | 'inlets' | 'exposures' | 'grounds' | 'runtimes' | 'batteries'>,
): readonly string[] => [
  ...pluggingCautions(inventory, plan),
  ...noiseCautions(inventory, plan),
  ...digitalTogether(inventory, plan),
];

/** What there is to mind where nothing is plugged. */
export const nothingMeasured = { feeds: [], inlets: [], grounds: [], runtimes: [], batteries: [] } as const;

/** What to mind while plugging. */
export function pluggingCautions(
  inventory: Inventory,
  wiring: Pick<JudgedPlan, 'feeds' | 'inlets' | 'grounds' | 'runtimes' | 'batteries'>,
): readonly string[] {
  const kinds = [
    kept,
    ofOwnAdapter,
    eitherWay,
    ofUnknownGround,
    onOtherSupplies,
    alternating,
    unregulated,
    joins,
    reversers,
    switches,
    chains,
  ];
  const sentences = kinds.flatMap((kind) => kind(inventory, everyFeed(wiring)));
  return [
    ...new Set([
      ...sentences,
      ...powerBanks(inventory, wiring),
      ...onBatteries(inventory, wiring),
      ...mixedGrounds(inventory, wiring),
    ]),
  ];
}

/** Who is exposed by whom, one sentence a pedal. */
export const noiseCautions = (inventory: Inventory, { exposures }: Pick<JudgedPlan, 'exposures'>): readonly string[] =>
  exposures.map((exposure) => noiseText(inventory, exposure));

/** That a pedal is exposed, and by which. */
export const noiseText = (inventory: Inventory, { pedal, by }: Exposure): string =>
  `${inventory.pedalName(pedal)} (high gain) shares a ground with ${listText(by.map(inventory.pedalName))} ` +
  '(digital) and will probably whine or hum.';

function kept(inventory: Inventory, feeds: readonly Feed[]): string[] {
  const unread = feeds.filter(({ pedal }) => inventory.pedal(pedal).kept === 'unread');
  if (unread.length === 0) return [];
  const [label, place, it] =
    unread.length === 1 ? ['its label has', 'its place is', 'it'] : ['their labels have', 'their places are', 'them'];
  return [
    `Plug nothing into ${namesOf(inventory, unread)} before ${label} been read: what ${place} planned with is ` +
      `assumed, and a wrong feed destroys ${it}.`,
  ];
}

/** How long each power bank lasts, and what to mind of it. */
const powerBanks = (
  inventory: Inventory,
  { runtimes, ...plan }: Pick<JudgedPlan, 'feeds' | 'inlets' | 'runtimes'>,
): string[] =>
  runtimes.map((bank) => {
    const name = unitName(inventory, everyFeed(plan), bank);
    const held = `${decimalOfThousandths(bank.milliwattHours)} Wh, of which ${percentText(bank.asked.usable)} is counted`;
    return (
      `${name} should last about ${hoursText(bank.hours)} h by its ${held}: an estimate from figures, so try it before it ` +
      'counts. It may switch off where little is drawn. In an aeroplane it goes into the cabin, never into checked ' +
      "luggage; the airline's rule comes first."
    );
  });

/** How long each set of batteries lasts, and what to mind of it. */
const onBatteries = (inventory: Inventory, { batteries }: Pick<JudgedPlan, 'batteries'>): string[] => [
  ...batteries.flatMap(({ pedal, supply, hours }) => {
    const set = batteriesOf(inventory, { supply });
    if (set === null) return [];
    const name = inventory.pedalName(pedal);
    const lasts = hours === null ? `${name} draws nothing from` : `${name} should run about ${hoursText(hours)} h on`;
    const held = `${decimalOfThousandths(set.microampHours)} mAh`;
    return [
      `${lasts} ${inventory.batteriesName(set)}: an estimate by the ${held} of a set and what the pedal is planned to draw.`,
    ];
  }),
  ...(batteries.length === 0
    ? []
    : [
        'Batteries: put them in the right way round, and only of the kind that the pedal states; pull the plug out of the ' +
          'input when nobody plays, as it switches the pedal on; take them out before the pedal is stored; never charge ' +
          'what is not rechargeable.',
      ]),
];

function ofOwnAdapter(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds
    .filter((feed) => inventory.supply(feed.supply).source.kind === 'adapter')
    .map(
      (feed) =>
        `${inventory.supplyName(feed.supply)}: put its plug into no other pedal, whatever fits; mark both with the same sign.`,
    );
}

function eitherWay(inventory: Inventory, feeds: readonly Feed[]): string[] {
  const either = feeds.filter((feed) => feed.readings !== undefined && !isFedByOwn(inventory, feed));
  if (either.length === 0) return [];
  const its = either.length === 1 ? 'its' : 'the';
  return [
    `${namesOf(inventory, either)} may want either polarity: look for the sign of pin and sleeve beside ${its} inlet, and use ` +
      `the leads that go with it. With no sign to be found, ask ${its} maker; do not try.`,
  ];
}

function ofUnknownGround(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds
    .filter(
      (feed) => !isInletFeed(feed) && inventory.pedal(feed.pedal).ground === 'unknown' && !isFedByOwn(inventory, feed),
    )
    .map(
      ({ pedal }) =>
        `Nobody knows the ground of ${inventory.pedalName(pedal)}, so it shares one with no other pedal here: keep it so.`,
    );
}

/** Supplies that hang on others. */
const onOtherSupplies = (inventory: Inventory, feeds: readonly Feed[]): string[] =>
  feeds.filter(isInletFeed).map((feed) => {
    const name = unitName(inventory, feeds, feed.inletOf);
    return (
      `${name} hangs on ${placeText(inventory, feeds, feed)} and on nothing else: no pedal shares that output or its ground, and ` +
      'what it gives is measured before a pedal goes on.'
    );
  });

const namesOf = (inventory: Inventory, feeds: readonly Feed[]): string =>
  listText(feeds.map(({ pedal }) => inventory.pedalName(pedal)));

function alternating(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds
    .filter((feed) => firstBankOf(inventory.supply(feed.supply), feed).power === 'AC' && !isFedByOwn(inventory, feed))
    .map(
      (feed) =>
        `${inventory.pedalName(feed.pedal)} runs on AC from ${placeText(inventory, feeds, feed)}: ` +
        'AC destroys a DC pedal, so mark that plug and let no other pedal near it.',
    );
}

function unregulated(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds.flatMap((feed) =>
    feed.outputs.flatMap((output, at) => {
      const setting = settingOf(bankOf(inventory.supply(feed.supply), output), feed.settings[at]);
      if (setting.openCircuit === null) return [];
      const place = placeText(inventory, feeds, { ...feed, outputs: [output] });
      return [
        `${place} is unregulated: it gives ${voltsText(setting.millivolts)} under load but ` +
          `${voltsText(setting.openCircuit)} with nothing on it. Use it only for the pedals named here.`,
      ];
    }),
  );
}

function joins(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds.flatMap((feed) => {
    if (feed.join === null) return [];
    const how =
      feed.join.mode === 'series'
        ? `in series, and the volts add up to ${voltsText(feedMillivolts(feed))}`
        : `in parallel at ${voltsText(feedMillivolts(feed))}, and the milliamps add up`;
    return [
      `${placeText(inventory, feeds, feed)} are joined ${how}: set both outputs before ${inventory.partName(feed.join.part)} ` +
        `goes on, and feed nothing but ${inventory.pedalName(feed.pedal)} with it.`,
    ];
  });
}

/** What the same leads do to the polarity of several pedals is said once. */
function reversers(inventory: Inventory, feeds: readonly Feed[]): string[] {
  const turned = feeds.flatMap((feed) => {
    const { pedal, polarity } = feed;
    const leads = leadsOf(feed).filter((id) => inventory.part(id).reverses);
    return leads.length === 0 || polarity === null || polarity === 'unknown' ? [] : [{ pedal, polarity, leads }];
  });
  return groupBy(turned, ({ leads, polarity }) => JSON.stringify([leads, polarity])).map((alike) => {
    const [{ leads, polarity }] = alike;
    const pedals = alike.map(({ pedal }) => inventory.pedalName(pedal));
    const several = pedals.length > 1;
    return (
      `${listText(leads.map(inventory.partName))} ${leads.length === 1 ? 'swaps' : 'swap'} plus and minus on the way to ${listText(pedals)}, ` +
      `which ${several ? 'get' : 'gets'} ${polarityText(polarity)}: mark the lead${several ? 's' : ''}.`
    );
  });
}

function switches(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds.flatMap((feed) => {
    const position = switchPosition(inventory, feed);
    if (position === null) return [];
    const place = placeText(inventory, feeds, { ...feed, outputs: switchedOutputs(inventory, feed) });
    return [
      `Set the polarity switch of ${place} to ${polarityText(position)} before a lead goes in, ` + 'and tape it over.',
    ];
  });
}

function chains(inventory: Inventory, feeds: readonly Feed[]): string[] {
  return feeds.flatMap((feed) => {
    if (feed.chain === null) return [];
    const { role } = inventory.part(feed.chain);
    const taken = feeds.filter((other) => onSameOutput(feed, other));
    const kept = taken.filter((other) => isKept(inventory, other));
    const spare = role.kind === 'chain' ? role.tails - taken.length : 0;
    const bare = [
      ...(spare > 0 ? [`its ${spare === 1 ? '' : `${spare} `}unused ${tailWord(spare)}`] : []),
      ...(kept.length > 0 ? [`the ${tailWord(kept.length)} kept for ${namesOf(inventory, kept)}`] : []),
    ];
    const cover = bare.length > 0 ? ` Cover ${listText(bare)}: a bare plug can short the output.` : '';
    return [
      `${inventory.partName(feed.chain)} on ${placeText(inventory, feeds, feed)} ties the grounds of ` +
        `${countText(taken.length, 'pedal')} together and can carry noise from one to another.${cover}`,
    ];
  });
}

const tailWord = (count: number): string => (count === 1 ? 'tail' : 'tails');

const onSameOutput = (first: Feed, second: Feed): boolean =>
  first.supply === second.supply && first.unit === second.unit && first.outputs[0] === second.outputs[0];

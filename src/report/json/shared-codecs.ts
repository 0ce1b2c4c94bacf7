import * as z from 'zod/mini';

import type { Kit } from '../../domain/kit.js';
import { leadNumbers } from '../../domain/lead-numbers.js';
import type { BankRuntime } from '../../domain/judged-plan.js';
import type { LoadNumbers, TotalLoad } from '../../domain/load-numbers.js';
import type { Board } from '../../domain/board.js';
import { tenthsDown, type Exact } from '../../domain/load.js';
import { hoursOf } from '../../domain/own-battery.js';
import type { AcceptedVolts } from '../../domain/pedal.js';
import {
  everyFeed,
  feedMillivolts,
  type Feed,
  type Place,
  type Purchase,
  type Readings,
  type Wiring,
} from '../../domain/plan.js';
import { numberOfThousandths, type PartId, type SupplyId } from '../../domain/quantities.js';
import { feedSourceOf, feedSources } from '../../domain/source.js';
import type { Numbers, Violation } from '../../domain/violation.js';
import { described } from '../../reading/schema/described.js';
import { meterOf, percentOf } from '../words/words.js';
import { as, at, keysOf, list, made, oneOf, orAbsent, orNull, record, word, type Codec, through } from './codec.js';
import {
  choice,
  count,
  factor,
  id,
  money,
  numbered,
  numbers as told,
  outputs,
  pedals,
  polarities,
  roundedUp,
  rule,
  thousandths,
  volts,
} from './values.js';

const purchasesOf = <Id extends SupplyId | PartId>(what: string) =>
  list(
    `What is bought of each kind of ${what}, beyond what is owned.`,
    record<Purchase<Id>>()(`One kind of ${what} that is bought.`, {
      id: id(`The id of the ${what}.`),
      units: numbered('How many are bought.'),
      price: money('The price of one.'),
    }),
  );

export const supplyPurchases = purchasesOf<SupplyId>('supply');
const partPurchases = purchasesOf<PartId>('part');
const batteryPurchases = purchasesOf<PartId>('battery');

const isBattery = (id: PartId, { parts }: Kit): boolean => parts.get(id)?.role.kind === 'battery';

export const buy = record<Wiring['buy']>()('What is to be bought.', {
  supplies: supplyPurchases,
  parts: at(partPurchases, ({ parts }, { kit }) => parts.filter(({ id: each }) => !isBattery(each, kit))),
  batteries: at(batteryPurchases, ({ parts }, { kit }) => parts.filter(({ id: each }) => isBattery(each, kit))),
});

export const join = orNull(
  'How two outputs are joined; null for a single one.',
  record<NonNullable<Feed['join']>>()('A join.', {
    mode: choice(['series', 'parallel'], 'In series the volts add, in parallel the milliamps.'),
    part: id('The id of the join lead.'),
  }),
);

export const adapterIds = list("Adapters, from the supply's side to the pedal's.", id('The id of an adapter.'));

export const readings = orAbsent(
  record<Readings>()('Where the polarity is unknown: the adapters to use for either way in which the label may read.', {
    'centre-negative': adapterIds,
    'centre-positive': adapterIds,
  }),
);

/** Whether nobody has stated what the pedal takes, as only the adapter that it came with may feed it. */
const isUnstated = ({ pedal }: Feed, { pedals: all }: Board): boolean =>
  all.some(({ id: each, adapter }) => each === pedal && adapter?.only === true);

/** A set of batteries, and how long it lasts. */
type FeedBattery = { readonly id: PartId; readonly count: number; readonly hours: Exact | null };

const battery = record<FeedBattery>()('What a pedal runs on that is fed by a battery.', {
  id: id('The id of the battery.'),
  count: numbered('How many make a set.'),
  hours: at(
    orNull(
      'The hours that a set lasts, rounded down: an estimate; null where nothing is drawn.',
      thousandths('Hours.'),
    ),
    ({ hours }) => (hours === null ? null : tenthsDown(hours)),
  ),
});

function batteryOf({ pedal, supply: from }: Feed, { board, supplies }: Kit): FeedBattery | null {
  const supply = supplies.get(from);
  const fed = board.pedals.find(({ id: each }) => each === pedal);
  if (supply?.source.kind !== 'battery' || fed === undefined) return null;
  const { battery: part, count: many } = supply.source;
  return { id: part, count: many, hours: hoursOf(fed, supply, board.policy.guess) };
}

const feedKeys = keysOf<Feed>()({
  pedal: id('The id of the pedal.'),
  supply: at(orNull('The id of the supply; null for a battery.', id('The id of the supply.')), (from, { kit }) =>
    batteryOf(from, kit) === null ? from.supply : null,
  ),
  unit: at(
    orNull(
      'Which unit of this supply, from 1; the owned ones come first. Null for a battery.',
      numbered('Which unit of this supply, from 1.'),
    ),
    (from, { kit }) => (batteryOf(from, kit) === null ? from.unit : null),
  ),
  outputs: at(
    as(
      described(
        z
          .array(described(z.int().check(z.minimum(1)), 'The number of an output of the supply, from 1.'))
          .check(z.maxLength(2)),
        'The output, or the two that are joined; none of a battery.',
      ),
    ),
    (from, { kit }) => (batteryOf(from, kit) === null ? [...from.outputs] : []),
  ),
  volts: at(
    orNull(
      'What the pedal gets: the sum of both outputs for a series join; null where only its own adapter is right for it.',
      volts('What the pedal gets.'),
    ),
    (from, { board }) => (isUnstated(from, board) ? null : feedMillivolts(from)),
  ),
  polarity: at(
    orNull(
      "What the pedal's inlet gets at the centre of its plug: `unknown` where its label decides; null for AC, which has no polarity.",
      choice(polarities, "What the pedal's inlet gets at the centre of its plug."),
    ),
    (from, { kit }) => (batteryOf(from, kit) === null ? from.polarity : null),
  ),
  join,
  chain: orNull(
    'The id of the chain lead that all pedals on this output share; null for a pedal alone.',
    id('The id of the chain lead that all pedals on this output share.'),
  ),
  parts: at(
    list("The adapters of this pedal's own tail, from the supply's side to the pedal's.", id('The id of an adapter.')),
    ({ adapters }) => adapters,
  ),
  settings: at(
    as(
      described(
        z.array(described(z.number().check(z.gt(0)), 'What an output is set to. In volts.')).check(z.maxLength(2)),
        'What each of the outputs is set to, in volts; empty where `volts` is null.',
      ),
    ),
    (from, { board, kit }) =>
      isUnstated(from, board) || batteryOf(from, kit) !== null ? [] : from.settings.map(numberOfThousandths),
  ),
  kept: at(
    orNull(
      'Why the place is kept and nothing plugged yet: bought `later`, `unread`, or a `spare` output; null for a pedal that is plugged.',
      choice(['later', 'unread', 'spare'], 'Why the place is kept.'),
    ),
    ({ pedal }, { board }) => board.pedals.find(({ id: each }) => each === pedal)?.kept ?? null,
  ),
  source: at(
    choice(feedSources, 'What feeds the pedal: an output of a supply, the adapter that it came with, or a battery.'),
    ({ supply }, { kit }) => feedSourceOf(kit.supplies.get(supply)?.source),
  ),
  readings: at(readings, (from, { kit }) => (batteryOf(from, kit) === null ? from.readings : undefined)),
  battery: at(orAbsent(battery), (from, { kit }) => batteryOf(from, kit) ?? undefined),
});

/** How one pedal is fed, as every result prints it. */
export const feed = record<Feed>()('How one pedal is fed.', feedKeys);

/** How pedals are fed together, with the numbers of their leads. */
export const feeds = through(
  list(
    'How each powered pedal is fed.',
    record<Feed & { readonly lead: number | undefined }>()('How one pedal is fed.', {
      ...feedKeys,
      lead: orAbsent(numbered('The number of its lead for life; all pedals of a chain share one.')),
    }),
  ),
  (plan: Pick<Wiring, 'feeds' | 'inlets'>, { kit }) => {
    // Leads of inlets are counted among all others.
    const numbers = leadNumbers(kit, everyFeed(plan));
    return plan.feeds.map((each) => ({ ...each, lead: numbers.get(each.pedal) }));
  },
);

/** The keys of a place: null and no outputs where it is no single one. */
export const placeKeys = <From>(get: (from: From) => Place | null) => ({
  supply: at<From, string | null, z.ZodMiniNullable<z.ZodMiniString>>(
    orNull('The id of the supply; null where it is no single one.', id('The id of the supply.')),
    (from) => get(from)?.supply ?? null,
  ),
  unit: at<From, number | null, z.ZodMiniNullable<z.ZodMiniNumberFormat>>(
    orNull('Which unit of this supply, from 1; null where it is no single one.', numbered('Which unit, from 1.')),
    (from) => get(from)?.unit ?? null,
  ),
  outputs: at(outputs('Its outputs; empty for the whole unit.'), (from: From) => get(from)?.outputs ?? []),
});

/** The keys of a load against a limit, in mA or W with three decimals at most; `rating` is a total's limit, too. */
export const loadKeys = <From>(get: (from: From) => LoadNumbers) => ({
  unit: at(choice(['mA', 'W'], 'The unit of the figures.'), (from: From) => get(from).unit),
  load: at(roundedUp('What is drawn, guesses multiplied already.'), (from: From) => get(from).load),
  factor: at(factor('The headroom that multiplies it; 1 where nothing does.'), (from: From) => get(from).factor),
  planned: at(roundedUp('load × factor.'), (from: From) => get(from).planned),
  rating: at(thousandths('The most that may be planned: a rating or a total.'), (from: From) => get(from).limit),
  percent: at(count('planned ÷ rating, in hundredths rounded up; 100 only where it is exactly full.'), (from: From) =>
    percentOf(meterOf(get(from))),
  ),
});

const itself = (numbers: LoadNumbers): LoadNumbers => numbers;

export const load = record<LoadNumbers>()('A load against a limit.', loadKeys(itself));

export const totals = list(
  'The stated totals that something counts towards.',
  record<TotalLoad>()('A stated total of a whole unit, or of one of its banks.', {
    of: choice(['supply', 'bank'], 'Of the whole unit, or of a bank.'),
    ...placeKeys((total: TotalLoad) => total.place),
    pedals: pedals('Those that count towards it.'),
    ...loadKeys((total: TotalLoad) => total.numbers),
    startup: orNull('When all is switched on at once; null where no startup exceeds its load.', load),
  }),
);

export const runtimes = list(
  'The power banks in use, and how long each lasts.',
  record<BankRuntime>()('A power bank in use.', {
    supply: id('The id of the supply.'),
    unit: numbered('Which unit of this supply, from 1.'),
    hours: at(thousandths('The hours that it lasts, rounded down: an estimate.'), ({ hours }) => tenthsDown(hours)),
  }),
);

const range = (about: string) =>
  record<{ readonly from: number; readonly to: number }>()(about, {
    from: volts('The least.'),
    to: volts('The most.'),
  });

/** A list of volts, or a range, as board files write them. */
const accepted = oneOf<AcceptedVolts | { readonly kind: 'listed'; readonly millivolts: readonly number[] }>(
  'The volts that are accepted.',
  {
    range: range('All volts between two.'),
    listed: through(list('These volts.', volts('Accepted.')), ({ millivolts }) => millivolts),
  },
);

const kind = <Kind extends string>(name: Kind) => word(name, 'What the rule compares.');
type OfKind<Kind extends Numbers['kind']> = Extract<Numbers, { readonly kind: Kind }>;

const numbers = oneOf<Numbers>('What the rule has compared.', {
  load: record<OfKind<'load'>>()('A load against a limit.', {
    kind: kind('load'),
    ...loadKeys((from: OfKind<'load'>) => from),
  }),
  volts: record<OfKind<'volts'>>()('Volts against those that are accepted.', {
    kind: kind('volts'),
    given: volts('What reaches the pedal.'),
    openCircuit: orNull('What an unregulated output rises to; null where all hold.', volts('Without a load.')),
    accepted,
    survives: orNull('The most that it survives; null where not stated.', volts('The most.')),
  }),
  mains: record<OfKind<'mains'>>()('The mains of the venue against those that are accepted.', {
    kind: kind('mains'),
    venue: volts('At the venue.'),
    accepted: orNull('Null when the supply does not state it.', range('What the supply accepts.')),
  }),
  count: record<OfKind<'count'>>()('So many against the most that are allowed.', {
    kind: kind('count'),
    used: count('So many are used.'),
    allowed: count('So many are allowed.'),
  }),
  money: record<OfKind<'money'>>()('Money against what may be spent.', {
    kind: kind('money'),
    needed: money('What it takes.'),
    allowed: money('What may be spent.'),
  }),
});

/** A broken rule. */
export const finding = record<Violation>()('A hard rule that is broken.', {
  rule: rule('The rule.'),
  pedals: pedals('Those that it concerns; empty for the wiring as a whole.'),
  ...placeKeys((from: Violation) => from.place),
  message: told,
  numbers: orNull('What the rule has compared; null where it compares no numbers.', numbers),
});

export const format = <Name extends string>(name: Name) =>
  word(name, 'The format of the file. Keys may be added to it, never changed.');

export const boardName = <From>(): Codec<From, z.ZodMiniString> =>
  made(described(z.string(), "The board's name."), (_, { board }) => board.name);

export const currency = <From>(): Codec<From, z.ZodMiniString> =>
  made(
    described(z.string(), 'The ISO 4217 code of the currency of all money in the file, such as EUR.'),
    (_, { board }) => board.currency.code,
  );

export const cautions = <From>(get: (from: From, told: Parameters<Codec<From>['print']>[1]) => readonly string[]) =>
  at(list('What asks for care.', as(described(z.string(), 'A sentence.'))), get);

import * as z from 'zod/mini';

import type { Kit } from '../../domain/kit.js';
import { outputsOf } from '../../domain/kit.js';
import { feedMillivolts } from '../../domain/plan.js';
import type { Bank, Setting } from '../../domain/supply.js';
import type { Violation } from '../../domain/violation.js';
import type { Added } from '../../planning/spare/add-pedal.js';
import type { Largest } from '../../planning/spare/largest-pedal.js';
import type { NoBasis, Room, Spare } from '../../planning/spare/spare.js';
import { described } from '../../reading/schema/described.js';
import { leftOf, mostAlone, ownedUnits, plannedOf } from '../words/spare-units.js';
import { freeOf } from '../words/free-outputs.js';
import { hasGroundAlone, type OutputUse, type UnitUse } from '../words/usage.js';
import type { Meter } from '../words/words.js';
import { as, at, list, orAbsent, orNull, record } from './codec.js';
import { planCodec } from './plan-codec.js';
import { printed, printedObject } from './printed.js';
import { boardName, buy, currency, feeds, finding, format, placeKeys } from './shared-codecs.js';
import { inletOf, inlets } from './inlets-codec.js';
import { choice, count, id, numbered, outputs, pedals, thousandths, volts, whole, yes } from './values.js';

type Usage = UnitUse['totals'][number];

const meterKeys = <From>(get: (from: From) => Meter) => ({
  unit: at(choice(['mA', 'W'], 'The unit of the figures.'), (from: From) => get(from).unit),
  rating: at(thousandths('The most that may be planned.'), (from: From) => get(from).limit),
  planned: at(thousandths('What is planned with its reserve.'), (from: From) => plannedOf(get(from))),
  left: at(thousandths('What is left.'), (from: From) => leftOf(get(from))),
});

/** Nothing is measured of what a pedal came with, which has nothing to spare. */
type Measured = OutputUse & { readonly meter: Meter };

const measured = (use: OutputUse): readonly Measured[] => (use.meter === null ? [] : [{ ...use, meter: use.meter }]);

const used = record<Measured>()('An output in use, or two that are joined.', {
  outputs: outputs('Its outputs.'),
  settings: list('What each is set to.', volts('A setting.')),
  pedals: at(pedals('What hangs there.'), (from) => from.feeds.map(({ pedal }) => pedal)),
  ...meterKeys((from: Measured) => from.meter),
  left: at(
    thousandths('What is left; nothing beside the inlet of a supply or a pedal of unknown ground.'),
    (from, { inventory }) => (hasGroundAlone(inventory, from) ? 0 : leftOf(from.meter)),
  ),
  inlet: at(orAbsent(inletOf), ({ feeds: [feed] }) => feed.inletOf),
});

type Free = { readonly output: number; readonly bank: Bank };

const setting = record<Setting>()('What it can give.', {
  volts: at(volts('The setting.'), ({ millivolts }) => millivolts),
  rating: thousandths('Its milliamps.'),
  most: at(
    thousandths('The milliamps that a pedal by itself may draw there, its reserve counted.'),
    ({ rating }, told) => mostAlone(rating, told.board),
  ),
});

const free = record<Free>()('A free output.', {
  output: numbered('Its number.'),
  power: at(choice(['AC', 'DC'], 'Its kind of power.'), ({ bank }) => bank.power),
  settings: at(list('What it can give.', setting), ({ bank }) => bank.settings),
});

const unit = record<UnitUse>()('A unit that is owned.', {
  supply: at(id('The id of the supply.'), ({ supply }) => supply.id),
  unit: numbered('Which unit of this supply, from 1.'),
  used: at(list('Its outputs in use.', used), (from) => from.outputs.flatMap(measured)),
  free: at(list('Its free outputs.', free), (from, { inventory }) =>
    from.supply.banks.flatMap((bank) => freeOf(inventory, from, bank).map((output) => ({ output, bank }))),
  ),
  totals: list(
    'Its totals.',
    record<Usage>()('A stated total.', {
      of: at(choice(['supply', 'bank'], 'Of the whole unit, or of a bank.'), ({ bank }) =>
        bank === null ? 'supply' : 'bank',
      ),
      outputs: at(outputs('The outputs of the bank.'), ({ bank }) => (bank === null ? [] : outputsOf(bank))),
      ...meterKeys((from: Usage) => from.meter),
    }),
  ),
});

const largestOf = (found: Largest | null | 'unknown'): Largest | null => (found === 'unknown' ? null : found);

/** Null when none fits; `answer` tells what was not settled. */
const largest = record<Largest | null | 'unknown'>()('The largest pedal that fits.', {
  answer: at(choice(['fits', 'none', 'unknown'], '`unknown`: not settled in time.'), (from) =>
    from === null ? 'none' : from === 'unknown' ? from : 'fits',
  ),
  milliamps: at(orNull('What it may draw.', whole('Milliamps.')), (from) => largestOf(from)?.milliamps ?? null),
  place: at(
    orNull(
      'Where it goes.',
      record<Largest>()('Where it goes.', {
        ...placeKeys(({ feed }: Largest) => feed),
        volts: at(volts('What it gets.'), ({ feed }) => feedMillivolts(feed)),
      }),
    ),
    largestOf,
  ),
  exposes: at(orNull('So many pedals it exposes.', count('Pedals.')), (from) => largestOf(from)?.exposes ?? null),
});

const room = (about: string) =>
  record<Room>()(about, {
    more: orNull('How many more of what is counted; null if not settled.', count('How many.')),
    largestDigital: at(largest, (from) => from.largest),
    largestQuietDigital: at(largest, ({ quietest }) => quietest),
    atLeast: count('No fewer of what is counted than so many, settled or not.'),
  });

type Found = Spare | NoBasis;
const ofSpare = (found: Found): Spare | undefined => (found.kind === 'spare' ? found : undefined);

const findings = at(
  orAbsent(list('Of a wiring that is not safe: the broken rules, the worst first.', finding)),
  (found: { readonly kind: string; readonly findings?: readonly Violation[] }) =>
    found.kind === 'spare' || found.kind === 'added' ? undefined : (found.findings ?? []),
);

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const spareCodec = record<Found>()('What there is to spare.', {
  format: format('boardfeed/spare/1'),
  board: boardName(),
  currency: currency(),
  status: at(choice(['spare', 'unsafe', 'impossible', 'stopped'], 'Whether it is known.'), ({ kind }) => kind),
  findings,
  basis: at(
    orAbsent(choice(['wiring', 'plan'], 'Whether it is as plugged, or by a plan.')),
    (from) => ofSpare(from)?.of,
  ),
  complete: at(orAbsent(yes('Whether all of it was settled.')), (from) => ofSpare(from)?.whole),
  buy: at(orAbsent(buy), (from) => ofSpare(from)?.installed.wiring.buy),
  feeds: at(orAbsent(feeds), (from) => ofSpare(from)?.installed.wiring),
  counted: at(
    orAbsent(
      record<Spare['counted']>()('What is counted.', {
        volts: at(volts('Its volts.'), () => 9_000),
        milliamps: at(thousandths('Its milliamps.'), ({ microamps }) => microamps),
      }),
    ),
    (from) => ofSpare(from)?.counted,
  ),
  asPlugged: at(orAbsent(room('While every pedal stays where it is.')), (from) => ofSpare(from)?.asPlugged),
  replugged: at(orAbsent(room('When others may move.')), (from) => ofSpare(from)?.replugged),
  units: at(orAbsent(list('Every unit that is owned.', unit)), (from, { inventory }) => {
    const installed = ofSpare(from)?.installed;
    return installed && ownedUnits(installed.kit.board, inventory, installed.wiring);
  }),
  inlets: at(orAbsent(inlets), (from) => ofSpare(from)?.installed.wiring),
});

/** What there is to spare as one JSON object with a line break at its end. */
export const spareJson = (kit: Kit, found: Found): string =>
  printed(spareCodec, found.kind === 'spare' ? found.installed.kit : kit, found);

type Asked = Added | NoBasis;
const ofAdded = (found: Asked): Added | undefined => (found.kind === 'added' ? found : undefined);
const answers = { plan: 'yes', impossible: 'no', stopped: 'unknown' } as const;

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const addedCodec = record<Asked>()('Whether one more pedal can be fed.', {
  format: format('boardfeed/spare-add/1'),
  board: boardName(),
  currency: currency(),
  answer: at(
    choice(['yes', 'no', 'unknown', 'unsafe', 'impossible', 'stopped'], '`unsafe` and what follows: nothing is known.'),
    (found) => (found.kind === 'added' ? answers[found.answer.kind] : found.kind),
  ),
  findings,
  basis: at(
    orAbsent(choice(['wiring', 'plan'], 'Whether it is as plugged, or by a plan.')),
    (from) => ofAdded(from)?.of,
  ),
  pedal: at(orAbsent(id('The id that it was given.')), (from) => ofAdded(from)?.pedal.id),
  result: at(as(z.optional(planCodec.schema)), (found) => {
    const added = ofAdded(found);
    return added && printedObject(planCodec, added.kit, added.answer);
  }),
  bought: at(
    as(
      described(z.optional(z.nullable(planCodec.schema)), 'When things may be bought; null where that was not asked.'),
    ),
    (found) => {
      const added = ofAdded(found);
      return added && (added.bought === null ? null : printedObject(planCodec, added.bought.kit, added.bought.answer));
    },
  ),
});

/** Whether one more pedal can be fed, as one JSON object with a line break at its end. */
export const addedJson = (kit: Kit, found: Asked): string => printed(addedCodec, kit, found);

import * as z from 'zod';

import { scaledDecimal } from '../../domain/quantities.js';
import {
  count,
  currencyCode,
  factor,
  hours,
  largestCount,
  listOf,
  map,
  milliamps,
  money,
  mostInShortList,
  mostParts,
  mostPedals,
  mostSupplies,
  name,
  reference,
  volts,
  worded,
  words,
} from './schema-fields.js';
import { gearBatterySchema } from './schema-battery.js';
import { inletUnit } from './schema-inlet.js';
import { gearPartSchema } from './schema-part.js';
import { pedalAssumptionsSchema, pedalSchema } from './schema-pedal.js';
import { gearSupplySchema } from './schema-supply.js';

const headroom = map('Rated output over planned load.', 'a map {alone: 1.2, chained: 2, supply: 1.2} of factors', {
  alone: factor('Rated output over load for a pedal alone on an output; at least 1.'),
  chained: factor('Rated output over total load for several pedals on one output; at least 1.'),
  supply: factor('Total of a bank or supply over its load; at least 1.'),
});

const venues = worded(
  z.union([
    volts("The volts of the venue's mains."),
    z
      .array(volts("The volts of one venue's mains."))
      .min(1)
      .max(mostInShortList)
      .describe('The mains volts of all venues of a tour: every supply in use accepts each of them.'),
  ]),
  'The mains volts at the venue, or at every venue of a tour; not checked when absent.',
  'a number of volts, or a list such as [120, 230]',
  'V',
);

const spare = map('Outputs kept for pedals to come.', 'a map {volts: …, milliamps: …, outputs: …}', {
  volts: volts('The volts of the output.'),
  milliamps: milliamps('The milliamps that a pedal may draw there.'),
  outputs: count(1, mostPedals, 'How many such outputs; 1 when absent.').optional(),
});

export type RawSpare = z.output<typeof spare>;

const policy = map('What the player wants and has.', 'a map with headroom, chains …', {
  headroom,
  guess: factor('Multiplies a draw whose figure is `guess`; needed when there is one.').optional(),
  chains: words(
    ['allow', 'never'],
    'Whether several pedals may hang on one output through a chain lead.',
    'allow or never',
  ),
  noisePrice: money(
    'The money that one exposed pedal counts for; needed when there are digital and high-gain pedals.',
  ).optional(),
  supplyPrice: money('The money that one supply in use fewer is worth; 0 when absent.').optional(),
  mains: venues.optional(),
  runtime: map('What is asked of power banks; without it none is used.', 'a map {hours: 4, usable: 0.85}', {
    hours: hours('How long a power bank has to last.'),
    usable: worded(
      z
        .number()
        .gt(0)
        .max(1)
        .refine((value) => scaledDecimal(value, 3) !== null, { params: { check: 'decimals' } }),
      'The share of its watt-hours that arrives, such as 0.85.',
      'a share above 0 and up to 1, with at most three decimals',
      'factor',
    ),
  }).optional(),
  batteries: map('What is asked of batteries; without it none is used.', 'a map {change: 8, pay: 100} of hours', {
    change: hours('How long a set must last.'),
    pay: hours('The hours of playing whose sets are paid for.'),
  }).optional(),
  sockets: count(0, largestCount, 'Mains sockets at hand; no limit when absent.').optional(),
  budget: money('The most that may be spent; no limit when absent.').optional(),
  bricks: count(0, largestCount, 'The most supply units in use; no limit when absent.').optional(),
  spare: listOf(
    spare,
    mostInShortList,
    'Outputs kept for pedals to come.',
    'a list such as [{volts: 9, milliamps: 100, outputs: 2}]',
  ).optional(),
});

export type RawPolicy = z.output<typeof policy>;

const gear = map(
  'Owned things that no catalogue lists; not for sale.',
  'a map {supplies: […], parts: […], batteries: […]}',
  {
    supplies: listOf(
      gearSupplySchema,
      mostSupplies,
      'Owned supplies that no catalogue lists.',
      `a list of up to ${mostSupplies} supplies`,
    ).optional(),
    parts: listOf(
      gearPartSchema,
      mostParts,
      'Owned parts that no catalogue lists.',
      `a list of up to ${mostParts} parts`,
    ).optional(),
    batteries: listOf(
      gearBatterySchema,
      mostParts,
      'Batteries that no catalogue lists.',
      `a list of up to ${mostParts} batteries`,
    ).optional(),
  },
);

const owned = map('How many units of each supply, part and battery are owned.', 'a map {supplies: […], parts: {…}}', {
  supplies: listOf(
    reference('A supply'),
    largestCount,
    'The supplies that are owned, one entry a unit, by id.',
    `a list of up to ${largestCount} ids, one a unit`,
  ).optional(),
  parts: worded(
    z.record(reference('A part'), count(0, largestCount, 'How many of it are owned.')),
    'How many of each part are owned, by id.',
    'a map from ids to counts, such as {flip: 1}',
  ).optional(),
  batteries: worded(
    z.record(reference('A battery'), count(0, largestCount, 'How many of it are owned.')),
    'How many of each battery are owned, by id.',
    'a map from ids to counts, such as {block: 2}',
  ).optional(),
});

export type RawOwned = z.output<typeof owned>;

const outputNumber = () => count(1, largestCount, 'The number of an output of the supply, from 1.');

export const wiredVolts = volts(
  'The volts the pedal gets: the sum of both outputs for a series join; may be left out on its own adapter alone.',
);

const wiredFeed = map('How one pedal is plugged today.', 'a map with pedal, supply, unit, output, volts …', {
  pedal: reference('The pedal').optional(),
  inlet: reference('In place of a pedal: the supply whose inlet hangs there').optional(),
  inletUnit: inletUnit().optional(),
  supply: reference('The supply').optional(),
  battery: reference('In place of a supply: the battery that the pedal runs on').optional(),
  unit: count(
    1,
    largestCount,
    'Which of the owned units of this supply, from 1; 1 when absent and only one is owned.',
  ).optional(),
  output: outputNumber().optional(),
  outputs: worded(
    z.array(outputNumber()).min(2).max(2),
    'The two outputs that are joined.',
    'a list of two output numbers',
  ).optional(),
  volts: wiredVolts.optional(),
  join: map('How two outputs are joined.', 'a map {mode: series, part: …}', {
    mode: words(['series', 'parallel'], 'In series the volts add, in parallel the milliamps.', 'series or parallel'),
    part: reference('The join lead'),
  }).optional(),
  chain: reference('The chain lead that all pedals on this output share').optional(),
  parts: listOf(
    reference('An adapter'),
    mostInShortList,
    "The adapters on the way, from the supply's side to the pedal's; none when absent.",
    'a list of ids of adapters',
  ).optional(),
  lead: count(1, largestCount, 'The number of its lead for life; all pedals of a chain share one.').optional(),
  tail: worded(
    z.string().regex(/^[a-z]{1,2}$/),
    'The letter of its tail of the chain lead, for life.',
    'a letter such as b',
  ).optional(),
});

export type RawWiredFeed = z.output<typeof wiredFeed>;

/** A board file: pedals, policy, and what is owned. */
export const boardSchema = map(
  'A pedal board: what is to be powered, and how.',
  'a map with board, currency, policy, pedals …',
  {
    board: name('What the board is called.'),
    currency: currencyCode,
    assume: pedalAssumptionsSchema.optional(),
    policy,
    pedals: worded(
      z.array(pedalSchema).min(1).max(mostPedals),
      'The pedals to power.',
      `a list of 1 to ${mostPedals} pedals`,
    ),
    gear: gear.optional(),
    owned: owned.optional(),
    wiring: listOf(
      wiredFeed,
      mostPedals,
      'How it is plugged today.',
      'a list with one entry a pedal that is plugged',
    ).optional(),
  },
);

export type RawBoard = z.output<typeof boardSchema>;

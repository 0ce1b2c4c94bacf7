import * as z from 'zod/mini';

import { scaledDecimal } from '../../domain/quantities.js';
import { described } from './described.js';
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
    described(
      z.array(volts("The volts of one venue's mains.")).check(z.minLength(1), z.maxLength(mostInShortList)),
      'The mains volts of all venues of a tour: every supply in use accepts each of them.',
    ),
  ]),
  'The mains volts at the venue, or at every venue of a tour; not checked when absent.',
  'a number of volts, or a list such as [120, 230]',
  'V',
);

const spare = map('Outputs kept for pedals to come.', 'a map {volts: …, milliamps: …, outputs: …}', {
  volts: volts('The volts of the output.'),
  milliamps: milliamps('The milliamps that a pedal may draw there.'),
  outputs: z.optional(count(1, mostPedals, 'How many such outputs; 1 when absent.')),
});

export type RawSpare = z.output<typeof spare>;

const policy = map('What the player wants and has.', 'a map with headroom, chains …', {
  headroom,
  guess: z.optional(factor('Multiplies a draw whose figure is `guess`; needed when there is one.')),
  chains: words(
    ['allow', 'never'],
    'Whether several pedals may hang on one output through a chain lead.',
    'allow or never',
  ),
  noisePrice: z.optional(
    money('The money that one exposed pedal counts for; needed when there are digital and high-gain pedals.'),
  ),
  supplyPrice: z.optional(money('The money that one supply in use fewer is worth; 0 when absent.')),
  mains: z.optional(venues),
  runtime: z.optional(
    map('What is asked of power banks; without it none is used.', 'a map {hours: 4, usable: 0.85}', {
      hours: hours('How long a power bank has to last.'),
      usable: worded(
        z.number().check(
          z.gt(0),
          z.maximum(1),
          z.refine((value) => scaledDecimal(value, 3) !== null, { params: { check: 'decimals' } }),
        ),
        'The share of its watt-hours that arrives, such as 0.85.',
        'a share above 0 and up to 1, with at most three decimals',
        'factor',
      ),
    }),
  ),
  batteries: z.optional(
    map('What is asked of batteries; without it none is used.', 'a map {change: 8, pay: 100} of hours', {
      change: hours('How long a set must last.'),
      pay: hours('The hours of playing whose sets are paid for.'),
    }),
  ),
  sockets: z.optional(count(0, largestCount, 'Mains sockets at hand; no limit when absent.')),
  budget: z.optional(money('The most that may be spent; no limit when absent.')),
  bricks: z.optional(count(0, largestCount, 'The most supply units in use; no limit when absent.')),
  spare: z.optional(
    listOf(
      spare,
      mostInShortList,
      'Outputs kept for pedals to come.',
      'a list such as [{volts: 9, milliamps: 100, outputs: 2}]',
    ),
  ),
});

export type RawPolicy = z.output<typeof policy>;

const gear = map(
  'Owned things that no catalogue lists; not for sale.',
  'a map {supplies: […], parts: […], batteries: […]}',
  {
    supplies: z.optional(
      listOf(
        gearSupplySchema,
        mostSupplies,
        'Owned supplies that no catalogue lists.',
        `a list of up to ${mostSupplies} supplies`,
      ),
    ),
    parts: z.optional(
      listOf(gearPartSchema, mostParts, 'Owned parts that no catalogue lists.', `a list of up to ${mostParts} parts`),
    ),
    batteries: z.optional(
      listOf(
        gearBatterySchema,
        mostParts,
        'Batteries that no catalogue lists.',
        `a list of up to ${mostParts} batteries`,
      ),
    ),
  },
);

const owned = map('How many units of each supply, part and battery are owned.', 'a map {supplies: […], parts: {…}}', {
  supplies: z.optional(
    listOf(
      reference('A supply'),
      largestCount,
      'The supplies that are owned, one entry a unit, by id.',
      `a list of up to ${largestCount} ids, one a unit`,
    ),
  ),
  parts: z.optional(
    worded(
      z.record(reference('A part'), count(0, largestCount, 'How many of it are owned.')),
      'How many of each part are owned, by id.',
      'a map from ids to counts, such as {flip: 1}',
    ),
  ),
  batteries: z.optional(
    worded(
      z.record(reference('A battery'), count(0, largestCount, 'How many of it are owned.')),
      'How many of each battery are owned, by id.',
      'a map from ids to counts, such as {block: 2}',
    ),
  ),
});

export type RawOwned = z.output<typeof owned>;

const outputNumber = () => count(1, largestCount, 'The number of an output of the supply, from 1.');

export const wiredVolts = volts(
  'The volts the pedal gets: the sum of both outputs for a series join; may be left out on its own adapter alone.',
);

const wiredFeed = map('How one pedal is plugged today.', 'a map with pedal, supply, unit, output, volts …', {
  pedal: z.optional(reference('The pedal')),
  inlet: z.optional(reference('In place of a pedal: the supply whose inlet hangs there')),
  inletUnit: z.optional(inletUnit()),
  supply: z.optional(reference('The supply')),
  battery: z.optional(reference('In place of a supply: the battery that the pedal runs on')),
  unit: z.optional(
    count(1, largestCount, 'Which of the owned units of this supply, from 1; 1 when absent and only one is owned.'),
  ),
  output: z.optional(outputNumber()),
  outputs: z.optional(
    worded(
      z.array(outputNumber()).check(z.minLength(2), z.maxLength(2)),
      'The two outputs that are joined.',
      'a list of two output numbers',
    ),
  ),
  volts: z.optional(wiredVolts),
  join: z.optional(
    map('How two outputs are joined.', 'a map {mode: series, part: …}', {
      mode: words(['series', 'parallel'], 'In series the volts add, in parallel the milliamps.', 'series or parallel'),
      part: reference('The join lead'),
    }),
  ),
  chain: z.optional(reference('The chain lead that all pedals on this output share')),
  parts: z.optional(
    listOf(
      reference('An adapter'),
      mostInShortList,
      "The adapters on the way, from the supply's side to the pedal's; none when absent.",
      'a list of ids of adapters',
    ),
  ),
  lead: z.optional(count(1, largestCount, 'The number of its lead for life; all pedals of a chain share one.')),
  tail: z.optional(
    worded(
      z.string().check(z.regex(/^[a-z]{1,2}$/)),
      'The letter of its tail of the chain lead, for life.',
      'a letter such as b',
    ),
  ),
});

export type RawWiredFeed = z.output<typeof wiredFeed>;

/** A board file: pedals, policy, and what is owned. */
export const boardSchema = map(
  'A pedal board: what is to be powered, and how.',
  'a map with board, currency, policy, pedals …',
  {
    board: name('What the board is called.'),
    currency: currencyCode,
    assume: z.optional(pedalAssumptionsSchema),
    policy,
    pedals: worded(
      z.array(pedalSchema).check(z.minLength(1), z.maxLength(mostPedals)),
      'The pedals to power.',
      `a list of 1 to ${mostPedals} pedals`,
    ),
    gear: z.optional(gear),
    owned: z.optional(owned),
    wiring: z.optional(
      listOf(wiredFeed, mostPedals, 'How it is plugged today.', 'a list with one entry a pedal that is plugged'),
    ),
  },
);

export type RawBoard = z.output<typeof boardSchema>;

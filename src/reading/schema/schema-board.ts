import * as z from 'zod';

import { scaledDecimal } from '../../domain/quantities.js';
import {
  count,
  currencyCode,
  factor,
  hours,
  largestCount,
  milliamps,
  money,
  mostInShortList,
  mostParts,
  mostPedals,
  mostSupplies,
  name,
  reference,
  volts,
  wordings,
} from './schema-fields.js';
import { gearBatterySchema } from './schema-battery.js';
import { inletUnit } from './schema-inlet.js';
import { gearPartSchema } from './schema-part.js';
import { pedalAssumptionsSchema, pedalSchema } from './schema-pedal.js';
import { gearSupplySchema } from './schema-supply.js';

const headroom = z
  .strictObject({
    alone: factor('Rated output over load for a pedal alone on an output; at least 1.'),
    chained: factor('Rated output over total load for several pedals on one output; at least 1.'),
    supply: factor('Total of a bank or supply over its load; at least 1.'),
  })
  .describe('Rated output over planned load.')
  .register(wordings, { allowed: 'a map {alone: 1.2, chained: 2, supply: 1.2} of factors', unit: null });

const venues = z
  .union([
    volts("The volts of the venue's mains."),
    z
      .array(volts("The volts of one venue's mains."))
      .min(1)
      .max(mostInShortList)
      .describe('The mains volts of all venues of a tour: every supply in use accepts each of them.'),
  ])
  .describe('The mains volts at the venue, or at every venue of a tour; not checked when absent.')
  .register(wordings, { allowed: 'a number of volts, or a list such as [120, 230]', unit: 'V' });

const spare = z
  .strictObject({
    volts: volts('The volts of the output.'),
    milliamps: milliamps('The milliamps that a pedal may draw there.'),
    outputs: count(1, mostPedals, 'How many such outputs; 1 when absent.').optional(),
  })
  .describe('Outputs kept for pedals to come.')
  .register(wordings, { allowed: 'a map {volts: …, milliamps: …, outputs: …}', unit: null });

export type RawSpare = z.output<typeof spare>;

const policy = z
  .strictObject({
    headroom,
    guess: factor('Multiplies a draw whose figure is `guess`; needed when there is one.').optional(),
    chains: z
      .enum(['allow', 'never'])
      .describe('Whether several pedals may hang on one output through a chain lead.')
      .register(wordings, { allowed: 'allow or never', unit: null }),
    noisePrice: money(
      'The money that one exposed pedal counts for; needed when there are digital and high-gain pedals.',
    ).optional(),
    supplyPrice: money('The money that one supply in use fewer is worth; 0 when absent.').optional(),
    mains: venues.optional(),
    runtime: z
      .strictObject({
        hours: hours('How long a power bank has to last.'),
        usable: z
          .number()
          .gt(0)
          .max(1)
          .refine((value) => scaledDecimal(value, 3) !== null, { params: { check: 'decimals' } })
          .describe('The share of its watt-hours that arrives, such as 0.85.')
          .register(wordings, { allowed: 'a share above 0 and up to 1, with at most three decimals', unit: 'factor' }),
      })
      .describe('What is asked of power banks; without it none is used.')
      .register(wordings, { allowed: 'a map {hours: 4, usable: 0.85}', unit: null })
      .optional(),
    batteries: z
      .strictObject({
        change: hours('How long a set must last.'),
        pay: hours('The hours of playing whose sets are paid for.'),
      })
      .describe('What is asked of batteries; without it none is used.')
      .register(wordings, { allowed: 'a map {change: 8, pay: 100} of hours', unit: null })
      .optional(),
    sockets: count(0, largestCount, 'Mains sockets at hand; no limit when absent.').optional(),
    budget: money('The most that may be spent; no limit when absent.').optional(),
    bricks: count(0, largestCount, 'The most supply units in use; no limit when absent.').optional(),
    spare: z
      .array(spare)
      .max(mostInShortList)
      .describe('Outputs kept for pedals to come.')
      .register(wordings, { allowed: 'a list such as [{volts: 9, milliamps: 100, outputs: 2}]', unit: null })
      .optional(),
  })
  .describe('What the player wants and has.')
  .register(wordings, { allowed: 'a map with headroom, chains …', unit: null });

export type RawPolicy = z.output<typeof policy>;

const gear = z
  .strictObject({
    supplies: z
      .array(gearSupplySchema)
      .max(mostSupplies)
      .describe('Owned supplies that no catalogue lists.')
      .register(wordings, { allowed: `a list of up to ${mostSupplies} supplies`, unit: null })
      .optional(),
    parts: z
      .array(gearPartSchema)
      .max(mostParts)
      .describe('Owned parts that no catalogue lists.')
      .register(wordings, { allowed: `a list of up to ${mostParts} parts`, unit: null })
      .optional(),
    batteries: z
      .array(gearBatterySchema)
      .max(mostParts)
      .describe('Batteries that no catalogue lists.')
      .register(wordings, { allowed: `a list of up to ${mostParts} batteries`, unit: null })
      .optional(),
  })
  .describe('Owned things that no catalogue lists; not for sale.')
  .register(wordings, { allowed: 'a map {supplies: […], parts: […], batteries: […]}', unit: null });

const owned = z
  .strictObject({
    supplies: z
      .array(reference('A supply'))
      .max(largestCount)
      .describe('The supplies that are owned, one entry a unit, by id.')
      .register(wordings, { allowed: `a list of up to ${largestCount} ids, one a unit`, unit: null })
      .optional(),
    parts: z
      .record(reference('A part'), count(0, largestCount, 'How many of it are owned.'))
      .describe('How many of each part are owned, by id.')
      .register(wordings, { allowed: 'a map from ids to counts, such as {flip: 1}', unit: null })
      .optional(),
    batteries: z
      .record(reference('A battery'), count(0, largestCount, 'How many of it are owned.'))
      .describe('How many of each battery are owned, by id.')
      .register(wordings, { allowed: 'a map from ids to counts, such as {block: 2}', unit: null })
      .optional(),
  })
  .describe('How many units of each supply, part and battery are owned.')
  .register(wordings, { allowed: 'a map {supplies: […], parts: {…}}', unit: null });

export type RawOwned = z.output<typeof owned>;

const outputNumber = () => count(1, largestCount, 'The number of an output of the supply, from 1.');

export const wiredVolts = volts(
  'The volts the pedal gets: the sum of both outputs for a series join; may be left out on its own adapter alone.',
);

const wiredFeed = z
  .strictObject({
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
    outputs: z
      .array(outputNumber())
      .min(2)
      .max(2)
      .describe('The two outputs that are joined.')
      .register(wordings, { allowed: 'a list of two output numbers', unit: null })
      .optional(),
    volts: wiredVolts.optional(),
    join: z
      .strictObject({
        mode: z
          .enum(['series', 'parallel'])
          .describe('In series the volts add, in parallel the milliamps.')
          .register(wordings, { allowed: 'series or parallel', unit: null }),
        part: reference('The join lead'),
      })
      .describe('How two outputs are joined.')
      .register(wordings, { allowed: 'a map {mode: series, part: …}', unit: null })
      .optional(),
    chain: reference('The chain lead that all pedals on this output share').optional(),
    parts: z
      .array(reference('An adapter'))
      .max(mostInShortList)
      .describe("The adapters on the way, from the supply's side to the pedal's; none when absent.")
      .register(wordings, { allowed: 'a list of ids of adapters', unit: null })
      .optional(),
    lead: count(1, largestCount, 'The number of its lead for life; all pedals of a chain share one.').optional(),
    tail: z
      .string()
      .regex(/^[a-z]{1,2}$/)
      .describe('The letter of its tail of the chain lead, for life.')
      .register(wordings, { allowed: 'a letter such as b', unit: null })
      .optional(),
  })
  .describe('How one pedal is plugged today.')
  .register(wordings, { allowed: 'a map with pedal, supply, unit, output, volts …', unit: null });

export type RawWiredFeed = z.output<typeof wiredFeed>;

/** A board file: pedals, policy, and what is owned. */
export const boardSchema = z
  .strictObject({
    board: name('What the board is called.'),
    currency: currencyCode,
    assume: pedalAssumptionsSchema.optional(),
    policy,
    pedals: z
      .array(pedalSchema)
      .min(1)
      .max(mostPedals)
      .describe('The pedals to power.')
      .register(wordings, { allowed: `a list of 1 to ${mostPedals} pedals`, unit: null }),
    gear: gear.optional(),
    owned: owned.optional(),
    wiring: z
      .array(wiredFeed)
      .max(mostPedals)
      .describe('How it is plugged today.')
      .register(wordings, { allowed: 'a list with one entry a pedal that is plugged', unit: null })
      .optional(),
  })
  .describe('A pedal board: what is to be powered, and how.')
  .register(wordings, { allowed: 'a map with board, currency, policy, pedals …', unit: null });

export type RawBoard = z.output<typeof boardSchema>;

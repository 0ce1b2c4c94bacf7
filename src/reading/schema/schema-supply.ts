import * as z from 'zod';

import { inletSchema } from './schema-inlet.js';
import {
  connector,
  count,
  flag,
  id,
  largestCount,
  mains,
  milliamps,
  money,
  mostInShortList,
  mostOutputsOfBank,
  name,
  outputPolarity,
  power,
  volts,
  wattHours,
  watts,
  wordings,
} from './schema-fields.js';

const setting = z
  .strictObject({
    volts: volts('The volts an output gives.'),
    milliamps: milliamps('The most milliamps an output gives at these volts.'),
    openCircuitVolts: volts('The volts without a load; needed when the supply is not regulated.').optional(),
  })
  .describe('What an output gives.')
  .register(wordings, { allowed: 'a map {volts: …, milliamps: …}', unit: null });

export type RawSetting = z.output<typeof setting>;

const total = z
  .strictObject({
    milliamps: milliamps('The most milliamps of all outputs together.').optional(),
    watts: watts('The most watts of all outputs together.').optional(),
  })
  .describe('The most that all outputs give together, in milliamps or in watts.')
  .register(wordings, { allowed: 'a map {milliamps: …} or {watts: …}', unit: null });

export type RawTotal = z.output<typeof total>;

const joinWord = z
  .enum(['series', 'parallel', 'both'])
  .describe('In series the volts add, in parallel the milliamps; `both` allows either.')
  .register(wordings, { allowed: 'series, parallel or both', unit: null });
const joins = z
  .union([joinWord, z.array(joinWord).max(mostInShortList).describe('All the ways that it allows.')])
  .describe('The ways in which its maker allows two isolated outputs to be joined; none when absent.')
  .register(wordings, { allowed: 'series, parallel, both, or a list of these', unit: null });

const bank = z
  .strictObject({
    outputs: count(1, mostOutputsOfBank, 'How many outputs; numbered on through the banks of the supply.'),
    isolated: flag("Each output's ground is its own; false: all such outputs of the supply share one ground."),
    power: power.optional(),
    plug: connector("What the supply's own straight lead offers a pedal.").optional(),
    polarity: outputPolarity.optional(),
    switch: z
      .enum(['each', 'together'])
      .describe('How the settings are chosen: each output by itself or all together. Needed with several settings.')
      .register(wordings, { allowed: 'each or together', unit: null })
      .optional(),
    settings: z
      .array(setting)
      .min(1)
      .max(mostInShortList)
      .describe('What an output can be set to give.')
      .register(wordings, { allowed: 'a list of 1 to 100 settings such as {volts: 9, milliamps: 100}', unit: null }),
    joins: joins.optional(),
    total: total.optional(),
  })
  .describe('Outputs that are alike and share a switch, a limit or a ground.')
  .register(wordings, { allowed: 'a map with outputs, isolated, settings …', unit: null });

export type RawBank = z.output<typeof bank>;

const supplyFields = {
  id: id('How other parts of the files and the results call it; made from the name when absent.').optional(),
  name: name('What it is called.'),
  stock: count(0, largestCount, 'How many units can be bought; no limit when absent.').optional(),
  mains: mains().optional(),
  regulated: flag('It holds its volts whatever the load. False needs openCircuitVolts on every setting.').optional(),
  charge: z
    .strictObject({ wattHours: wattHours('The watt-hours that it holds when it is full.') })
    .describe('It is a power bank, which stands on its own charge.')
    .register(wordings, { allowed: 'a map {wattHours: …}', unit: null })
    .optional(),
  inlet: inletSchema.optional(),
  total: total.optional(),
  banks: z
    .array(bank)
    .min(1)
    .max(mostInShortList)
    .describe('Its outputs, numbered 1, 2, 3 … through the banks in order.')
    .register(wordings, { allowed: 'a list of 1 to 100 banks', unit: null }),
};
const supplyWording = { allowed: 'a map with name, banks …', unit: null };

/** A supply as a catalogue writes it. */
export const supplySchema = z
  .strictObject({ ...supplyFields, price: money('The price of one unit.') })
  .describe('A box with outputs; a wall adapter is a supply with one output.')
  .register(wordings, supplyWording);

/** What of a supply may be taken to be so before anybody has read it. */
const assumedField = z
  .enum(['plug', 'polarity', 'regulated'])
  .describe('A key whose value nobody has read off the supply.')
  .register(wordings, { allowed: 'plug, polarity or regulated', unit: null });

/** A supply that is owned and not for sale. */
export const gearSupplySchema = z
  .strictObject({
    ...supplyFields,
    price: money('Not used: gear is not for sale.').optional(),
    assumed: z
      .array(assumedField)
      .max(mostInShortList)
      .describe('What stands here as most supplies have it, and is to be confirmed before plugging in.')
      .register(wordings, { allowed: 'a list of keys such as [plug, polarity, regulated]', unit: null })
      .optional(),
  })
  .describe('An owned supply that no catalogue lists.')
  .register(wordings, supplyWording);

export type RawSupply = z.output<typeof gearSupplySchema>;

/** What every supply of a catalogue has that does not say otherwise. */
export const supplyAssumptionsSchema = z
  .strictObject({
    power: power.optional(),
    plug: connector("What the supplies' own straight leads offer.").optional(),
    polarity: outputPolarity.optional(),
    regulated: flag('They hold their volts whatever the load.').optional(),
  })
  .describe('What is taken for supplies that leave it out; every use is listed for confirmation.')
  .register(wordings, { allowed: 'a map with any of power, plug, polarity, regulated', unit: null });

export type RawSupplyAssumptions = z.output<typeof supplyAssumptionsSchema>;

import * as z from 'zod/mini';

import { described } from './described.js';
import { inletSchema } from './schema-inlet.js';
import {
  connector,
  count,
  flag,
  id,
  largestCount,
  listOf,
  mains,
  map,
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
  worded,
  words,
} from './schema-fields.js';

const setting = map('What an output gives.', 'a map {volts: …, milliamps: …}', {
  volts: volts('The volts an output gives.'),
  milliamps: milliamps('The most milliamps an output gives at these volts.'),
  openCircuitVolts: z.optional(volts('The volts without a load; needed when the supply is not regulated.')),
});

export type RawSetting = z.output<typeof setting>;

const total = map(
  'The most that all outputs give together, in milliamps or in watts.',
  'a map {milliamps: …} or {watts: …}',
  {
    milliamps: z.optional(milliamps('The most milliamps of all outputs together.')),
    watts: z.optional(watts('The most watts of all outputs together.')),
  },
);

export type RawTotal = z.output<typeof total>;

const joinWord = words(
  ['series', 'parallel', 'both'],
  'In series the volts add, in parallel the milliamps; `both` allows either.',
  'series, parallel or both',
);
const joins = worded(
  z.union([joinWord, described(z.array(joinWord).check(z.maxLength(mostInShortList)), 'All the ways that it allows.')]),
  'The ways in which its maker allows two isolated outputs to be joined; none when absent.',
  'series, parallel, both, or a list of these',
);

const bank = map(
  'Outputs that are alike and share a switch, a limit or a ground.',
  'a map with outputs, isolated, settings …',
  {
    outputs: count(1, mostOutputsOfBank, 'How many outputs; numbered on through the banks of the supply.'),
    isolated: flag("Each output's ground is its own; false: all such outputs of the supply share one ground."),
    power: z.optional(power),
    plug: z.optional(connector("What the supply's own straight lead offers a pedal.")),
    polarity: z.optional(outputPolarity),
    switch: z.optional(
      words(
        ['each', 'together'],
        'How the settings are chosen: each output by itself or all together. Needed with several settings.',
        'each or together',
      ),
    ),
    settings: worded(
      z.array(setting).check(z.minLength(1), z.maxLength(mostInShortList)),
      'What an output can be set to give.',
      'a list of 1 to 100 settings such as {volts: 9, milliamps: 100}',
    ),
    joins: z.optional(joins),
    total: z.optional(total),
  },
);

export type RawBank = z.output<typeof bank>;

const supplyFields = {
  id: z.optional(id('How other parts of the files and the results call it; made from the name when absent.')),
  name: name('What it is called.'),
  stock: z.optional(count(0, largestCount, 'How many units can be bought; no limit when absent.')),
  mains: z.optional(mains()),
  regulated: z.optional(flag('It holds its volts whatever the load. False needs openCircuitVolts on every setting.')),
  charge: z.optional(
    map('It is a power bank, which stands on its own charge.', 'a map {wattHours: …}', {
      wattHours: wattHours('The watt-hours that it holds when it is full.'),
    }),
  ),
  inlet: z.optional(inletSchema),
  total: z.optional(total),
  banks: worded(
    z.array(bank).check(z.minLength(1), z.maxLength(mostInShortList)),
    'Its outputs, numbered 1, 2, 3 … through the banks in order.',
    'a list of 1 to 100 banks',
  ),
};
const allowed = 'a map with name, banks …';

/** A supply as a catalogue writes it. */
export const supplySchema = map('A box with outputs; a wall adapter is a supply with one output.', allowed, {
  ...supplyFields,
  price: money('The price of one unit.'),
});

/** What of a supply may be taken to be so before anybody has read it. */
const assumedField = words(
  ['plug', 'polarity', 'regulated'],
  'A key whose value nobody has read off the supply.',
  'plug, polarity or regulated',
);

/** A supply that is owned and not for sale. */
export const gearSupplySchema = map('An owned supply that no catalogue lists.', allowed, {
  ...supplyFields,
  price: z.optional(money('Not used: gear is not for sale.')),
  assumed: z.optional(
    listOf(
      assumedField,
      mostInShortList,
      'What stands here as most supplies have it, and is to be confirmed before plugging in.',
      'a list of keys such as [plug, polarity, regulated]',
    ),
  ),
});

export type RawSupply = z.output<typeof gearSupplySchema>;

/** What every supply of a catalogue has that does not say otherwise. */
export const supplyAssumptionsSchema = map(
  'What is taken for supplies that leave it out; every use is listed for confirmation.',
  'a map with any of power, plug, polarity, regulated',
  {
    power: z.optional(power),
    plug: z.optional(connector("What the supplies' own straight leads offer.")),
    polarity: z.optional(outputPolarity),
    regulated: z.optional(flag('They hold their volts whatever the load.')),
  },
);

export type RawSupplyAssumptions = z.output<typeof supplyAssumptionsSchema>;

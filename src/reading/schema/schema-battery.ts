import * as z from 'zod/mini';

import { batteryType, count, id, largestCount, map, milliampHours, money, name, volts } from './schema-fields.js';

const batteryFields = {
  id: z.optional(id('How other parts of the files and the results call it; made from the name when absent.')),
  name: name('What it is called.'),
  type: batteryType('What it is; pedals name the type that they take.'),
  stock: z.optional(count(0, largestCount, 'How many can be bought; no limit when absent.')),
  volts: volts('The volts of one.'),
  milliampHours: milliampHours('What one holds.'),
};
const allowed = 'a map with name, type, volts, milliampHours …';

/** A battery as a catalogue writes it. */
export const batterySchema = map('A battery for pedals that can run on some.', allowed, {
  ...batteryFields,
  price: money('The price of one.'),
});

/** A battery that is owned and not for sale. */
export const gearBatterySchema = map('A battery that no catalogue lists.', allowed, {
  ...batteryFields,
  price: z.optional(money('Not used: gear is not for sale.')),
});

export type RawBattery = z.output<typeof gearBatterySchema>;

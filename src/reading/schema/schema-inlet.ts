import * as z from 'zod/mini';

import { described } from './described.js';
import {
  connector,
  count,
  largestCount,
  map,
  milliamps,
  mostInShortList,
  polarity,
  power,
  volts,
  voltsRange,
  worded,
} from './schema-fields.js';

const accepts = worded(
  z.union([
    volts('The only volts it takes.'),
    described(
      z.array(volts('Volts that it takes.')).check(z.minLength(1), z.maxLength(mostInShortList)),
      'All the volts it takes.',
    ),
    voltsRange('It takes anything between these volts, both included.'),
  ]),
  'The volts that the inlet takes: one number, a list, or a range.',
  'a number of volts, a list such as [9, 12] or a range {from: 9, to: 18}',
  'V',
);

/** By what a fed supply hangs on an output of another one. Nothing of it is ever assumed. */
export const inletSchema = map(
  'It stands on no mains but on an output of another supply, as a converter lead does.',
  'a map {power: DC, plug: …, polarity: …, volts: …, milliamps: …}',
  {
    power,
    plug: connector('The connector of the inlet.'),
    polarity: z.optional(polarity),
    volts: accepts,
    milliamps: milliamps('The milliamps it draws, whatever hangs on the supply.'),
    startup: z.optional(milliamps('The milliamps it draws at the moment of switching on, taken as stated.')),
  },
);

export type RawInlet = z.output<typeof inletSchema>;

/** Which of the owned units of a fed supply an entry of a wiring is about. */
export const inletUnit = () =>
  count(1, largestCount, 'Of `inlet`: which of the owned units it is, from 1; 1 when absent and only one is owned.');

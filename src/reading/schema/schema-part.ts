import * as z from 'zod/mini';

import {
  connector,
  count,
  flag,
  id,
  largestCount,
  listOf,
  map,
  money,
  mostInShortList,
  name,
  words,
} from './schema-fields.js';

const partFields = {
  id: z.optional(id('How other parts of the files and the results call it; made from the name when absent.')),
  name: name('What it is called.'),
  stock: z.optional(count(0, largestCount, 'How many can be bought; no limit when absent.')),
  fits: connector('The plug that goes into it.'),
  gives: connector('The plug that it offers.'),
  reverses: z.optional(flag('It swaps plus and minus; false when absent.')),
  tails: z.optional(count(2, largestCount, 'Makes it a chain lead: how many pedals it feeds.')),
  joins: z.optional(
    words(['series', 'parallel'], 'Makes it a join lead: how it joins two outputs.', 'series or parallel'),
  ),
};
const allowed = 'a map with name, fits, gives …';

/** A lead or adapter as a catalogue writes it. */
export const partSchema = map('An adapter, or with `tails` a chain lead, or with `joins` a join lead.', allowed, {
  ...partFields,
  price: money('The price of one.'),
});

/** A lead or adapter that is owned and not for sale. */
export const gearPartSchema = map('An owned part that no catalogue lists.', allowed, {
  ...partFields,
  price: z.optional(money('Not used: gear is not for sale.')),
  assumed: z.optional(
    listOf(
      words(['fits', 'gives'], 'A plug of it that nobody has looked at.', 'fits or gives'),
      mostInShortList,
      'What stands here as most leads have it, and is to be confirmed before plugging in.',
      'a list of keys such as [fits, gives]',
    ),
  ),
});

export type RawPart = z.output<typeof gearPartSchema>;

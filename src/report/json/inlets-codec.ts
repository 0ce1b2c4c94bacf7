import { leadNumbers } from '../../domain/lead-numbers.js';
import type { UnitRef } from '../../domain/inlet.js';
import { everyFeed, feedMillivolts, type Feed, type InletFeed, type Wiring } from '../../domain/plan.js';
import { adapterIds } from './shared-codecs.js';
import { at, list, orAbsent, orNull, record, through } from './codec.js';
import { choice, id, numbered, polarities, volts } from './values.js';

const unitKeys = {
  supply: id('The id of the supply.'),
  unit: numbered('Which unit of this supply, from 1; the owned ones come first.'),
};

const from = record<Feed>()('The output that the inlet hangs on.', {
  ...unitKeys,
  output: at(numbered('The number of the output, from 1.'), ({ outputs }) => outputs[0] ?? 0),
});

/** Which fed unit something is about. */
export const inletOf = record<UnitRef>()('A unit of a supply that hangs by its inlet on another one.', unitKeys);

/** What the fed supplies in use hang on, with the numbers of their leads. */
export const inlets = through(
  list(
    'What the supplies hang on that are fed by others.',
    record<InletFeed & { readonly lead: number | undefined }>()('What one supply hangs on.', {
      supply: at(id('The id of the supply.'), (feed) => feed.inletOf.supply),
      unit: at(numbered('Which unit of this supply, from 1; the owned ones come first.'), (feed) => feed.inletOf.unit),
      from: at(from, (feed) => feed),
      parts: at(adapterIds, ({ adapters }) => adapters),
      volts: at(volts('What the output is set to.'), feedMillivolts),
      polarity: orNull('What the inlet gets at its centre; null for AC.', choice(polarities, 'At the centre.')),
      lead: orAbsent(numbered('The number of its lead for life.')),
    }),
  ),
  (plan: Pick<Wiring, 'feeds' | 'inlets'>, { kit }) => {
    const numbers = leadNumbers(kit, everyFeed(plan));
    return plan.inlets.map((feed) => ({ ...feed, lead: numbers.get(feed.pedal) }));
  },
);

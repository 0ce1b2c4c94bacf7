import {
  adapter,
  apart,
  box,
  fan,
  flip,
  impossible,
  mini,
  pair,
  pedal,
  plan,
  stack,
  sharing,
  type Case,
} from './case.js';
import { joined, leads, parallel, series } from './joined.js';

const eighteen = (milliamps: number, more = '') => pedal('A', 18, milliamps, more);

export const seriesCases: readonly Case[] = [
  joined('volts add: 9 + 9 are 18', eighteen(80), [apart(2, '9/100', series)], 'series', {
    answer: plan(
      '19.00',
      { parts: 1 },
      {
        parts: { stack: 1 },
        feeds: {
          a: {
            outputs: [1, 2],
            volts: 18,
            polarity: 'centre-negative',
            join: { mode: 'series', part: 'stack' },
            chain: null,
            parts: [],
          },
        },
      },
    ),
  }),
  joined('milliamps do not', eighteen(100.001), [apart(2, '9/100', series)], null),
  joined(
    'the smaller rating counts, exactly',
    eighteen(80),
    [apart(1, '9/100', series), apart(1, '9/80', series)],
    'series',
  ),
  joined('and not a microamp more', eighteen(80.001), [apart(1, '9/100', series), apart(1, '9/80', series)], null),
  joined('`alone` counts on a join', eighteen(100), [apart(2, '9/120', series)], 'series', {
    policy: { headroom: '{alone: 1.2, chained: 2, supply: 1}' },
  }),
  joined('and refuses', eighteen(100), [apart(2, '9/119.999', series)], null, {
    policy: { headroom: '{alone: 1.2, chained: 2, supply: 1}' },
  }),
  joined(
    'a startup must fit the smaller rating',
    eighteen(50, 'startup: 80'),
    [apart(1, '9/100', series), apart(1, '9/80', series)],
    'series',
  ),
  joined(
    'and is refused above it',
    eighteen(50, 'startup: 80.001'),
    [apart(1, '9/100', series), apart(1, '9/80', series)],
    null,
  ),
  joined(
    'different volts add: 9 + 12 are 21',
    pedal('A', 21, 80),
    [apart(1, '9/100', series), apart(1, '12/100', series)],
    'series',
  ),
  joined(
    'outputs switched each may differ',
    pedal('A', 21, 80),
    [apart(2, '9/100 12/100', `switch: each, ${series}`)],
    'series',
  ),
  joined(
    'outputs switched together may not',
    pedal('A', 21, 80),
    [apart(2, '9/100 12/100', `switch: together, ${series}`)],
    null,
  ),
  joined(
    'but they join alike',
    pedal('A', 24, 80),
    [apart(2, '9/100 12/100', `switch: together, ${series}`)],
    'series',
  ),
  joined('the sum must be accepted to the millivolt', pedal('A', 18.001, 80), [apart(2, '9/100', series)], null),
  joined('the maker must allow it', eighteen(80), [apart(2, '9/100')], null),
  joined('parallel is not series', eighteen(80), [apart(2, '9/100', parallel)], null),
  joined('both banks must allow it', eighteen(80), [apart(1, '9/100', series), apart(1, '9/100')], null),
  joined('`both` allows it', eighteen(80), [apart(2, '9/100', 'joins: both')], 'series'),
  joined('a list of both allows it', eighteen(80), [apart(2, '9/100', 'joins: [series, parallel]')], 'series'),
  joined('it takes the lead', eighteen(80), [apart(2, '9/100', series)], null, { parts: [pair, flip, fan(2)] }),
  joined('which must fit the plug', eighteen(80), [apart(2, '9/100', series)], null, {
    parts: ['- {id: stack, name: stack, price: 9, fits: jack-3.5, gives: barrel-2.1, joins: series}', mini],
  }),
  joined(
    'both plugs must agree',
    eighteen(80),
    [apart(1, '9/100', series), apart(1, '9/100', `${series}, plug: jack-3.5`)],
    null,
  ),
  joined(
    'polarities must agree',
    eighteen(80),
    [apart(1, '9/100', series), apart(1, '9/100', `${series}, polarity: centre-positive`)],
    null,
  ),
  joined(
    'AC and DC are never joined',
    eighteen(80),
    [apart(1, '9/100', series), apart(1, '9/100', `${series}, power: AC`)],
    null,
  ),
  joined('two outputs are joined, not three', pedal('A', 27, 80), [apart(3, '9/100', series)], null),
  joined(
    'a reversing join lead turns the polarity',
    eighteen(80, 'polarity: centre-positive'),
    [apart(2, '9/100', series)],
    'series',
    {
      parts: [
        '- {id: stack, name: stack, price: 9, fits: barrel-2.1, gives: barrel-2.1, joins: series, reverses: true}',
      ],
    },
  ),
  joined(
    'two adapters may follow',
    eighteen(80, 'polarity: centre-positive, inlet: jack-3.5'),
    [apart(2, '9/100', series)],
    'series',
    { parts: [stack, flip, mini], answer: plan('28.00', { parts: 3 }) },
  ),
  joined(
    'both outputs are switched to the polarity',
    eighteen(80, 'polarity: centre-positive'),
    [apart(2, '9/100', `${series}, polarity: either`)],
    'series',
  ),
  joined(
    "the load counts on both outputs in the supply's milliamps",
    eighteen(100),
    [apart(2, '9/100', series)],
    'series',
    { total: 'total: {milliamps: 200}' },
  ),
  joined('and is refused a microamp below', eighteen(100), [apart(2, '9/100', series)], null, {
    total: 'total: {milliamps: 199.999}',
  }),
  joined(
    "the load counts twice in one bank's milliamps",
    eighteen(100),
    [apart(2, '9/100', `${series}, total: {milliamps: 200}`)],
    'series',
  ),
  joined(
    'and is refused there a microamp below',
    eighteen(100),
    [apart(2, '9/100', `${series}, total: {milliamps: 199.999}`)],
    null,
  ),
  joined(
    'and once in each of two banks',
    eighteen(100),
    [apart(1, '9/100', `${series}, total: {milliamps: 100}`), apart(1, '9/100', `${series}, total: {milliamps: 100}`)],
    'series',
  ),
  joined(
    'each output counts its own watts: 0.9 + 1.2',
    pedal('A', 21, 100),
    [apart(1, '9/100', `${series}, total: {watts: 0.9}`), apart(1, '12/100', `${series}, total: {watts: 1.2}`)],
    'series',
    { total: 'total: {watts: 2.1}' },
  ),
  joined(
    'and is refused a milliwatt below',
    pedal('A', 21, 100),
    [apart(1, '9/100', series), apart(1, '12/100', series)],
    null,
    { total: 'total: {watts: 2.099}' },
  ),
  joined(
    'in its own bank, too',
    pedal('A', 21, 100),
    [apart(1, '9/100', series), apart(1, '12/100', `${series}, total: {watts: 1.199}`)],
    null,
  ),
  joined(
    'open-circuit volts add',
    eighteen(80, 'maxVolts: 23'),
    [apart(1, '9/100/11', series), apart(1, '9/100/12', series)],
    'series',
    { total: 'regulated: false' },
  ),
  joined(
    'and may not pass maxVolts',
    eighteen(80, 'maxVolts: 22.999'),
    [apart(1, '9/100/11', series), apart(1, '9/100/12', series)],
    null,
    { total: 'regulated: false' },
  ),
  joined('or reach an accepted voltage', pedal('A', '[18, 22]', 80), [apart(2, '9/100/11', series)], 'series', {
    total: 'regulated: false',
  }),
  joined(
    'the draw is that at the sum',
    pedal('A', '[9, 18]', '{9: 200, 18: 80}'),
    [apart(2, '9/100', series)],
    'series',
  ),
  joined(
    'AC outputs join where their maker allows it',
    '- {name: A, power: AC, volts: 18, milliamps: 80}',
    [
      '{outputs: 2, isolated: true, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}], joins: [series]}',
    ],
    'series',
  ),
  {
    says: 'outputs of two units are never joined',
    pedals: [eighteen(80)],
    supplies: [box('s', 10, [apart(1, '9/100', series)])],
    parts: leads,
    answer: impossible(),
  },
  {
    says: 'a join feeds one pedal',
    pedals: [eighteen(40), pedal('B', 18, 40)],
    supplies: [box('s', 10, [apart(2, '9/100', series)])],
    parts: [...leads, fan(5)],
    answer: plan('38.00', { bricks: 2, parts: 2 }),
  },
  {
    says: 'the outputs left over feed others',
    pedals: [eighteen(80), pedal('B', 9, 100)],
    supplies: [box('s', 10, [apart(3, '9/100', series)])],
    parts: leads,
    answer: plan('19.00', { parts: 1 }),
  },
  ...sharing(
    { pedals: [eighteen(80), pedal('B', 18, 80)], parts: leads },
    [
      'two joins in one supply',
      plan('28.00', { parts: 2 }, { parts: { stack: 2 } }),
      { supplies: [box('s', 10, [apart(4, '9/100', series)])] },
    ],
    [
      'three outputs make one join',
      plan('38.00', { bricks: 2, parts: 2 }),
      { supplies: [box('s', 10, [apart(3, '9/100', series)])] },
    ],
  ),
  ...sharing(
    { pedals: [eighteen(80)], parts: leads },
    [
      'a supply at the right volts may be cheaper than a join',
      plan('18.99', {}, { supplies: { t: 1 } }),
      { supplies: [box('s', 10, [apart(2, '9/100', series)]), adapter('t', 18.99, '18/80')] },
    ],
    [
      'at the same money the fewer parts win',
      plan('19.00', {}, { supplies: { t: 1 } }),
      { supplies: [box('s', 10, [apart(2, '9/100', series)]), adapter('t', 19, '18/80')] },
    ],
  ),
  {
    says: 'preferred volts are not worth a join lead that is owned',
    pedals: [pedal('A', '[9, 18]', 80, 'prefers: 18')],
    supplies: [box('s', 10, [apart(2, '9/100', series)])],
    parts: leads,
    board: 'owned: {parts: {stack: 1}}',
    answer: plan('10.00', { offPreferred: 1 }),
  },
];

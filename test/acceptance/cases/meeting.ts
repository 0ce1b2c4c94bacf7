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
  shared,
  stack,
  sharing,
  type Case,
} from './case.js';

const positive = 'polarity: centre-positive';
const digital = 'digital: true';
const highGain = 'highGain: true';
const series = 'joins: [series]';
const parallel = 'joins: [parallel]';
const named = (names: string, milliamps: number, more = '') =>
  Array.from(names, (name) => pedal(name, 9, milliamps, more));

/** Where two rules meet. */
export const meetingCases: readonly Case[] = [
  ...sharing(
    { supplies: [box('s', 10, [apart(2, '9/100', series)])], parts: [stack] },
    [
      'a pedal that is `alone` may have a join',
      plan('19.00', { parts: 1 }),
      { pedals: [pedal('A', 18, 80, 'alone: true')] },
    ],
    [
      '`chains: never` does not forbid joins',
      plan('19.00', { parts: 1 }),
      { pedals: [pedal('A', 18, 80)], policy: { chains: 'never' } },
    ],
  ),
  ...sharing(
    { supplies: [adapter('s', 10, '9/100/14', 'regulated: false, stock: 1')], parts: [fan(2)] },
    [
      'every pedal on an unregulated chain must survive',
      impossible(),
      { pedals: [pedal('A', 9, 50, 'maxVolts: 15'), pedal('B', 9, 50, 'maxVolts: 13.999')] },
    ],
    [
      'and when it does, it may',
      plan('18.00', { parts: 1 }),
      { pedals: [pedal('A', 9, 50, 'maxVolts: 15'), pedal('B', 9, 50, 'maxVolts: 14')] },
    ],
  ),
  {
    says: 'a chain on the common ground is exposed by an output beside it',
    pedals: [pedal('D', 9, 100, digital), pedal('H', 9, 10, highGain), pedal('I', 9, 10, highGain)],
    supplies: [box('s', 10, [shared(2, '9/100')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan('18.00', { exposed: 2, parts: 1 }, { exposed: ['h', 'i'] }),
  },
  {
    says: 'two noisy grounds in one supply add up',
    pedals: [
      pedal('D', 9, 100, digital),
      pedal('H', 9, 10, highGain),
      pedal('E', 9, 50, `${digital}, ${positive}`),
      pedal('I', 9, 10, `${highGain}, ${positive}`),
    ],
    supplies: [box('s', 10, [shared(2, '9/100'), apart(1, '9/100', positive)], 'stock: 1')],
    parts: [fan(2)],
    policy: { chains: 'allow' },
    answer: plan('18.00', { exposed: 2, parts: 1 }, { exposed: ['h', 'i'] }),
  },
  {
    says: 'an AC pedal on the common ground is exposed as well',
    pedals: [pedal('D', 9, 100, digital), '- {name: H, power: AC, volts: 9, milliamps: 10, highGain: true}'],
    supplies: [
      box(
        's',
        10,
        [
          shared(1, '9/100'),
          '{outputs: 1, isolated: false, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}]}',
        ],
        'stock: 1',
      ),
    ],
    answer: plan('10.00', { exposed: 1 }, { exposed: ['h'] }),
  },
  {
    says: 'a reversing chain on a switched output may be switched the other way',
    pedals: named('AB', 50),
    supplies: [box('s', 10, [apart(1, '9/100', 'polarity: either')], 'stock: 1')],
    parts: [fan(2, 'reverses: true')],
    answer: plan('18.00', { parts: 1 }, { feeds: { a: { polarity: 'centre-negative', parts: [] } } }),
  },
  {
    says: 'a reversing join lead and a reversing adapter cancel out',
    pedals: [pedal('A', 18, 80)],
    supplies: [box('s', 10, [apart(2, '9/100', series)])],
    parts: [stack.replace('joins', 'reverses: true, joins'), flip],
    answer: plan('23.00', { parts: 2 }, { feeds: { a: { polarity: 'centre-negative', parts: ['flip'] } } }),
  },
  ...sharing(
    { pedals: [pedal('A', 18, 100)], parts: [stack], policy: { headroom: '{alone: 1, chained: 1, supply: 1.2}' } },
    [
      '`supply` multiplies both halves of a series join',
      plan('19.00', { parts: 1 }),
      { supplies: [box('s', 10, [apart(2, '9/100', series)], 'total: {milliamps: 240}')] },
    ],
    [
      'and refuses them',
      impossible(),
      { supplies: [box('s', 10, [apart(2, '9/100', series)], 'total: {milliamps: 239.999}')] },
    ],
  ),
  {
    says: 'a parallel join counts its whole watts in either bank',
    pedals: [pedal('A', 9, 160)],
    supplies: [
      box(
        's',
        10,
        [apart(1, '9/100', `${parallel}, total: {watts: 1.44}`), apart(1, '9/60', `${parallel}, total: {watts: 1.44}`)],
        'total: {watts: 1.44}',
      ),
    ],
    parts: [pair],
    answer: plan('17.00', { parts: 1 }),
  },
  {
    says: 'and is refused by either',
    pedals: [pedal('A', 9, 160)],
    supplies: [
      box('s', 10, [
        apart(1, '9/100', `${parallel}, total: {watts: 1.44}`),
        apart(1, '9/60', `${parallel}, total: {watts: 1.439}`),
      ]),
    ],
    parts: [pair],
    answer: impossible(),
  },
  ...sharing(
    { supplies: [box('s', 10, [apart(3, '9/100', series)], 'total: {milliamps: 160}')], parts: [stack] },
    [
      'a join leaves the rest of the total to the others',
      plan('19.00', { parts: 1 }),
      { pedals: [pedal('A', 18, 50), pedal('B', 9, 60)] },
    ],
    [
      'and no more than the rest',
      plan('29.00', { bricks: 2, parts: 1 }),
      { pedals: [pedal('A', 18, 50), pedal('B', 9, 60.001)] },
    ],
  ),
  {
    says: 'a bank in a join keeps its one setting',
    pedals: [pedal('A', 18, 80), pedal('B', 12, 80)],
    supplies: [box('s', 10, [apart(3, '9/100 12/100', `switch: together, ${series}`)])],
    parts: [stack],
    answer: plan('29.00', { bricks: 2, parts: 1 }),
  },
  {
    says: 'a join across banks binds both',
    pedals: [pedal('A', 21, 80), pedal('B', 9, 80), pedal('C', 12, 80)],
    supplies: [
      box('s', 10, [
        apart(2, '9/100 12/100', `switch: together, ${series}`),
        apart(2, '9/100 12/100', `switch: together, ${series}`),
      ]),
    ],
    parts: [stack],
    answer: plan('19.00', { parts: 1 }),
  },
  {
    says: 'adapters on tails and on single outputs come from one stock',
    pedals: [...named('AB', 50, 'inlet: jack-3.5'), pedal('C', 9, 500, 'inlet: jack-3.5')],
    supplies: [box('s', 10, [apart(1, '9/100'), apart(1, '9/500')], 'stock: 1')],
    parts: [fan(2), mini.replace('}', ', stock: 2}')],
    answer: impossible(),
  },
  {
    says: 'a startup may need the stronger output',
    pedals: [pedal('A', 9, 10, 'startup: 200'), pedal('B', 9, 100)],
    supplies: [box('s', 10, [apart(1, '9/100'), apart(1, '9/200')])],
    answer: plan('10.00', {}, { feeds: { a: { outputs: [2] }, b: { outputs: [1] } } }),
  },
  {
    says: 'guesses in a map, on a chain, at the volts of the chain',
    pedals: [pedal('A', '[9, 12]', '{9: 100, 12: 60}', 'figure: guess'), pedal('B', '[9, 12]', '{9: 100, 12: 60}')],
    supplies: [box('s', 10, [apart(1, '9/249.999 12/150', 'switch: each')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan('18.00', { parts: 1 }, { feeds: { a: { volts: 12 } } }),
  },
  {
    says: 'AC counts in totals',
    pedals: [pedal('A', 9, 100), '- {name: B, power: AC, volts: 9, milliamps: 100}'],
    supplies: [
      box(
        's',
        10,
        [
          apart(1, '9/100'),
          '{outputs: 1, isolated: true, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}]}',
        ],
        'total: {watts: 1.799}',
      ),
    ],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'outputs on the common ground with joins allowed by a careless label are still not joined',
    pedals: [pedal('A', 18, 80)],
    supplies: [box('s', 10, [shared(2, '9/100', series)])],
    parts: [stack],
    answer: impossible(),
  },
  {
    says: 'common-ground outputs chain',
    pedals: named('ABCD', 50),
    supplies: [box('s', 10, [shared(2, '9/100')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan('26.00', { parts: 2 }),
  },
  {
    says: 'both grounds on one supply: one sort on a chain apart, the other on the common ground',
    pedals: [...named('AB', 20, 'ground: positive'), ...named('CD', 20)],
    supplies: [box('s', 10, [shared(2, '9/100'), apart(1, '9/100')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan('18.00', { parts: 1 }, { parts: { fan: 1 } }),
  },
];

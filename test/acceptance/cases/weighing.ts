import { adapter, apart, box, fan, flip, pedal, plan, shared, sharing, type Case } from './case.js';

const positive = 'polarity: centre-positive';
const digital = 'digital: true';
const highGain = 'highGain: true';
const named = (names: string, milliamps: number, more = '') =>
  Array.from(names, (name) => pedal(name, 9, milliamps, more));

/** Where two aims meet. */
export const weighingCases: readonly Case[] = [
  {
    says: 'two owned adapters beat a bought one',
    pedals: [pedal('A', 9, 100, 'inlet: odd')],
    supplies: [adapter('s', 10, '9/100')],
    parts: [
      '- {id: x, name: x, price: 9, fits: barrel-2.1, gives: mid}',
      '- {id: y, name: y, price: 9, fits: mid, gives: odd}',
      '- {id: z, name: z, price: 0.01, fits: barrel-2.1, gives: odd}',
    ],
    board: 'owned: {parts: {x: 1, y: 1}}',
    answer: plan('10.00', { parts: 2 }, { parts: {} }),
  },
  {
    says: 'and a bought one helps the second pedal',
    pedals: named('AB', 50, 'inlet: odd'),
    supplies: [box('s', 10, [apart(2, '9/100')])],
    parts: [
      '- {id: x, name: x, price: 9, fits: barrel-2.1, gives: mid}',
      '- {id: y, name: y, price: 9, fits: mid, gives: odd}',
      '- {id: z, name: z, price: 0.01, fits: barrel-2.1, gives: odd}',
    ],
    board: 'owned: {parts: {x: 1, y: 1}}',
    answer: plan('10.01', { parts: 3 }, { parts: { z: 1 } }),
  },
  ...sharing(
    { pedals: named('AB', 50), parts: [fan(2)] },
    [
      'a chain that is owned saves a supply',
      plan('10.00', { parts: 1 }, { parts: {} }),
      { supplies: [adapter('s', 10, '9/100')], board: 'owned: {parts: {fan: 1}}' },
    ],
    [
      'a chain that saves less than it costs is not bought',
      plan('15.98', { bricks: 2 }),
      { supplies: [adapter('s', 7.99, '9/100')] },
    ],
  ),
  ...sharing(
    {
      pedals: [pedal('D', 9, 50, digital), pedal('H', 9, 50, highGain)],
      supplies: [adapter('s', 10, '9/100')],
      parts: [fan(2)],
    },
    ['noise is weighed on chains, too: 10 + 8 + 20 is more than 20', plan('20.00', { bricks: 2 })],
    ['10 + 8 + 1.99 is less', plan('18.00', { exposed: 1, parts: 1 }), { policy: { noisePrice: '1.99' } }],
    ['10 + 8 + 2 ties, and one brick wins', plan('18.00', { exposed: 1, parts: 1 }), { policy: { noisePrice: '2' } }],
  ),
  {
    says: 'the chains go round the noise',
    pedals: [
      pedal('D', 9, 50, digital),
      pedal('E', 9, 50, digital),
      pedal('H', 9, 50, highGain),
      pedal('I', 9, 50, highGain),
    ],
    supplies: [adapter('s', 10, '9/100')],
    parts: [fan(2)],
    policy: { noisePrice: '0.01', bricks: '2' },
    answer: plan('36.00', { bricks: 2, parts: 2 }, { exposed: [] }),
  },
  {
    says: 'a tie of noise and money goes to the fewer parts, not to the fewer exposed',
    pedals: [pedal('D', 9, 50, digital), pedal('H', 9, 50, `${highGain}, ${positive}`)],
    supplies: [
      box('quiet', 20, [apart(2, '9/100')], 'stock: 1'),
      box('noisy', 22, [shared(2, '9/100', 'polarity: either')], 'stock: 1'),
    ],
    parts: [flip],
    policy: { noisePrice: '2' },
    answer: plan('22.00', { exposed: 1, parts: 0 }, { supplies: { noisy: 1 } }),
  },
  {
    says: 'in a partial plan the cheaper pedal is powered',
    pedals: [pedal('A', 9, 500), pedal('B', 9, 100)],
    supplies: [adapter('strong', 30, '9/500'), adapter('weak', 10, '9/100')],
    policy: { bricks: '1' },
    partial: true,
    answer: plan('10.00', { unpowered: 1 }, { unpowered: ['a'] }),
  },
  {
    says: 'unless both go by one chain',
    pedals: [pedal('A', 9, 400), pedal('B', 9, 100)],
    supplies: [adapter('strong', 30, '9/500'), adapter('weak', 10, '9/100')],
    parts: [fan(2)],
    policy: { bricks: '1' },
    partial: true,
    answer: plan('38.00', { parts: 1 }),
  },
  {
    says: 'in a partial plan noise decides who stays off, too',
    pedals: [pedal('D', 9, 50, digital), pedal('H', 9, 50, highGain), pedal('P', 9, 50)],
    supplies: [box('s', 10, [shared(2, '9/100')], 'stock: 1')],
    partial: true,
    policy: { chains: 'never' },
    answer: plan('10.00', { unpowered: 1 }, { exposed: [] }),
  },
  {
    says: 'quiet in part: powered pedals come before quiet ones',
    pedals: [pedal('D', 9, 50, digital), pedal('H', 9, 50, highGain)],
    supplies: [box('s', 10, [shared(2, '9/100')], 'stock: 1')],
    aim: 'quiet',
    partial: true,
    answer: plan('10.00', { exposed: 1 }),
  },
  ...sharing(
    {
      pedals: named('ABCD', 100),
      supplies: [
        box('own', 99, [apart(2, '9/100')], 'stock: 0'),
        box('big', 30, [apart(4, '9/100')]),
        adapter('s', 1, '9/100'),
      ],
      board: 'owned: {supplies: [own]}',
    },
    ['bricks: owned and bought units count alike', plan('30.00', {}, { supplies: { big: 1 } }), { aim: 'bricks' }],
    ['cost: the same board keeps what it owns', plan('2.00', { bricks: 3 }, { supplies: { s: 2 } })],
  ),
  {
    says: 'a budget may force bricks',
    pedals: named('ABCD', 100),
    supplies: [box('big', 30, [apart(4, '9/100')]), adapter('s', 5, '9/100')],
    aim: 'bricks',
    policy: { budget: '29.99' },
    answer: plan('20.00', { bricks: 4 }),
  },
  {
    says: 'preferred volts decide between two settings that both fit, chain by chain',
    pedals: [
      pedal('A', '[9, 12]', 50, 'prefers: 12'),
      pedal('B', '[9, 12]', 50, 'prefers: 9'),
      pedal('C', '[9, 12]', 50, 'prefers: 9'),
    ],
    supplies: [box('s', 10, [apart(1, '9/500 12/500', 'switch: each')], 'stock: 1')],
    parts: [fan(3)],
    answer: plan('18.00', { parts: 1, offPreferred: 1 }, { feeds: { a: { volts: 9 }, b: { volts: 9 } } }),
  },
  {
    says: 'chains form by preference when it costs nothing',
    pedals: [
      pedal('A', '[9, 12]', 50, 'prefers: 12'),
      pedal('B', '[9, 12]', 50, 'prefers: 9'),
      pedal('C', '[9, 12]', 50, 'prefers: 9'),
      pedal('D', '[9, 12]', 50, 'prefers: 12'),
    ],
    supplies: [box('s', 10, [apart(2, '9/500 12/500', 'switch: each')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan(
      '26.00',
      { parts: 2 },
      { feeds: { a: { volts: 12 }, b: { volts: 9 }, c: { volts: 9 }, d: { volts: 12 } } },
    ),
  },
];

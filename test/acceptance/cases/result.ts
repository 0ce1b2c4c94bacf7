import { adapter, apart, box, fan, impossible, pedal, plan, shared, sharing, type Case } from './case.js';

const one = [pedal('A', 9, 100)];

export const moneyCases: readonly Case[] = [
  ...sharing(
    { currency: 'JPY', pedals: one, policy: { noisePrice: '2000', budget: '1500' } },
    ['yen have no decimals', plan('1500'), { supplies: [adapter('s', 1500, '9/100')] }],
    [
      'a yen over the budget',
      impossible({ limit: 'budget', allowed: '1500', needed: '1501' }),
      { supplies: [adapter('s', 1501, '9/100')] },
    ],
  ),
  ...sharing(
    { currency: 'KWD', pedals: [...one, pedal('B', 9, 100)], supplies: [adapter('s', 1.005, '9/100')] },
    ['dinars of Kuwait have three', plan('2.010', { bricks: 2 }), { policy: { budget: '2.01' } }],
    [
      'and are counted to the last',
      impossible({ limit: 'budget', allowed: '2.009', needed: '2.010' }),
      { policy: { budget: '2.009' } },
    ],
  ),
  {
    says: 'a mill decides',
    currency: 'KWD',
    pedals: one,
    supplies: [adapter('s', 1.005, '9/100'), adapter('t', 1.004, '9/100')],
    answer: plan('1.004', {}, { supplies: { t: 1 } }),
  },
  {
    says: '0.10 and 0.20 are 0.30',
    pedals: [pedal('A', 9, 100), pedal('B', 12, 100)],
    supplies: [adapter('s', 0.1, '9/100'), adapter('t', '0.2', '12/100')],
    policy: { budget: '0.3' },
    answer: plan('0.30', { bricks: 2 }),
  },
  {
    says: 'what is free costs nothing',
    pedals: one,
    supplies: [adapter('s', 0, '9/100')],
    policy: { budget: '0' },
    answer: plan('0.00', {}, { supplies: { s: 1 } }),
  },
  {
    says: 'large sums stay exact',
    pedals: one,
    supplies: [adapter('s', '90071992.01', '9/100'), adapter('t', '90071992.02', '9/100')],
    answer: plan('90071992.01'),
  },
];

const wholeAssumption = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' };
const stated = 'power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative';
const bank =
  '{outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 100}]}';
const statedBox = box('s', 10, [bank], 'regulated: true');

export const confirmCases: readonly Case[] = [
  {
    says: 'what is all stated needs no confirmation',
    pedals: [pedal('A', 9, 100, stated)],
    supplies: [statedBox],
    answer: plan('10.00', {}, { confirm: [] }),
  },
  {
    says: 'every assumed field of a pedal is listed',
    pedals: one,
    supplies: [statedBox],
    answer: plan('10.00', {}, { confirm: [{ pedal: 'a', assumed: wholeAssumption }] }),
  },
  {
    says: 'and none that is stated',
    pedals: [pedal('A', 9, 100, 'ground: negative, power: DC')],
    supplies: [statedBox],
    answer: plan(
      '10.00',
      {},
      { confirm: [{ pedal: 'a', assumed: { polarity: 'centre-negative', inlet: 'barrel-2.1' } }] },
    ),
  },
  {
    says: 'an AC pedal is not assumed to have a polarity',
    pedals: ['- {name: A, power: AC, volts: 9, milliamps: 100}'],
    supplies: [
      box('s', 10, [
        '{outputs: 1, isolated: true, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}]}',
      ]),
    ],
    answer: plan('10.00', {}, { confirm: [{ pedal: 'a', assumed: { inlet: 'barrel-2.1', ground: 'negative' } }] }),
  },
];

const many = (count: number, milliamps = 100) =>
  Array.from({ length: count }, (_, index) => pedal(`P${index + 1}`, 9, milliamps));

export const nameCases: readonly Case[] = [
  {
    says: 'ids are made from names',
    pedals: [pedal('Tarn Fuzz II', 9, 100)],
    supplies: [adapter('s', 10, '9/100')],
    answer: plan('10.00', {}, { feeds: { 'tarn-fuzz-ii': { supply: 's' } } }),
  },
  {
    says: 'a stated id counts',
    pedals: [pedal('Tarn Fuzz II', 9, 100, 'id: fuzz')],
    supplies: [adapter('s', 10, '9/100')],
    answer: plan('10.00', {}, { feeds: { fuzz: { supply: 's' } } }),
  },
  {
    says: 'supplies and parts may go without an id',
    pedals: many(2),
    supplies: [
      '- {name: Mole Head, price: 10, stock: 1, banks: [{outputs: 1, isolated: true, settings: [{volts: 9, milliamps: 200}]}]}',
    ],
    parts: ['- {name: Two Tails, price: 1, fits: barrel-2.1, gives: barrel-2.1, tails: 2}'],
    answer: plan(
      '11.00',
      { parts: 1 },
      {
        supplies: { 'mole-head': 1 },
        parts: { 'two-tails': 1 },
        feeds: { p1: { supply: 'mole-head', chain: 'two-tails' } },
      },
    ),
  },
  {
    says: 'outputs are numbered through the banks',
    pedals: [pedal('A', 12, 100)],
    supplies: [box('s', 10, [apart(3, '9/100'), shared(2, '18/100'), apart(1, '12/100')])],
    answer: plan('10.00', {}, { feeds: { a: { outputs: [6], unit: 1 } } }),
  },
];

/** Numbers beyond what a double holds when volts, milliamps and factors are multiplied out. */
export const exactnessCases: readonly Case[] = [
  {
    says: '24.001 V × 1000.001 mA × 1.001 × 1.001 are 24.0491… W: 24.05 W will do',
    pedals: [pedal('A', 24.001, 1000.001, 'figure: guess')],
    supplies: [adapter('s', 10, '24.001/2000', 'total: {watts: 24.05}')],
    policy: { guess: '1.001', headroom: '{alone: 1.001, chained: 1, supply: 1.001}' },
    answer: plan('10.00'),
  },
  {
    says: 'and 24.049 W will not',
    pedals: [pedal('A', 24.001, 1000.001, 'figure: guess')],
    supplies: [adapter('s', 10, '24.001/2000', 'total: {watts: 24.049}')],
    policy: { guess: '1.001', headroom: '{alone: 1.001, chained: 1, supply: 1.001}' },
    answer: impossible({ rule: 'total' }),
  },
  {
    says: 'three of them are 72.147… W: one unit of 72.148 W',
    pedals: ['A', 'B', 'C'].map((name) => pedal(name, 24.001, 1000.001, 'figure: guess')),
    supplies: [box('s', 10, [apart(3, '24.001/2000')], 'total: {watts: 72.148}')],
    policy: { guess: '1.001', headroom: '{alone: 1.001, chained: 1, supply: 1.001}' },
    answer: plan('10.00'),
  },
  {
    says: 'and two units of 72.147 W',
    pedals: ['A', 'B', 'C'].map((name) => pedal(name, 24.001, 1000.001, 'figure: guess')),
    supplies: [box('s', 10, [apart(3, '24.001/2000')], 'total: {watts: 72.147}')],
    policy: { guess: '1.001', headroom: '{alone: 1.001, chained: 1, supply: 1.001}' },
    answer: plan('20.00', { bricks: 2 }),
  },
  ...sharing(
    {
      pedals: [pedal('A', 9, 33.333, 'figure: guess'), pedal('B', 9, 44.444, 'figure: guess')],
      parts: [fan(2)],
      policy: { guess: '1.037', headroom: '{alone: 1.117, chained: 1.913, supply: 1}' },
    },
    [
      'a chain of guesses with odd factors: (33.333 + 44.444) × 1.037 × 1.913 is 154.2925…',
      plan('18.00', { parts: 1 }),
      { supplies: [adapter('s', 10, '9/154.293', 'stock: 1')] },
    ],
    ['and does not fit 154.292 mA', impossible(), { supplies: [adapter('s', 10, '9/154.292', 'stock: 1')] }],
  ),
];

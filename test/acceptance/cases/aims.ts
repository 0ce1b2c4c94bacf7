import { adapter, apart, box, fan, flip, pedal, plan, shared, stack, sharing, type Case } from './case.js';

const noisy = [pedal('D', 9, 100, 'digital: true'), pedal('H', 9, 10, 'highGain: true')];
/** The cheap way is noisy, two adapters are quiet but two bricks, the dear box is quiet and one brick. */
const noisyShop = [
  box('cheap', 20, [shared(2, '9/100')]),
  adapter('wall', 12, '9/100'),
  box('dear', 43, [apart(2, '9/100')]),
];
const noise = (says: string, aim: NonNullable<Case['aim']>, noisePrice: string, answer: Case['answer']): Case => ({
  says,
  pedals: noisy,
  supplies: noisyShop,
  aim,
  policy: { noisePrice },
  answer,
});
const cheap = plan('20.00', { exposed: 1 }, { supplies: { cheap: 1 }, exposed: ['h'] });
const walls = plan('24.00', { bricks: 2 }, { supplies: { wall: 2 }, exposed: [] });
const dear = plan('43.00', {}, { supplies: { dear: 1 } });

export const noiseCases: readonly Case[] = [
  noise('cost: 20 + 20 is more than 24', 'cost', '20', walls),
  noise('cost: 20 + 3.99 is less than 24', 'cost', '3.99', cheap),
  noise('cost: 20 + 4 ties with 24, and fewer bricks decide', 'cost', '4', cheap),
  noise('cost: 20 + 4.01 is more than 24', 'cost', '4.01', walls),
  noise('cost: noise may be free', 'cost', '0', cheap),
  noise('bricks: one brick, and 20 + 20 is less than 43', 'bricks', '20', cheap),
  noise('bricks: one brick, and 20 + 22.99 is less than 43', 'bricks', '22.99', cheap),
  noise('bricks: one brick, and 20 + 23.01 is more than 43', 'bricks', '23.01', dear),
  noise('quiet: nobody exposed, and then the money', 'quiet', '0', walls),
  {
    says: 'cost: a tie of noise and money with as many bricks is decided by the parts',
    pedals: noisy,
    supplies: [
      box('cheap', 20, [shared(2, '9/100')]),
      box('dear', 24, [apart(1, '9/100'), apart(1, '9/100', 'polarity: centre-positive')]),
    ],
    parts: [flip],
    board: 'owned: {parts: {flip: 1}}',
    policy: { noisePrice: '4' },
    answer: plan('20.00', { exposed: 1 }),
  },
  {
    says: 'quiet: fewer exposed are worth any money',
    pedals: [...noisy, pedal('I', 9, 10, 'highGain: true')],
    supplies: [box('cheap', 1, [shared(3, '9/100')], 'stock: 1'), adapter('wall', 500, '9/100', 'stock: 1')],
    aim: 'quiet',
    policy: { noisePrice: '0' },
    answer: plan('501.00', { bricks: 2 }, { exposed: [] }),
  },
  ...sharing(
    {
      pedals: [...noisy, pedal('I', 9, 10, 'highGain: true')],
      supplies: [box('cheap', 10, [shared(3, '9/100')], 'stock: 1'), box('dear', 20, [apart(3, '9/100')])],
    },
    ['cost: two exposed count twice', plan('20.00', {}, { supplies: { dear: 1 } }), { policy: { noisePrice: '5.01' } }],
    [
      'cost: twice 4.99 is less than 10',
      plan('10.00', { exposed: 2 }, { exposed: ['h', 'i'] }),
      { policy: { noisePrice: '4.99' } },
    ],
  ),
];

const two = [pedal('A', 9, 100), pedal('B', 9, 100)];

export const orderCases: readonly Case[] = [
  {
    says: 'cost: money before bricks',
    pedals: two,
    supplies: [adapter('s', 9.99, '9/100'), box('brick', 19.99, [apart(2, '9/100')])],
    answer: plan('19.98', { bricks: 2 }),
  },
  ...sharing(
    { pedals: two, aim: 'bricks' },
    [
      'bricks: bricks before money',
      plan('190.00'),
      { supplies: [adapter('s', 9.99, '9/100'), box('brick', 190, [apart(2, '9/100')])] },
    ],
    [
      'bricks: then money',
      plan('40.00', {}, { supplies: { cheap: 1 } }),
      { supplies: [box('cheap', 40, [apart(2, '9/100')]), box('brick', 50, [apart(2, '9/100')])] },
    ],
  ),
  ...sharing(
    { pedals: two, parts: [fan(2)] },
    [
      'cost: bricks break a tie of money, before parts',
      plan('16.00', { parts: 1 }, { supplies: { s: 1 }, parts: { fan: 1 } }),
      { supplies: [adapter('s', 8, '9/200')] },
    ],
    [
      'cost: a cent less beats a brick less',
      plan('15.98', { bricks: 2 }, { supplies: { s: 2 } }),
      { supplies: [adapter('s', 7.99, '9/200')] },
    ],
  ),
  {
    says: 'cost: parts break a tie of money and bricks, owned parts too',
    pedals: [pedal('A', 9, 100, 'polarity: centre-positive')],
    supplies: [box('s', 10, [apart(1, '9/100'), apart(1, '9/100', 'polarity: centre-positive')])],
    parts: [flip],
    board: 'owned: {parts: {flip: 1}}',
    answer: plan('10.00', {}, { feeds: { a: { outputs: [2], parts: [] } } }),
  },
  {
    says: 'cost: preferred volts come last and are free',
    pedals: [pedal('A', '[9, 18]', 50, 'prefers: 18')],
    supplies: [box('s', 10, [apart(1, '9/100 18/100', 'switch: each')])],
    answer: plan('10.00', {}, { feeds: { a: { volts: 18 } } }),
  },
  {
    says: 'cost: preferred volts are not worth a cent',
    pedals: [pedal('A', '[9, 18]', 50, 'prefers: 18')],
    supplies: [adapter('s', 10, '9/100'), adapter('t', 10.01, '18/100')],
    answer: plan('10.00', { offPreferred: 1 }),
  },
  {
    says: 'cost: at the same money they decide',
    pedals: [pedal('A', '[9, 18]', 50, 'prefers: 18')],
    supplies: [adapter('s', 10, '9/100'), adapter('t', 10, '18/100')],
    answer: plan('10.00', {}, { supplies: { t: 1 } }),
  },
  {
    says: 'no preference is never off',
    pedals: [pedal('A', '[9, 18]', 50)],
    supplies: [adapter('s', 10, '9/100')],
    answer: plan('10.00'),
  },
  {
    says: 'a preference for a range',
    pedals: [pedal('A', '{from: 9, to: 18}', 50, 'prefers: 12.5')],
    supplies: [adapter('s', 10, '9/100'), adapter('t', 10, '12.5/100'), adapter('u', 10, '18/100')],
    answer: plan('10.00', {}, { supplies: { t: 1 } }),
  },
  {
    says: 'each pedal off its preference counts',
    pedals: [
      pedal('A', '[9, 12]', 50, 'prefers: 12'),
      pedal('B', '[9, 12]', 50, 'prefers: 12'),
      pedal('C', '[9, 12]', 50, 'prefers: 9'),
    ],
    supplies: [box('s', 10, [apart(3, '9/100 12/100', 'switch: together')])],
    answer: plan('10.00', { offPreferred: 1 }, { feeds: { a: { volts: 12 }, c: { volts: 12 } } }),
  },
  {
    says: 'an unpowered pedal is not off its preference',
    pedals: [pedal('A', '[12, 18]', 50, 'prefers: 18'), pedal('B', 9, 50)],
    supplies: [adapter('s', 10, '9/100')],
    partial: true,
    answer: plan('10.00', { unpowered: 1 }, { unpowered: ['a'] }),
  },
  ...sharing(
    {
      pedals: two,
      supplies: [adapter('s', 9, '9/100'), box('brick', 1, [apart(2, '9/100')])],
      board: 'owned: {supplies: [s, s]}',
    },
    ['cost: what is owned is free, though it is more bricks', plan('0.00', { bricks: 2 })],
    [
      'bricks: a box is bought though adapters are owned',
      plan('1.00', {}, { supplies: { brick: 1 } }),
      { aim: 'bricks' },
    ],
  ),
  {
    says: 'owned units that are not needed are no bricks',
    pedals: [pedal('A', 9, 100)],
    supplies: [adapter('s', 9, '9/100')],
    board: 'owned: {supplies: [s, s, s]}',
    answer: plan('0.00', { bricks: 1 }, { feeds: { a: { supply: 's', unit: 1 } } }),
  },
  ...sharing(
    { pedals: [pedal('A', 18, 80)], parts: [stack], aim: 'bricks' },
    [
      'bricks: money before parts',
      plan('19.00', { parts: 1 }),
      { supplies: [box('s', 10, [apart(2, '9/100', 'joins: [series]')]), adapter('t', 19.01, '18/100')] },
    ],
    [
      'bricks: parts break the tie',
      plan('19.00', { parts: 0 }),
      { supplies: [box('s', 10, [apart(2, '9/100', 'joins: [series]')]), adapter('t', 19, '18/100')] },
    ],
  ),
  ...sharing(
    { pedals: two, aim: 'quiet' },
    [
      'quiet: without noise it is money, then bricks',
      plan('20.00', { bricks: 1 }),
      { supplies: [adapter('s', 10, '9/100'), box('brick', 20, [apart(2, '9/100')])] },
    ],
    [
      'quiet: money before bricks',
      plan('19.98', { bricks: 2 }),
      { supplies: [adapter('s', 9.99, '9/100'), box('brick', 20, [apart(2, '9/100')])] },
    ],
  ),
  {
    says: 'quiet: preferred volts last',
    pedals: [pedal('A', '[9, 12]', 50, 'prefers: 12')],
    supplies: [box('s', 10, [apart(1, '9/100 12/100', 'switch: each')])],
    aim: 'quiet',
    answer: plan('10.00'),
  },
  {
    says: 'greed does not pay: the best box first is dearer than two others',
    pedals: [...two, pedal('C', 12, 100), pedal('E', 12, 100)],
    supplies: [
      box('mixed', 15, [apart(1, '9/100'), apart(1, '12/100'), apart(1, '9/100')]),
      box('nines', 11, [apart(2, '9/100')]),
      box('twelves', 11, [apart(2, '12/100')]),
    ],
    answer: plan('22.00', { bricks: 2 }, { supplies: { nines: 1, twelves: 1 } }),
  },
];

export const packingCases: readonly Case[] = [
  {
    says: 'chains pack: 60+40, 70+30, 50+50 on outputs of 100',
    pedals: [60, 70, 50, 50, 30, 40].map((milliamps, index) => pedal(`P${index + 1}`, 9, milliamps)),
    supplies: [box('s', 10, [apart(3, '9/100')], 'stock: 1')],
    parts: [fan(2)],
    answer: plan('34.00', { parts: 3 }),
  },
  {
    says: 'one milliamp too many does not pack',
    pedals: [60, 70, 50, 50, 30, '40.001'].map((milliamps, index) => pedal(`P${index + 1}`, 9, milliamps)),
    supplies: [box('s', 10, [apart(3, '9/100')], 'stock: 1')],
    parts: [fan(2)],
    partial: true,
    answer: plan('26.00', { parts: 2, unpowered: 1 }),
  },
  {
    says: 'a total splits like a knapsack: 5+4+3 and 6+4+2 of 12',
    pedals: [6, 5, 4, 4, 3, 2].map((milliamps, index) => pedal(`P${index + 1}`, 9, milliamps)),
    supplies: [box('s', 10, [apart(3, '9/100')], 'total: {milliamps: 12}')],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'strong outputs are kept for those that need them',
    pedals: [pedal('A', 9, 100), pedal('B', 9, 300), pedal('C', 9, 50)],
    supplies: [box('s', 10, [apart(1, '9/300'), apart(1, '9/50'), apart(1, '9/100')])],
    answer: plan('10.00', {}, { feeds: { a: { outputs: [3] }, b: { outputs: [1] }, c: { outputs: [2] } } }),
  },
];

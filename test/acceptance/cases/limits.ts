import { adapter, apart, box, fan, impossible, pedal, plan, sharing, type Case } from './case.js';

const two = [pedal('A', 9, 100), pedal('B', 9, 100)];
const budget = (amount: string) => ({ budget: amount });

export const limitCases: readonly Case[] = [
  ...sharing(
    { pedals: two, supplies: [adapter('s', 9.5, '9/100')] },
    ['a budget may be spent to the cent', plan('19.00', { bricks: 2 }), { policy: budget('19') }],
    [
      'and not a cent more',
      impossible({ kind: 'limit', limit: 'budget', allowed: '18.99', needed: '19.00' }),
      { policy: budget('18.99') },
    ],
  ),
  {
    says: 'leads count in the budget',
    pedals: two,
    supplies: [adapter('s', 9.5, '9/1000', 'stock: 1')],
    parts: [fan(2)],
    policy: budget('17.49'),
    answer: impossible({ kind: 'limit', limit: 'budget', allowed: '17.49', needed: '17.50' }),
  },
  {
    says: 'a budget of 0 allows what is owned',
    pedals: two,
    supplies: [adapter('s', 9.5, '9/100')],
    policy: budget('0'),
    board: 'owned: {supplies: [s, s]}',
    answer: plan('0.00', { bricks: 2 }),
  },
  {
    says: 'the noise price is not in the budget',
    pedals: [pedal('A', 9, 100, 'digital: true'), pedal('B', 9, 100, 'highGain: true')],
    supplies: [box('s', 10, ['{outputs: 2, isolated: false, settings: [{volts: 9, milliamps: 100}]}'], 'stock: 1')],
    policy: budget('10'),
    answer: plan('10.00', { exposed: 1 }),
  },
  ...sharing(
    {
      pedals: [pedal('A', 9, 100, 'digital: true'), pedal('B', 9, 100, 'highGain: true')],
      supplies: [
        box('cheap', 10, ['{outputs: 2, isolated: false, settings: [{volts: 9, milliamps: 100}]}'], 'stock: 1'),
        box('dear', 20, [apart(2, '9/100')]),
      ],
    },
    [
      'a budget may force noise upon the board',
      plan('10.00', { exposed: 1 }, { supplies: { cheap: 1 } }),
      { policy: { budget: '19.99', noisePrice: '1000' }, aim: 'quiet' },
    ],
    [
      'and lifts it when it is met',
      plan('20.00', {}, { supplies: { dear: 1 } }),
      { policy: { budget: '20', noisePrice: '1000' } },
    ],
  ),
  ...sharing(
    { pedals: two, supplies: [adapter('s', 5, '9/100'), box('brick', 30, [apart(2, '9/100')])] },
    ['bricks are capped', plan('30.00'), { policy: { bricks: '1' } }],
    ['a cap on bricks may be met', plan('10.00', { bricks: 2 }), { policy: { bricks: '2' } }],
  ),
  ...sharing(
    { pedals: two, supplies: [adapter('s', 5, '9/100')], policy: { bricks: '1' } },
    ['the cap on bricks is the reason', impossible({ kind: 'limit', limit: 'bricks', allowed: 1, needed: 2 })],
    [
      'owned units are bricks, too',
      impossible({ kind: 'limit', limit: 'bricks' }),
      { board: 'owned: {supplies: [s, s]}' },
    ],
  ),
  {
    says: 'every supply takes one socket',
    pedals: two,
    supplies: [adapter('s', 5, '9/100'), box('brick', 30, [apart(2, '9/100')])],
    policy: { sockets: '1' },
    answer: plan('30.00'),
  },
  ...sharing(
    { pedals: two, supplies: [adapter('s', 5, '9/100')] },
    ['sockets may be used up', plan('10.00', { bricks: 2 }), { policy: { sockets: '2' } }],
    [
      'sockets are the reason',
      impossible({ kind: 'limit', limit: 'sockets', allowed: 1, needed: 2 }),
      { policy: { sockets: '1' } },
    ],
    [
      'no sockets, no plan',
      impossible({ kind: 'limit', limit: 'sockets', allowed: 0, needed: 2 }),
      { policy: { sockets: '0' } },
    ],
  ),
  ...sharing(
    { pedals: [...two, pedal('C', 9, 100)], supplies: [adapter('s', 5, '9/100')], partial: true },
    ['a partial plan keeps to the limits', plan('10.00', { bricks: 2, unpowered: 1 }), { policy: { bricks: '2' } }],
    ['a partial plan keeps to the budget', plan('10.00', { bricks: 2, unpowered: 1 }), { policy: budget('14.99') }],
  ),
  {
    says: 'a partial plan of nothing is a plan',
    pedals: two,
    supplies: [adapter('s', 5, '12/100')],
    partial: true,
    answer: plan('0.00', { bricks: 0, unpowered: 2 }, { unpowered: ['a', 'b'] }),
  },
  {
    says: 'a partial plan powers as many as can be, whatever it costs',
    pedals: [pedal('A', 9, 300), pedal('B', 9, 100), pedal('C', 9, 100)],
    supplies: [box('s', 100, [apart(2, '9/100')], 'stock: 1'), adapter('t', 1, '9/300', 'stock: 1')],
    policy: { bricks: '1' },
    partial: true,
    answer: plan('100.00', { unpowered: 1 }, { unpowered: ['a'] }),
  },
  {
    says: 'a plan that powers all is found even when a partial one would do',
    pedals: two,
    supplies: [adapter('s', 50, '9/100')],
    partial: true,
    answer: plan('100.00', { bricks: 2 }, { unpowered: [] }),
  },
];

import { adapter, apart, box, flip, impossible, mini, pedal, plan, sharing, type Case } from './case.js';

/** Gear that no catalogue lists. */
const loft =
  'gear: {supplies: [{id: loft, name: Loft, regulated: true, banks: [{outputs: 1, isolated: true, power: DC, ' +
  'plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 100}]}]}]}';

const venue = { mains: '230' };
const mains = (says: string, more: string, policy: Case['policy'], fits: boolean): Case => ({
  says,
  pedals: [pedal('A', 9, 100)],
  supplies: [adapter('s', 10, '9/100', more)],
  ...(policy === undefined ? {} : { policy }),
  answer: fits ? plan('10.00') : impossible({ rule: 'mains' }),
});

export const mainsCases: readonly Case[] = [
  mains('the venue may stand at the upper end', 'mains: {from: 100, to: 230}', venue, true),
  mains('and not a millivolt above', 'mains: {from: 100, to: 229.999}', venue, false),
  mains('the venue may stand at the lower end', 'mains: {from: 230, to: 240}', venue, true),
  mains('and not a millivolt below', 'mains: {from: 230.001, to: 240}', venue, false),
  mains('a supply that does not state its mains is refused at a stated venue', '', venue, false),
  mains('and not where no venue is stated', '', undefined, true),
  mains('whatever a supply states is fine where no venue is stated', 'mains: {from: 100, to: 120}', undefined, true),
  {
    says: 'an owned supply is not above the mains',
    pedals: [pedal('A', 9, 100)],
    supplies: [
      adapter('old', 1, '9/100', 'mains: {from: 110, to: 120}'),
      adapter('new', 12, '9/100', 'mains: {from: 100, to: 240}'),
    ],
    policy: venue,
    board: 'owned: {supplies: [old]}',
    answer: plan('12.00', {}, { supplies: { new: 1 } }),
  },
  {
    says: 'nor is owned gear that does not state its mains',
    pedals: [pedal('A', 9, 100)],
    supplies: [adapter('new', 12, '9/100', 'mains: {from: 100, to: 240}')],
    policy: venue,
    board: `${loft}\nowned: {supplies: [loft]}`,
    answer: plan('12.00', {}, { supplies: { new: 1 } }),
  },
];

const many = (count: number, more = '') =>
  Array.from({ length: count }, (_, index) => pedal(`P${index + 1}`, 9, 100, more));

export const stockCases: readonly Case[] = [
  {
    says: 'stock 0 is not to be had',
    pedals: many(1),
    supplies: [adapter('s', 1, '9/100', 'stock: 0'), adapter('t', 12, '9/100')],
    answer: plan('12.00', {}, { supplies: { t: 1 } }),
  },
  {
    says: 'stock 0 alone is impossible',
    pedals: many(1),
    supplies: [adapter('s', 1, '9/100', 'stock: 0')],
    answer: impossible({ rule: 'stock' }),
  },
  {
    says: 'stock is used up and then something dearer is bought',
    pedals: many(4),
    supplies: [adapter('s', 1, '9/100', 'stock: 3'), adapter('t', 12, '9/100')],
    answer: plan('15.00', { bricks: 4 }, { supplies: { s: 3, t: 1 } }),
  },
  {
    says: 'exactly enough in stock',
    pedals: many(3),
    supplies: [adapter('s', 1, '9/100', 'stock: 3')],
    answer: plan('3.00', { bricks: 3 }, { supplies: { s: 3 } }),
  },
  { says: 'one too few', pedals: many(4), supplies: [adapter('s', 1, '9/100', 'stock: 3')], answer: impossible() },
  {
    says: 'what is owned comes on top of the stock',
    pedals: many(4),
    supplies: [adapter('s', 1, '9/100', 'stock: 3')],
    board: 'owned: {supplies: [s]}',
    answer: plan('3.00', { bricks: 4 }, { supplies: { s: 3 } }),
  },
  {
    says: 'what is owned is not bought',
    pedals: many(2),
    supplies: [adapter('s', 10, '9/100', 'stock: 0')],
    board: 'owned: {supplies: [s, s]}',
    answer: plan('0.00', { bricks: 2 }, { supplies: {}, parts: {} }),
  },
  {
    says: 'stock is no limit when absent',
    pedals: many(12),
    supplies: [adapter('s', 1, '9/100')],
    answer: plan('12.00', { bricks: 12 }, { supplies: { s: 12 } }),
  },
  ...sharing(
    { pedals: many(3, 'polarity: centre-positive'), supplies: [box('s', 10, [apart(3, '9/100')])] },
    ['parts have stock, too', impossible(), { parts: [flip.replace('}', ', stock: 2}')] }],
    [
      'and dearer ones fill in',
      plan('58.00', { parts: 3 }, { parts: { flip: 2, dear: 1 } }),
      {
        parts: [
          flip.replace('}', ', stock: 2}'),
          '- {id: dear, name: dear, price: 40, fits: barrel-2.1, gives: barrel-2.1, reverses: true}',
        ],
      },
    ],
    [
      'owned parts come first',
      plan('14.00', { parts: 3 }, { parts: { flip: 1 } }),
      { parts: [flip], board: 'owned: {parts: {flip: 2}}' },
    ],
    [
      'owned parts come on top of the stock',
      plan('14.00', { parts: 3 }),
      { parts: [flip.replace('}', ', stock: 1}')], board: 'owned: {parts: {flip: 2}}' },
    ],
  ),
  {
    says: 'a lead shared by two uses is only there once',
    pedals: [pedal('A', 9, 100, 'inlet: jack-3.5'), pedal('B', 9, 100, 'inlet: jack-3.5')],
    supplies: [adapter('s', 10, '9/100')],
    parts: [mini.replace('}', ', stock: 1}')],
    partial: true,
    answer: plan('15.00', { unpowered: 1, parts: 1 }),
  },
  {
    says: 'gear describes and `owned` counts: without a count there is none',
    pedals: many(1),
    supplies: [adapter('s', 10, '9/100')],
    board: loft,
    answer: plan('10.00'),
  },
  {
    says: 'owned gear powers the board and is not for sale',
    pedals: many(2),
    supplies: [adapter('s', 10, '9/100')],
    board: `${loft}\nowned: {supplies: [loft]}`,
    answer: plan('10.00', { bricks: 2 }, { supplies: { s: 1 } }),
  },
  {
    says: 'owned leads of the gear',
    pedals: many(1, 'polarity: centre-positive'),
    supplies: [adapter('s', 10, '9/100')],
    parts: [flip],
    board:
      'gear: {parts: [{id: swap, name: Swap, fits: barrel-2.1, gives: barrel-2.1, reverses: true}]}\nowned: {parts: {swap: 1}}',
    answer: plan('10.00', { parts: 1 }, { parts: {}, feeds: { p1: { parts: ['swap'] } } }),
  },
];

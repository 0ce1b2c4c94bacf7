import { adapter, apart, box, impossible, pedal, plan, shared, sharing, type Case } from './case.js';

/** A bank of outputs at 9 V; 4 h by 0.85 of it. */
const bank = (id: string, price: number, wattHours: number): string =>
  box(id, price, [shared(3, '9/1000')], `charge: {wattHours: ${wattHours}}`);
const policy = { runtime: '{hours: 4, usable: 0.85}', noisePrice: '0' };

export const powerBankCases: readonly Case[] = [
  ...sharing(
    { supplies: [bank('small', 20, 7.2), bank('large', 30, 20)], policy },
    [
      'runtime: 9 V × 170 mA × 4 h = 6.12 Wh, all that 7.2 Wh × 0.85 have',
      plan('20.00', {}, { supplies: { small: 1 } }),
      { pedals: [pedal('A', 9, 100), pedal('B', 9, 70)] },
    ],
    [
      'runtime: a thousandth of a milliamp more is too much',
      plan('30.00', {}, { supplies: { large: 1 } }),
      { pedals: [pedal('A', 9, 100), pedal('B', 9, 70.001)] },
    ],
  ),
  {
    says: 'runtime: a guess counts with its factor, no headroom does',
    pedals: [pedal('A', 9, 100, 'figure: guess'), pedal('B', 9, 20)],
    supplies: [bank('small', 20, 7.2), bank('large', 30, 20)],
    policy: { ...policy, headroom: '{alone: 2, chained: 2, supply: 2}' },
    answer: plan('20.00', {}, { supplies: { small: 1 } }),
  },
  {
    says: 'runtime: none is used where nobody says how long it has to last',
    pedals: [pedal('A', 9, 100)],
    supplies: [bank('large', 5, 20), adapter('nine', 9, '9/100')],
    answer: plan('9.00', {}, { supplies: { nine: 1 } }),
  },
  {
    says: 'runtime: and then a pedal may have no supply at all',
    pedals: [pedal('A', 9, 100)],
    supplies: [bank('large', 5, 20)],
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
  {
    says: 'runtime: too small a bank is refused',
    pedals: [pedal('A', 9, 171)],
    supplies: [bank('small', 5, 7.2)],
    policy,
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
  ...sharing(
    { pedals: [pedal('A', 9, 100)], supplies: [bank('large', 30, 20), adapter('nine', 9, '9/100')] },
    [
      'limit: a power bank takes no mains socket, and counts as a supply in use',
      plan('30.00', { bricks: 1 }, { supplies: { large: 1 } }),
      { policy: { ...policy, sockets: '0' } },
    ],
    [
      'mains: a power bank needs none',
      plan('30.00', {}, { supplies: { large: 1 } }),
      { policy: { ...policy, mains: '[120, 230]' } },
    ],
  ),
  {
    says: 'runtime: a series join draws on both outputs: 18 V × 85 mA × 4 h = 6.12 Wh',
    pedals: [pedal('A', 18, 85)],
    supplies: [box('small', 20, [apart(2, '9/500', 'joins: series')], 'charge: {wattHours: 7.2}')],
    parts: ['- {id: stack, name: stack, price: 9, fits: barrel-2.1, gives: barrel-2.1, joins: series}'],
    policy,
    answer: plan('29.00', { parts: 1 }, { supplies: { small: 1 } }),
  },
];

import { adapter, impossible, pedal, plan, type Case } from './case.js';

export const tourCases: readonly Case[] = [
  {
    says: 'mains: on a tour a supply accepts each of them',
    pedals: [pedal('A', 9, 100)],
    supplies: [
      adapter('home', 5, '9/100', 'mains: 230'),
      adapter('away', 6, '9/100', 'mains: {from: 100, to: 127}'),
      adapter('world', 9, '9/100', 'mains: {from: 120, to: 230}'),
    ],
    policy: { mains: '[230, 120]' },
    answer: plan('9.00', {}, { supplies: { world: 1 } }),
  },
  {
    says: 'mains: no supply of a tour that does not accept one of them',
    pedals: [pedal('A', 9, 100)],
    supplies: [adapter('home', 5, '9/100', 'mains: 230'), adapter('away', 6, '9/100')],
    policy: { mains: '[230, 120]' },
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
];

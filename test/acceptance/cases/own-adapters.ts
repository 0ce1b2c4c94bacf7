import { adapter, impossible, pedal, plan, type Case } from './case.js';

const station = '- {name: Station, adapter: {mains: {from: 220, to: 240}}}';

export const ownAdapterCases: readonly Case[] = [
  {
    says: 'a pedal of which nothing is stated hangs on the adapter that it came with',
    pedals: [station, pedal('A', 9, 100)],
    supplies: [adapter('nine', 9, '9/100')],
    answer: plan(
      '9.00',
      { bricks: 2 },
      { feeds: { station: { source: 'adapter', supply: 'own-station', volts: null } } },
    ),
  },
  {
    says: 'the adapter that one pedal came with feeds no other',
    pedals: [pedal('A', 9, 100, 'adapter: {}'), pedal('B', 9, 50)],
    supplies: [adapter('nine', 9, '9/100')],
    answer: plan('9.00', { bricks: 2 }, { feeds: { a: { source: 'adapter' }, b: { source: 'output' } } }),
  },
  {
    says: 'a pedal of which all is stated may leave its adapter at home',
    pedals: [pedal('A', 9, 100, 'adapter: {}'), pedal('B', 9, 50)],
    supplies: [
      '- {id: two, name: two, price: 20, banks: [{outputs: 2, isolated: true, settings: [{volts: 9, milliamps: 100}]}]}',
    ],
    aim: 'bricks',
    answer: plan('20.00', {}, { feeds: { a: { source: 'output' }, b: { source: 'output' } } }),
  },
  {
    says: 'mains: an adapter that a pedal came with accepts the mains of the venue',
    pedals: [pedal('A', 9, 100, 'adapter: {mains: {from: 220, to: 240}}')],
    supplies: [adapter('nine', 9, '9/100', 'mains: {from: 100, to: 240}')],
    policy: { mains: '230' },
    answer: plan('0.00', {}, { feeds: { a: { source: 'adapter' } } }),
  },
  {
    says: 'mains: one that does not accept it stays at home',
    pedals: [pedal('A', 9, 100, 'adapter: {mains: {from: 220, to: 240}}')],
    supplies: [adapter('nine', 9, '9/100', 'mains: {from: 100, to: 240}')],
    policy: { mains: '[120, 230]' },
    answer: plan('9.00', {}, { feeds: { a: { source: 'output' } } }),
  },
  {
    says: 'mains: and then nothing feeds a pedal of which nothing is stated',
    pedals: [station],
    supplies: [adapter('nine', 9, '9/100', 'mains: {from: 100, to: 240}')],
    policy: { mains: '120' },
    answer: impossible({ kind: 'pedal', pedals: ['station'] }),
  },
  {
    says: 'limit: an adapter that a pedal came with takes a socket',
    pedals: [pedal('A', 9, 60, 'adapter: {}'), pedal('B', 9, 50)],
    supplies: [
      adapter('nine', 9, '9/100'),
      '- {id: two, name: two, price: 30, banks: [{outputs: 2, isolated: true, settings: [{volts: 9, milliamps: 100}]}]}',
    ],
    policy: { sockets: '1' },
    answer: plan('30.00', {}, { supplies: { two: 1 } }),
  },
  {
    says: 'limit: and counts as a supply in use',
    pedals: [station, pedal('A', 9, 100)],
    supplies: [adapter('nine', 9, '9/100')],
    policy: { bricks: '1' },
    answer: impossible({ kind: 'limit' }),
  },
];

import { adapter, apart, box, flip, impossible, mini, pedal, plan, shared, type Case } from './case.js';

/** A fed supply with one output of 9 V and an inlet of 5 V, 500 mA. */
const converter = (price: number, more = ''): string =>
  box(
    'step',
    price,
    [apart(1, '9/250')],
    `inlet: {power: DC, plug: barrel-2.1, polarity: centre-negative, volts: 5, milliamps: 500${more}}`,
  );
const five = (outputs: number, milliamps: number, more = ''): string =>
  box('five', 10, [apart(outputs, `5/${milliamps}`)], more);
const drive = pedal('A', 9, 100);

export const inletCases: readonly Case[] = [
  {
    says: 'inlet: a converter lead on an output of 5 V feeds a pedal of 9 V, and is a supply in use',
    pedals: [drive],
    supplies: [five(1, 500), converter(6)],
    answer: plan(
      '16.00',
      { bricks: 2 },
      { supplies: { five: 1, step: 1 }, feeds: { a: { supply: 'step', volts: 9 } } },
    ),
  },
  {
    says: 'inlet: it draws what it states, whatever hangs on the supply',
    pedals: [pedal('A', 9, 1)],
    supplies: [five(1, 499.999), converter(6)],
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
  {
    says: 'inlet: the headroom of a pedal alone holds for it',
    pedals: [drive],
    supplies: [five(1, 599), converter(6), adapter('nine', 40, '9/120')],
    policy: { headroom: '{alone: 1.2, chained: 2, supply: 1}' },
    answer: plan('40.00'),
  },
  {
    says: 'inlet: its startup is what it states',
    pedals: [drive],
    supplies: [five(1, 600), converter(6, ', startup: 601'), adapter('nine', 40, '9/100')],
    answer: plan('40.00'),
  },
  {
    says: 'inlet: it counts in the totals of what feeds it',
    pedals: [drive, pedal('B', 5, 100)],
    supplies: [
      box('five', 10, [apart(2, '5/500')], 'total: {milliamps: 599}'),
      converter(6),
      adapter('nine', 40, '9/100'),
    ],
    answer: plan('26.00', { bricks: 3 }, { supplies: { five: 2, step: 1 } }),
  },
  {
    says: 'inlet: nothing else is on that ground, so one inlet takes a whole common ground',
    pedals: [drive, pedal('B', 9, 200)],
    supplies: [box('five', 10, [shared(2, '5/500')]), converter(6)],
    answer: plan('32.00', { bricks: 4 }, { supplies: { five: 2, step: 2 } }),
  },
  {
    says: 'inlet: isolated outputs feed one each',
    pedals: [drive, pedal('B', 9, 200)],
    supplies: [five(2, 500), converter(6)],
    answer: plan('22.00', { bricks: 3 }, { supplies: { five: 1, step: 2 } }),
  },
  {
    says: 'inlet: none feeds another fed supply',
    pedals: [pedal('A', 18, 10)],
    supplies: [
      adapter('twelve', 10, '12/1000'),
      box(
        'nine',
        5,
        [apart(1, '9/900')],
        'inlet: {power: DC, plug: barrel-2.1, polarity: centre-negative, volts: 12, milliamps: 500}',
      ),
      box(
        'double',
        5,
        [apart(1, '18/100')],
        'inlet: {power: DC, plug: barrel-2.1, polarity: centre-negative, volts: 9, milliamps: 300}',
      ),
    ],
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
  {
    says: 'inlet: it never hangs on the adapter that a pedal came with',
    pedals: ['- {name: A, volts: 5, milliamps: 500, adapter: {mains: {from: 100, to: 240}}}', pedal('B', 9, 10)],
    supplies: [converter(6), adapter('nine', 40, '9/100')],
    answer: plan('40.00', { bricks: 2 }),
  },
  {
    says: 'inlet: a power bank feeds it as long as it lasts',
    pedals: [drive],
    supplies: [box('bank', 30, [shared(2, '5/600')], 'charge: {wattHours: 10}'), converter(6)],
    policy: { runtime: '{hours: 4, usable: 1}', sockets: '0' },
    answer: plan('36.00', { bricks: 2 }),
  },
  {
    says: 'inlet: what it draws empties a power bank',
    pedals: [pedal('A', 9, 1)],
    supplies: [box('bank', 30, [shared(2, '5/600')], 'charge: {wattHours: 9.999}'), converter(6)],
    policy: { runtime: '{hours: 4, usable: 1}' },
    answer: impossible({ kind: 'pedal', pedals: ['a'] }),
  },
  {
    says: 'inlet: leads that reverse, or fit its plug, go before it as before a pedal',
    pedals: [drive],
    supplies: [
      five(1, 500),
      box(
        'step',
        6,
        [apart(1, '9/250')],
        'inlet: {power: DC, plug: jack-3.5, polarity: centre-positive, volts: 5, milliamps: 500}',
      ),
    ],
    parts: [flip, mini],
    answer: plan('25.00', { bricks: 2, parts: 2 }, { parts: { flip: 1, mini: 1 } }),
  },
  {
    says: 'inlet: AC feeds only what takes AC',
    pedals: [drive],
    supplies: [
      box('alternating', 10, ['{outputs: 1, isolated: true, power: AC, settings: [{volts: 9, milliamps: 500}]}']),
      box('bridge', 6, [apart(1, '9/250')], 'inlet: {power: AC, plug: barrel-2.1, volts: 9, milliamps: 500}'),
    ],
    answer: plan('16.00', { bricks: 2 }),
  },
  {
    says: 'inlet: it takes no chain and joins no outputs',
    pedals: [drive],
    supplies: [
      box('five', 10, ['{outputs: 2, isolated: true, joins: both, settings: [{volts: 5, milliamps: 300}]}']),
      converter(6),
      adapter('nine', 40, '9/100'),
    ],
    parts: ['- {id: pair, name: pair, price: 1, fits: barrel-2.1, gives: barrel-2.1, joins: parallel}'],
    answer: plan('40.00'),
  },
  {
    says: 'inlet: the common ground of a fed supply is one of its own',
    pedals: [
      pedal('A', 9, 10, 'ground: positive'),
      pedal('B', 9, 10, 'digital: true'),
      pedal('C', 9, 10, 'highGain: true'),
    ],
    supplies: [
      box('twelve', 30, [apart(3, '12/500'), apart(1, '9/100')]),
      box(
        'lock',
        10,
        [shared(2, '9/100')],
        'inlet: {power: DC, plug: barrel-2.1, polarity: centre-negative, volts: 12, milliamps: 400}',
      ),
    ],
    answer: plan('50.00', { bricks: 3 }, { exposed: [] }),
  },
  {
    says: 'limit: a fed supply takes no mains socket, and counts as a supply in use',
    pedals: [drive],
    supplies: [five(1, 500), converter(6), adapter('nine', 40, '9/100')],
    policy: { bricks: '1', sockets: '1' },
    answer: plan('40.00'),
  },
  {
    says: 'stock: no more fed units than there are',
    pedals: [drive, pedal('B', 9, 200)],
    supplies: [five(2, 500), `${converter(6).slice(0, -1)}, stock: 1}`, adapter('nine', 40, '9/200')],
    answer: plan('56.00', { bricks: 3 }),
  },
];

import { adapter, impossible, pedal, plan, sharing, type Case } from './case.js';

const nine = adapter('nine', 9, '9/100');
const policy = { batteries: '{change: 8, pay: 100}' };
const takesOne = 'battery: {type: 9V-block, count: 1}';
const batteries = (...lines: readonly string[]) => lines;
const block = '- {id: block, name: Block, type: 9V-block, price: 3, volts: 9, milliampHours: 500}';

export const batteryCases: readonly Case[] = [
  ...sharing(
    { supplies: [nine], batteries: batteries(block), policy },
    [
      'battery: 100 h at 5 mA are one set of 500 mAh',
      plan(
        '3.00',
        { bricks: 0 },
        { feeds: { a: { source: 'battery', supply: null, battery: { id: 'block', count: 1, hours: 100 } } } },
      ),
      { pedals: [pedal('A', 9, 5, takesOne)] },
    ],
    [
      'battery: a thousandth of a milliamp more takes a second set',
      plan('6.00', { bricks: 0 }),
      { pedals: [pedal('A', 9, 5.001, takesOne)] },
    ],
  ),
  ...sharing(
    { pedals: [pedal('A', 9, 20, takesOne)], supplies: [nine], batteries: batteries(block), policy },
    [
      'battery: where sets cost more than an output, the output feeds it',
      plan('9.00', {}, { feeds: { a: { source: 'output' } } }),
    ],
    ['battery: owned ones cost nothing', plan('6.00', { bricks: 0 }), { board: 'owned: {batteries: {block: 2}}' }],
  ),
  ...sharing(
    { supplies: [], batteries: batteries(block), policy: { batteries: '{change: 8, pay: 8}' } },
    [
      'battery: 8 h at 62.5 mA are all that 500 mAh hold',
      plan('3.00', { bricks: 0 }),
      { pedals: [pedal('A', 9, 62.5, takesOne)] },
    ],
    [
      'battery: one that does not last is none',
      impossible({ kind: 'pedal', pedals: ['a'] }),
      { pedals: [pedal('A', 9, 62.501, takesOne)] },
    ],
  ),
  ...sharing(
    { supplies: [nine], batteries: batteries(block) },
    [
      'battery: a guess counts with its factor',
      plan('6.00', { bricks: 0 }),
      { pedals: [pedal('A', 9, 5, `figure: guess, ${takesOne}`)], policy },
    ],
    [
      'battery: none is used where nobody says how long a set must last',
      plan('9.00', {}, { feeds: { a: { source: 'output' } } }),
      { pedals: [pedal('A', 9, 5, takesOne)] },
    ],
    [
      'battery: only of the type that the pedal takes',
      plan('9.00', {}, { feeds: { a: { source: 'output' } } }),
      { pedals: [pedal('A', 9, 5, 'battery: {type: AA, count: 6}')], policy },
    ],
  ),
  {
    says: 'battery: the volts of a set are those of all its batteries',
    pedals: [pedal('A', 9, 5, 'battery: {type: AA, count: 6}'), pedal('B', 18, 5, 'battery: {type: AA, count: 6}')],
    supplies: [adapter('two', 20, '18/100')],
    batteries: batteries('- {id: aa, name: AA, type: AA, price: 0.5, volts: 1.5, milliampHours: 2000}'),
    policy,
    answer: plan('23.00', {}, { feeds: { a: { source: 'battery' }, b: { source: 'output' } } }),
  },
  {
    says: 'battery: each is a ground of its own, and no supply in use',
    pedals: [
      pedal('A', 9, 5, `ground: positive, highGain: true, ${takesOne}`),
      pedal('B', 9, 5, `digital: true, ${takesOne}`),
    ],
    supplies: [],
    batteries: batteries(block),
    policy: { ...policy, bricks: '0', sockets: '0' },
    answer: plan('6.00', { bricks: 0 }),
  },
  {
    says: 'stock: no more batteries than there are',
    pedals: [pedal('A', 9, 5, takesOne), pedal('B', 9, 5, takesOne)],
    supplies: [nine],
    batteries: batteries(
      '- {id: block, name: Block, type: 9V-block, price: 3, volts: 9, milliampHours: 500, stock: 1}',
    ),
    policy,
    answer: plan('12.00', { bricks: 1 }),
  },
];

import { adapter, apart, box, fan, flip, impossible, mini, pedal, plan, type Case } from './case.js';
import { jack, part, positive, single } from './single.js';

export const chainCases: readonly Case[] = [
  single(
    'a chain feeds as many as it has tails',
    ['A', 'B', 'C'].map((name) => pedal(name, 9, 100)),
    [fan(3)],
    plan(
      '18.00',
      { parts: 1 },
      { feeds: { a: { outputs: [1], chain: 'fan', parts: [] }, c: { outputs: [1], chain: 'fan' } } },
    ),
  ),
  single(
    'and not one more',
    ['A', 'B', 'C', 'D'].map((name) => pedal(name, 9, 100)),
    [fan(3)],
    impossible(),
  ),
  single(
    'chains do not hang on chains',
    ['A', 'B', 'C', 'D'].map((name) => pedal(name, 9, 100)),
    [fan(3), part('more', 1, 'barrel-2.1', 'barrel-2.1', 'tails: 2')],
    impossible(),
  ),
  single(
    'tails may stay free',
    ['A', 'B'].map((name) => pedal(name, 9, 100)),
    [fan(5)],
    plan('18.00', { parts: 1 }),
  ),
  single(
    'the cheapest chain with enough tails',
    ['A', 'B', 'C'].map((name) => pedal(name, 9, 100)),
    [
      part('two', 1, 'barrel-2.1', 'barrel-2.1', 'tails: 2'),
      part('three', 7, 'barrel-2.1', 'barrel-2.1', 'tails: 3'),
      fan(5),
    ],
    plan('17.00', { parts: 1 }, { parts: { three: 1 } }),
  ),
  single(
    '`chains: never` forbids them',
    ['A', 'B'].map((name) => pedal(name, 9, 100)),
    [fan(5)],
    impossible(),
    { policy: { chains: 'never' } },
  ),
  single(
    'a pedal that is `alone` joins no chain',
    [pedal('A', 9, 100, 'alone: true'), pedal('B', 9, 100)],
    [fan(5)],
    impossible(),
  ),
  single(
    'so it takes a supply of its own',
    [pedal('A', 9, 100, 'alone: true'), pedal('B', 9, 100), pedal('C', 9, 100)],
    [fan(5)],
    plan('28.00', { bricks: 2, parts: 1 }, { feeds: { a: { chain: null }, b: { chain: 'fan' }, c: { chain: 'fan' } } }),
    { supplies: [adapter('s', 10, '9/1000', 'stock: 2')] },
  ),
  single(
    'a pedal by itself takes no chain lead, not even as an adapter',
    [jack('A')],
    [part('octopus', 8, 'barrel-2.1', 'jack-3.5', 'tails: 5')],
    impossible({ rule: 'plug' }),
  ),
  single(
    'nor to turn its polarity',
    [pedal('A', 9, 100, positive)],
    [fan(5, 'reverses: true')],
    impossible({ rule: 'polarity' }),
  ),
  single(
    'nor does a join lead serve as an adapter',
    [jack('A')],
    [part('y', 8, 'barrel-2.1', 'jack-3.5', 'joins: series')],
    impossible({ rule: 'plug' }),
  ),
  single(
    'two pedals may use the plug that the chain gives',
    [jack('A'), jack('B')],
    [part('octopus', 8, 'barrel-2.1', 'jack-3.5', 'tails: 5')],
    plan('18.00', { parts: 1 }),
  ),
  single(
    'a reversing chain turns all its tails',
    [pedal('A', 9, 100, positive), pedal('B', 9, 100, positive)],
    [fan(5, 'reverses: true')],
    plan('18.00', { parts: 1 }, { feeds: { a: { polarity: 'centre-positive', chain: 'fan', parts: [] } } }),
  ),
  single(
    'and a reversing adapter turns one back',
    [pedal('A', 9, 100, positive), pedal('B', 9, 100)],
    [fan(5, 'reverses: true'), flip],
    plan('22.00', { parts: 2 }, { feeds: { a: { parts: [] }, b: { polarity: 'centre-negative', parts: ['flip'] } } }),
  ),
  single(
    'each tail has adapters of its own: 10 + 8 + 0 + 4 + 5 + (4 + 5)',
    [pedal('A', 9, 100), pedal('B', 9, 100, positive), jack('C'), jack('D', positive)],
    [fan(4), flip, mini],
    plan(
      '36.00',
      { parts: 5 },
      {
        parts: { fan: 1, flip: 2, mini: 2 },
        feeds: {
          a: { parts: [] },
          b: { parts: ['flip'], polarity: 'centre-positive' },
          c: { parts: ['mini'] },
          d: { polarity: 'centre-positive' },
        },
      },
    ),
  ),
  single(
    'a tail takes two adapters',
    [pedal('A', 9, 100, 'inlet: odd'), pedal('B', 9, 100)],
    [fan(2), mini, part('x', 2, 'jack-3.5', 'odd')],
    plan('25.00', { parts: 3 }, { feeds: { a: { chain: 'fan', parts: ['mini', 'x'] } } }),
  ),
  single(
    'and not three',
    [pedal('A', 9, 100, 'inlet: far'), pedal('B', 9, 100)],
    [fan(2), mini, part('x', 2, 'jack-3.5', 'odd'), part('y', 2, 'odd', 'far')],
    impossible(),
  ),
  single(
    'a chain may help where two adapters are too few',
    [pedal('A', 9, 100, 'inlet: far'), pedal('B', 9, 100, 'inlet: far')],
    [
      part('octopus', 8, 'barrel-2.1', 'jack-3.5', 'tails: 2'),
      part('x', 2, 'jack-3.5', 'odd'),
      part('y', 2, 'odd', 'far'),
    ],
    plan('26.00', { parts: 5 }),
  ),
  single(
    'a chain comes first and must fit the output',
    [pedal('A', 9, 100), pedal('B', 9, 100)],
    [fan(5), part('down', 1, 'jack-3.5', 'barrel-2.1')],
    impossible(),
    { supplies: [box('s', 10, [apart(1, '9/1000', 'plug: jack-3.5')], 'stock: 1')] },
  ),
  single(
    'all the tails but one through adapters',
    [jack('A'), jack('B')],
    [fan(5), mini],
    plan('28.00', { parts: 3 }, { parts: { fan: 1, mini: 2 } }),
  ),
  single(
    'chained pedals share one chain lead, two chains need two',
    ['A', 'B', 'C', 'D'].map((name) => pedal(name, 9, 100)),
    [fan(2)],
    plan('26.00', { parts: 2 }, { parts: { fan: 2 } }),
    { supplies: [box('s', 10, [apart(2, '9/200')], 'stock: 1')] },
  ),
  single('polarity holds on a chain', [pedal('A', 9, 100), pedal('B', 9, 100, positive)], [fan(5)], impossible()),
];

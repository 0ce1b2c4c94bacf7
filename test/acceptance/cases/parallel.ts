import { apart, box, fan, impossible, pedal, plan, shared, stack, type Case } from './case.js';
import { joined, leads, parallel, series } from './joined.js';

const nine = (milliamps: number, more = '') => pedal('A', 9, milliamps, more);

export const parallelCases: readonly Case[] = [
  joined('milliamps add', nine(200), [apart(2, '9/100', parallel)], 'parallel', {
    answer: plan(
      '17.00',
      { parts: 1 },
      { parts: { pair: 1 }, feeds: { a: { outputs: [1, 2], volts: 9, join: { mode: 'parallel', part: 'pair' } } } },
    ),
  }),
  joined('to the microamp', nine(200.001), [apart(2, '9/100', parallel)], null),
  joined('of unlike outputs, too', nine(160), [apart(1, '9/100', parallel), apart(1, '9/60', parallel)], 'parallel'),
  joined('and no more', nine(160.001), [apart(1, '9/100', parallel), apart(1, '9/60', parallel)], null),
  joined('`alone` counts: 100 × 1.2 fit into 60 + 60', nine(100), [apart(2, '9/60', parallel)], 'parallel', {
    policy: { headroom: '{alone: 1.2, chained: 2, supply: 1}' },
  }),
  joined(
    'a startup may use both',
    nine(90, 'startup: 160'),
    [apart(1, '9/100', parallel), apart(1, '9/60', parallel)],
    'parallel',
  ),
  joined(
    'and no more than both',
    nine(90, 'startup: 160.001'),
    [apart(1, '9/100', parallel), apart(1, '9/60', parallel)],
    null,
  ),
  joined(
    'volts must be the same',
    pedal('A', '[9, 12]', 200),
    [apart(1, '9/100', parallel), apart(1, '12/100', parallel)],
    null,
  ),
  joined('series is not parallel', nine(200), [apart(2, '9/100', series)], null),
  joined('the maker must allow it', nine(200), [apart(2, '9/100')], null),
  joined('it takes the lead', nine(200), [apart(2, '9/100', parallel)], null, { parts: [stack, fan(2)] }),
  joined('the load counts once in the total', nine(200), [apart(2, '9/100', parallel)], 'parallel', {
    total: 'total: {milliamps: 200}',
  }),
  joined('but whole', nine(200), [apart(2, '9/100', parallel)], null, { total: 'total: {milliamps: 199.999}' }),
  joined(
    "and once in its bank's total",
    nine(200),
    [apart(2, '9/100', `${parallel}, total: {milliamps: 200}`)],
    'parallel',
  ),
  joined(
    'and whole in the total of either bank',
    nine(160),
    [
      apart(1, '9/100', `${parallel}, total: {milliamps: 160}`),
      apart(1, '9/60', `${parallel}, total: {milliamps: 160}`),
    ],
    'parallel',
  ),
  joined(
    'so that either bank may refuse it',
    nine(160),
    [apart(1, '9/100', parallel), apart(1, '9/60', `${parallel}, total: {milliamps: 159.999}`)],
    null,
  ),
  joined('watts count once: 9 V × 200 mA', nine(200), [apart(2, '9/100', parallel)], 'parallel', {
    total: 'total: {watts: 1.8}',
  }),
  joined('and are refused a milliwatt below', nine(200), [apart(2, '9/100', parallel)], null, {
    total: 'total: {watts: 1.799}',
  }),
  joined('`supply` counts: 200 × 1.2', nine(200), [apart(2, '9/100', parallel)], 'parallel', {
    total: 'total: {milliamps: 240}',
    policy: { headroom: '{alone: 1, chained: 1, supply: 1.2}' },
  }),
  joined('and refuses', nine(200), [apart(2, '9/100', parallel)], null, {
    total: 'total: {milliamps: 239.999}',
    policy: { headroom: '{alone: 1, chained: 1, supply: 1.2}' },
  }),
  joined(
    'the higher open-circuit volts count',
    nine(200, 'maxVolts: 12'),
    [apart(1, '9/100/11', parallel), apart(1, '9/100/12', parallel)],
    'parallel',
    { total: 'regulated: false' },
  ),
  ...[
    [11, 12],
    [12, 11],
  ].map(([one, two]) =>
    joined(
      `and may not pass maxVolts: ${one} and ${two}`,
      nine(200, 'maxVolts: 11.999'),
      [apart(1, `9/100/${one}`, parallel), apart(1, `9/100/${two}`, parallel)],
      null,
      { total: 'regulated: false' },
    ),
  ),
  {
    says: 'outputs on the common ground are never joined',
    pedals: [nine(200)],
    supplies: [box('s', 10, [apart(1, '9/100', parallel), shared(1, '9/100')])],
    parts: leads,
    answer: impossible(),
  },
  {
    says: 'outputs switched each are set alike',
    pedals: [pedal('A', '[9, 12]', '{9: 260, 12: 160}')],
    supplies: [box('s', 10, [apart(2, '9/100 12/80', `switch: each, ${parallel}`)])],
    parts: leads,
    answer: plan('17.00', { parts: 1 }, { feeds: { a: { volts: 12, outputs: [1, 2] } } }),
  },
  {
    says: 'a bank switched together that holds a join at 12 V gives 12 V elsewhere',
    pedals: [pedal('A', 12, 200), pedal('B', 9, 100)],
    supplies: [box('s', 10, [apart(3, '9/100 12/100', `switch: together, ${parallel}`)])],
    parts: leads,
    answer: plan('27.00', { bricks: 2, parts: 1 }),
  },
];

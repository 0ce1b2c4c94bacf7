import { adapter, apart, box, fan, impossible, pedal, plan, shared, sharing, type Case } from './case.js';

const fuzz = (name: string, more = '') => pedal(name, 9, 10, `ground: positive${more}`);
const plain = (name: string) => pedal(name, 9, 10);

export const groundCases: readonly Case[] = [
  {
    says: 'positive and negative ground never share the common ground',
    pedals: [fuzz('A'), plain('B')],
    supplies: [box('s', 10, [shared(2, '9/100')], 'stock: 1')],
    answer: impossible(),
  },
  {
    says: 'a second supply parts them',
    pedals: [fuzz('A'), plain('B')],
    supplies: [box('s', 10, [shared(2, '9/100')])],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'the common ground goes across banks',
    pedals: [fuzz('A'), plain('B')],
    supplies: [box('s', 10, [shared(1, '9/100'), shared(1, '9/100')])],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'across banks of other volts as well',
    pedals: [fuzz('A'), pedal('B', 18, 10)],
    supplies: [box('s', 10, [shared(1, '9/100'), shared(1, '18/100')])],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'isolated outputs part them',
    pedals: [fuzz('A'), plain('B')],
    supplies: [box('s', 10, [apart(2, '9/100')])],
    answer: plan('10.00'),
  },
  {
    says: 'an isolated output beside the common ground parts them',
    pedals: [fuzz('A'), plain('B'), plain('C')],
    supplies: [box('s', 10, [shared(2, '9/100'), apart(1, '9/100')])],
    answer: plan('10.00', {}, { feeds: { a: { outputs: [3] } } }),
  },
  {
    says: 'positive grounds get on with one another',
    pedals: [fuzz('A'), fuzz('B')],
    supplies: [box('s', 10, [shared(2, '9/100')])],
    answer: plan('10.00'),
  },
  ...sharing(
    { supplies: [adapter('s', 10, '9/100', 'stock: 1')], parts: [fan(2)] },
    ['a chain on an isolated output is one ground', impossible(), { pedals: [fuzz('A'), plain('B')] }],
    ['positive grounds may be chained', plan('18.00', { parts: 1 }), { pedals: [fuzz('A'), fuzz('B')] }],
  ),
  {
    says: 'polarity switches and reversing leads do not turn a ground',
    pedals: [fuzz('A', ', polarity: centre-positive'), plain('B')],
    supplies: [box('s', 10, [shared(2, '9/100', 'polarity: either')], 'stock: 1')],
    answer: impossible(),
  },
  {
    says: 'an AC output on the common ground is on it too',
    pedals: ['- {name: A, power: AC, volts: 9, milliamps: 10, ground: positive}', plain('B')],
    supplies: [
      box('s', 10, [
        shared(1, '9/100'),
        '{outputs: 1, isolated: false, power: AC, plug: barrel-2.1, settings: [{volts: 9, milliamps: 100}]}',
      ]),
    ],
    answer: plan('20.00', { bricks: 2 }),
  },
  {
    says: 'three of each kind sort themselves onto two supplies',
    pedals: [fuzz('A'), plain('B'), fuzz('C'), plain('D'), fuzz('E'), plain('F')],
    supplies: [box('s', 10, [shared(3, '9/100')])],
    answer: plan('20.00', { bricks: 2 }),
  },
];

const digital = (name: string) => pedal(name, 9, 10, 'digital: true');
const highGain = (name: string) => pedal(name, 9, 10, 'highGain: true');
const both = (name: string) => pedal(name, 9, 10, 'digital: true, highGain: true');
const common = box('s', 10, [shared(4, '9/100')], 'stock: 1');
const exposes = (
  says: string,
  pedals: readonly string[],
  exposed: readonly string[],
  more: Partial<Case> = {},
): Case => ({
  says,
  pedals,
  supplies: [common],
  answer: plan('10.00', { exposed: exposed.length }, { exposed }),
  ...more,
});

export const exposureCases: readonly Case[] = [
  exposes('a digital pedal exposes a high-gain one', [digital('D'), highGain('H')], ['h']),
  exposes('every high-gain one', [digital('D'), highGain('H'), highGain('I'), plain('P')], ['h', 'i']),
  exposes('many digital pedals expose one once', [digital('D'), digital('E'), highGain('H')], ['h']),
  exposes('no digital, no exposure', [plain('P'), highGain('H'), highGain('I')], []),
  exposes('a pedal that is both does not expose itself', [both('X')], []),
  exposes('nor with plain ones about', [both('X'), plain('P')], []),
  exposes('it exposes another high-gain one and is not exposed', [both('X'), highGain('H')], ['h']),
  exposes('it is exposed by another digital one', [both('X'), digital('D')], ['x']),
  exposes('two of them expose each other', [both('X'), both('Y')], ['x', 'y']),
  exposes('across the banks of a common ground', [digital('D'), highGain('H')], ['h'], {
    supplies: [box('s', 10, [shared(1, '9/100'), apart(1, '12/100'), shared(1, '9/100')], 'stock: 1')],
  }),
  exposes('isolated outputs keep them apart', [digital('D'), highGain('H'), both('X')], [], {
    supplies: [box('s', 10, [apart(3, '9/100')])],
  }),
  exposes('the right one of three takes the isolated output', [digital('D'), highGain('H'), highGain('I')], [], {
    supplies: [box('s', 10, [shared(2, '9/100'), apart(1, '9/100')], 'stock: 1')],
  }),
  exposes('with two of each one stays exposed', [digital('D'), highGain('H'), digital('E'), highGain('I')], ['i'], {
    supplies: [box('s', 10, [shared(3, '9/100'), apart(1, '9/100')], 'stock: 1')],
    answer: plan('10.00', { exposed: 1 }),
  }),
  exposes('a chain is one ground', [digital('D'), highGain('H')], ['h'], {
    supplies: [adapter('s', 10, '9/100', 'stock: 1')],
    parts: [fan(2)],
    answer: plan('18.00', { exposed: 1, parts: 1 }, { exposed: ['h'] }),
  }),
  exposes(
    'a chain on one isolated output leaves the other output alone',
    [digital('D'), digital('E'), highGain('H')],
    [],
    {
      supplies: [box('s', 10, [apart(2, '9/100')], 'stock: 1')],
      parts: [fan(2)],
      answer: plan('18.00', { parts: 1 }, { feeds: { h: { chain: null } } }),
    },
  ),
  exposes('an unpowered digital pedal exposes nobody', [pedal('D', 12, 10, 'digital: true'), highGain('H')], [], {
    partial: true,
    answer: plan('10.00', { unpowered: 1 }, { unpowered: ['d'], exposed: [] }),
  }),
  exposes('a second unit is a ground of its own', [digital('D'), highGain('H')], [], {
    supplies: [box('s', 10, [shared(4, '9/100')])],
    answer: plan('20.00', { bricks: 2 }, { exposed: [] }),
    policy: { noisePrice: '20' },
  }),
];

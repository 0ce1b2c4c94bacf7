/** Boards without a plan, each for another reason, with the smallest set that says why: worked out by hand. */
import type { Fact } from '../../src/planning/conflict/facts.js';
import { box, caseOf, fan, flip, twin, type Given } from '../src/planning/given.js';
import { impossibleSources } from './impossible-sources.js';
import { bankOf, currentTotal, euros, factor, onMains, pedalOf, settingOf, supplyOf, volts } from './builders.js';

export type ImpossibleCase = {
  readonly why: string;
  readonly given: Given;
  /** Ids of the pedals, and the kinds of the facts. */
  readonly pedals: readonly string[];
  readonly facts: readonly Fact['kind'][];
  /** The kinds of change that help, by themselves. */
  readonly ways: readonly string[];
};

const pedals = (...draws: readonly number[]) => draws.map((draw, at) => pedalOf(`p${at + 1}`, draw));
/** Ten euros, so many outputs of 100 mA, and so many there are. */
const stocked = (outputs: number, stock: number) => box(outputs, {}, { stock });
const noChains = { chains: 'never' } as const;

export const impossibleCases: readonly ImpossibleCase[] = [
  {
    why: 'two supplies are beyond the budget',
    given: { pedals: pedals(60, 60), supplies: [box(1)], policy: { budget: euros(19) } },
    pedals: ['p1', 'p2'],
    facts: ['budget'],
    ways: ['budget', 'supply', 'pedal'],
  },
  {
    why: 'a supply too many for the sockets',
    given: { pedals: pedals(60, 70), supplies: [box(1)], policy: { sockets: 1 } },
    pedals: ['p1', 'p2'],
    facts: ['sockets'],
    ways: ['sockets', 'pedal', 'pedal'],
  },
  {
    why: 'more pedals than the stock has outputs',
    given: { pedals: pedals(60, 60, 60), supplies: [stocked(2, 1)], policy: noChains },
    pedals: ['p1', 'p2', 'p3'],
    facts: ['stock'],
    ways: ['stock', 'supply', 'pedal'],
  },
  {
    why: 'the reserve asks for more than the output gives',
    given: {
      pedals: pedals(20, 90),
      supplies: [box(2)],
      policy: { ...noChains, headroom: { alone: factor(1.2), chained: factor(1), supply: factor(1) } },
    },
    pedals: ['p2'],
    facts: ['headroom alone'],
    ways: ['supply', 'factor', 'pedal'],
  },
  {
    why: 'a guess is counted for more than the output gives',
    given: {
      pedals: [pedalOf('p1', 80, { figure: 'guess' }), pedalOf('p2', 20)],
      supplies: [box(2)],
      policy: { ...noChains, guess: factor(1.5) },
    },
    pedals: ['p1'],
    facts: ['guess'],
    ways: ['supply', 'factor', 'pedal'],
  },
  {
    why: 'no lead ends in the inlet',
    given: { pedals: [pedalOf('p1', 20, { inlet: 'jack-3.5' }), pedalOf('p2', 20)], supplies: [box(2)] },
    pedals: ['p1'],
    facts: ['plug'],
    ways: ['lead', 'supply', 'pedal'],
  },
  {
    why: 'the only reversing lead is needed twice',
    given: {
      pedals: [
        pedalOf('p1', 20, { polarity: 'centre-positive', alone: true }),
        pedalOf('p2', 30, { polarity: 'centre-positive', alone: true }),
      ],
      supplies: [box(2)],
      parts: [{ ...flip, stock: 1 }],
    },
    pedals: ['p1', 'p2'],
    facts: ['polarity', 'stock'],
    ways: ['stock', 'lead', 'supply', 'supply', 'pedal', 'pedal'],
  },
  {
    why: 'the only chain lead reverses',
    given: {
      pedals: pedals(20, 30),
      supplies: [box(1, {}, { stock: 1 })],
      parts: [{ ...fan, reverses: true }],
    },
    pedals: ['p1', 'p2'],
    facts: ['polarity', 'stock'],
    // A reversing adapter would have to be had twice, one a tail.
    ways: ['stock', 'lead', 'supply', 'supply', 'pedal', 'pedal'],
  },
  {
    why: 'the only join lead reverses',
    given: {
      pedals: [pedalOf('p1', 20), pedalOf('p2', 150)],
      supplies: [box(2, { joins: ['parallel'] })],
      parts: [{ ...twin, reverses: true }],
    },
    pedals: ['p2'],
    facts: ['polarity'],
    ways: ['lead', 'lead', 'supply', 'pedal'],
  },
  {
    why: 'grounds of both kinds on one common ground',
    given: {
      pedals: [pedalOf('p1', 20), pedalOf('p2', 20, { ground: 'positive' })],
      supplies: [box(2, { isolated: false }, { stock: 1 })],
      policy: noChains,
    },
    pedals: ['p1', 'p2'],
    facts: ['ground', 'stock'],
    ways: ['stock', 'supply', 'supply', 'pedal', 'pedal'],
  },
  {
    why: 'together beyond the total of the one supply',
    given: {
      pedals: pedals(60, 70),
      supplies: [box(2, {}, { stock: 1, total: currentTotal(120) })],
    },
    pedals: ['p1', 'p2'],
    facts: ['total', 'stock'],
    ways: ['stock', 'supply', 'supply', 'pedal', 'pedal'],
  },
  {
    why: 'volts that nothing gives, whatever the rules',
    given: {
      pedals: [pedalOf('p1', 20), pedalOf('p2', 20, { accepts: { kind: 'listed', millivolts: [volts(24)] } })],
      supplies: [box(2)],
    },
    pedals: ['p2'],
    facts: [],
    ways: ['supply', 'pedal'],
  },
  {
    why: 'two limits, each too tight by itself',
    given: {
      pedals: pedals(60, 60),
      supplies: [box(1)],
      policy: { budget: euros(15), bricks: 1 },
    },
    pedals: ['p1', 'p2'],
    facts: ['budget'],
    ways: ['limits', 'pedal'],
  },
  {
    why: 'the venue has other mains volts',
    given: {
      pedals: pedals(20),
      supplies: [supplyOf('box', 10, [bankOf(1, [settingOf(9, 100)])], onMains(100, 120))],
      policy: { mains: [volts(230)] },
    },
    pedals: ['p1'],
    facts: ['mains'],
    ways: ['supply'],
  },
  ...impossibleSources,
];

export const caseFor = ({ given }: ImpossibleCase) => caseOf(given);

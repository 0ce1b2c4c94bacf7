/** Small boards on which the relaxation has a whole number of everything that is counted, and yet is no plan. */
import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { partId } from '../../../src/domain/quantities.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  listed,
  partOf,
  pedalOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import type { Asked } from './second-opinion.js';

export type HardBoard = {
  readonly what: string;
  readonly asked: Asked;
  /** The figures of the best plan, tier by tier. */
  readonly truth: readonly number[];
  /** How many numbers its tiers take; one when left out. */
  readonly steps?: number;
};

const nine = [settingOf(9, 100)];
const two = (change: Parameters<typeof bankOf>[2] = {}, settings = nine): Catalogue =>
  catalogueOf([supplyOf('two', 10, [bankOf(2, settings, change)])]);

const three = (name: string, change: Parameters<typeof pedalOf>[2] = {}): readonly Pedal[] =>
  [1, 2, 3].map((index) => pedalOf(`${name}-${index}`, 50, change));

const adapter = (id: string, fits: string, gives: string, more: Partial<Part> = {}): Part =>
  partOf(id, 4, { kind: 'adapter' }, { fits, gives, ...more });

const whole = (board: Board, catalogue: Catalogue): Asked => ({
  of: { board, catalogue },
  aim: 'cost',
  partial: false,
});

/** Under the aim of cost: euros, bricks, parts and pedals off their preferred volts. */
const costing = (cost: number, bricks: number, parts = 0): readonly number[] => [euros(cost), bricks, parts, 0];

/** So many pedals and such prices that all tiers are too much for one number; racks at some volts. */
function manyTiers(...voltages: readonly number[]): Asked {
  const change = { accepts: listed(9, 12), prefers: volts(12), digital: true, highGain: true };
  const pedals = Array.from({ length: 28 }, (_, index) => pedalOf(`pedal-${index}`, 20, change));
  const racks = voltages.map((each) => supplyOf(`rack-${each}`, 99.97, [bankOf(4, [settingOf(each, 100)])]));
  const parts = [
    partOf('fan', 5.01, { kind: 'chain', tails: 5 }),
    partOf('turn', 3.03, { kind: 'adapter' }, { reverses: true }),
  ];
  return { of: { board: boardOf(pedals), catalogue: catalogueOf(racks, parts) }, aim: 'quiet', partial: true };
}

const inJack = { inlet: 'jack-3.5' };

export const hardBoards: readonly HardBoard[] = [
  {
    // The third unit takes one of each: units of two alike are worth as much.
    what: 'three and three pedals on units of two',
    asked: whole(boardOf([...three('a'), ...three('b', { prefers: volts(9) })]), two()),
    truth: costing(30, 3),
  },
  {
    what: 'three pedals at one setting and three at another of a common switch',
    asked: whole(
      boardOf([...three('a'), ...three('b', { accepts: listed(12) })]),
      two({ switching: 'together' }, [settingOf(9, 100), settingOf(12, 100)]),
    ),
    truth: costing(40, 4),
  },
  {
    what: 'three pedals of one ground and three of the other on common grounds',
    asked: whole(boardOf([...three('a'), ...three('b', { ground: 'positive' })]), two({ isolated: false })),
    truth: costing(40, 4),
  },
  {
    // Two chains of two cost less, but there are only three pedals, and one by itself needs two adapters.
    what: 'three pedals in chains of two',
    asked: whole(
      boardOf(three('a', inJack)),
      catalogueOf(
        [supplyOf('single', 10, [bankOf(1, nine)])],
        [
          partOf('pair', 1, { kind: 'chain', tails: 2 }, { gives: 'jack-3.5' }),
          adapter('clip', 'barrel-2.1', 'snap-clip'),
          adapter('mini', 'snap-clip', 'jack-3.5'),
        ],
      ),
    ),
    truth: costing(29, 2, 3),
  },
  {
    what: 'two ways to adapt two pedals on one unit, and leads for one of each',
    asked: whole(
      boardOf([pedalOf('plain', 50), ...three('a', inJack).slice(1)], {
        owned: {
          supplies: new Map(),
          parts: new Map([
            [partId('clip'), 1],
            [partId('mini'), 1],
          ]),
        },
      }),
      catalogueOf(
        [supplyOf('three', 10, [bankOf(3, nine)])],
        [
          adapter('straight', 'barrel-2.1', 'jack-3.5'),
          adapter('clip', 'barrel-2.1', 'snap-clip', { stock: 0 }),
          adapter('mini', 'snap-clip', 'jack-3.5', { stock: 0 }),
        ],
      ),
    ),
    truth: costing(14, 1, 3),
  },
  {
    what: 'three pedals on one unit, each by an adapter of which there are two or by one of which there are more',
    asked: whole(
      boardOf([50, 60, 70].map((draw) => pedalOf(`pedal-${draw}`, draw, inJack))),
      catalogueOf(
        [supplyOf('three', 10, [bankOf(3, nine)])],
        [
          adapter('clip', 'barrel-2.1', 'snap-clip', { stock: 2 }),
          adapter('mini', 'snap-clip', 'jack-3.5'),
          adapter('straight', 'barrel-2.1', 'jack-3.5', { price: euros(9) }),
        ],
      ),
    ),
    truth: costing(10 + 8 + 8 + 9, 1, 5),
  },
  { what: 'tiers that take two numbers', asked: manyTiers(9), truth: [0, 0, 7 * 9997, 7, 0, 28], steps: 2 },
  // The money is the same for 9 V and 12 V: the last tier decides.
  {
    what: 'tiers that take two numbers, of which the second decides',
    asked: manyTiers(9, 12),
    truth: [0, 0, 7 * 9997, 7, 0, 0],
    steps: 2,
  },
];

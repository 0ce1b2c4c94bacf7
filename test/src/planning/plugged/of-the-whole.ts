/** Rules that speak of a supply at a venue, or of the wiring as a whole. */
import type { WiredFeed } from '../../../../src/domain/board.js';
import { euros, onMains, volts } from '../../../support/builders.js';
import { box, flip, one, pairWith } from '../given.js';
import { plug, ruleCase, type RuleCase } from './plugged-case.js';

const alone: readonly WiredFeed[] = [plug('one')];

const boxes = { box: 2 } as const;
const twoUnits: readonly WiredFeed[] = [plug('one'), plug('two', { unit: 2 })];

export const ofTheWhole: readonly RuleCase[] = [
  ruleCase(
    'mains',
    'other volts at the venue',
    {
      pedals: one(),
      supplies: [box(1, {}, onMains(100, 127))],
      policy: { mains: [volts(230)] },
      wiring: alone,
    },
    { policy: { mains: [volts(110)] } },
  ),
  ruleCase(
    'mains',
    'a supply that does not state them',
    { pedals: one(), supplies: [box(1)], policy: { mains: [volts(230)] }, wiring: alone },
    { policy: { mains: [] } },
  ),
  ruleCase(
    'stock',
    'more leads than there are',
    {
      pedals: one(50, { polarity: 'centre-positive' }),
      supplies: [box(1)],
      parts: [{ ...flip, stock: 0 }],
      wiring: [plug('one', { adapters: ['flip'] })],
    },
    { owned: { box: 1, flip: 1 } },
  ),
  ruleCase(
    'stock',
    'more units than there are',
    { pedals: pairWith(), supplies: [box(1, {}, { stock: 0 })], wiring: twoUnits },
    { owned: boxes },
  ),
  ruleCase(
    'limit',
    'supplies in use',
    { pedals: pairWith(), supplies: [box(1)], owned: boxes, policy: { bricks: 1 }, wiring: twoUnits },
    { policy: { bricks: 2 } },
  ),
  ruleCase(
    'limit',
    'mains sockets',
    { pedals: pairWith(), supplies: [box(1)], owned: boxes, policy: { sockets: 1 }, wiring: twoUnits },
    { policy: { sockets: 2 } },
  ),
  ruleCase(
    'limit',
    'the budget, for what is not owned',
    {
      pedals: one(50, { polarity: 'centre-positive' }),
      supplies: [box(1)],
      parts: [flip],
      policy: { budget: euros(3.99) },
      wiring: [plug('one', { adapters: ['flip'] })],
    },
    { policy: { budget: euros(4) } },
  ),
];

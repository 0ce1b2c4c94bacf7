/** Rules that speak of one output and what hangs there. */
import type { WiredFeed } from '../../../../src/domain/board.js';
import { bankOf, factor, listed, milliamps, policyOf, settingOf, volts } from '../../../support/builders.js';
import { adapter, box, boxOf, fan, flip, one, pairWith } from '../given.js';
import { plug, ruleCase, type RuleCase } from './plugged-case.js';

const { headroom } = policyOf();
const alternating = { power: 'AC', polarity: null } as const;
const alone: readonly WiredFeed[] = [plug('one')];
const chained: readonly WiredFeed[] = [plug('one', { chain: 'fan' }), plug('two', { chain: 'fan' })];
const outputAt = (...settings: Parameters<typeof settingOf>[]) =>
  boxOf([
    bankOf(
      1,
      settings.map((each) => settingOf(...each)),
    ),
  ]);

export const ofOneOutput: readonly RuleCase[] = [
  ruleCase(
    'power',
    'a DC pedal on AC',
    { pedals: one(), supplies: [box(1, alternating)], wiring: alone },
    { supplies: [box(1)] },
  ),
  ruleCase(
    'power',
    'an AC pedal on DC',
    { pedals: one(50, alternating), supplies: [box(1)], wiring: alone },
    { supplies: [box(1, alternating)] },
  ),
  ruleCase(
    'voltage',
    'too many volts',
    {
      pedals: one(50, { accepts: listed(9, 12) }),
      supplies: [outputAt([18, 100])],
      wiring: [plug('one', { volts: 18 })],
    },
    { pedals: one(50, { accepts: listed(9, 18) }) },
  ),
  ruleCase(
    'voltage',
    'too few volts',
    { pedals: one(50, { accepts: listed(12) }), supplies: [box(1)], wiring: alone },
    { pedals: one(50, { accepts: listed(9) }) },
  ),
  ruleCase(
    'voltage',
    'an unregulated output that rises',
    { pedals: one(50, { survives: volts(12.999) }), supplies: [outputAt([9, 100, 13])], wiring: alone },
    { pedals: one(50, { survives: volts(13) }) },
  ),
  ruleCase(
    'current',
    'one pedal',
    {
      pedals: one(100.001),
      supplies: [outputAt([9, 120])],
      policy: { headroom: { ...headroom, alone: factor(1.2) } },
      wiring: alone,
    },
    { pedals: one(100) },
  ),
  ruleCase(
    'current',
    'a guess',
    {
      pedals: one(100, { figure: 'guess' }),
      supplies: [outputAt([9, 149.999])],
      policy: { guess: factor(1.5) },
      wiring: alone,
    },
    { supplies: [outputAt([9, 150])] },
  ),
  ruleCase(
    'current',
    'a chain',
    {
      pedals: pairWith(),
      supplies: [outputAt([9, 159.999])],
      parts: [fan],
      policy: { headroom: { ...headroom, chained: factor(2) } },
      wiring: chained,
    },
    { supplies: [outputAt([9, 160])] },
  ),
  ruleCase(
    'startup',
    'one pedal',
    { pedals: one(50, { startup: milliamps(100.001) }), supplies: [box(1)], wiring: alone },
    { pedals: one(50, { startup: milliamps(100) }) },
  ),
  ruleCase(
    'startup',
    'in company',
    { pedals: pairWith({ startup: milliamps(60.001) }), supplies: [box(1)], parts: [fan], wiring: chained },
    { pedals: pairWith({ startup: milliamps(60) }) },
  ),
  ruleCase(
    'polarity',
    'plus for minus',
    { pedals: one(50, { polarity: 'centre-positive' }), supplies: [box(1)], parts: [flip], wiring: alone },
    { wiring: [plug('one', { adapters: ['flip'] })] },
  ),
  ruleCase(
    'polarity',
    'a switch that would have to stand both ways',
    {
      pedals: pairWith({ polarity: 'centre-positive' }),
      supplies: [box(1, { polarity: 'either' })],
      parts: [fan, flip],
      wiring: chained,
    },
    { wiring: [plug('one', { chain: 'fan' }), plug('two', { chain: 'fan', adapters: ['flip'] })] },
  ),
  ruleCase(
    'plug',
    'another inlet',
    {
      pedals: one(50, { inlet: 'jack-3.5' }),
      supplies: [box(1)],
      parts: [adapter('mini', 'barrel-2.1', 'jack-3.5')],
      wiring: alone,
    },
    { wiring: [plug('one', { adapters: ['mini'] })] },
  ),
  ruleCase(
    'plug',
    'three adapters in a row',
    {
      pedals: one(),
      supplies: [box(1)],
      parts: [adapter('long', 'barrel-2.1', 'barrel-2.1')],
      wiring: [plug('one', { adapters: ['long', 'long', 'long'] })],
    },
    { wiring: [plug('one', { adapters: ['long', 'long'] })] },
  ),
];

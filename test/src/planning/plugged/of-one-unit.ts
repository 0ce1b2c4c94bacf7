/** Rules that speak of several outputs, or of several pedals. */
import { ownBatteryOf } from '../../../../src/domain/own-battery.js';
import { microampHours, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import type { WiredFeed } from '../../../../src/domain/board.js';
import {
  bankOf,
  currentTotal,
  factor,
  fedBy,
  listed,
  milliamps,
  onCharge,
  partOf,
  pedalOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { box, boxOf, fan, one, pairWith, stack, twin } from '../given.js';
import { plug, plugInlet, ruleCase, type RuleCase } from './plugged-case.js';

const alone: readonly WiredFeed[] = [plug('one')];
const apart: readonly WiredFeed[] = [plug('one'), plug('two', { outputs: [2] })];
const chained: readonly WiredFeed[] = [plug('one', { chain: 'fan' }), plug('two', { chain: 'fan' })];
const isolatedPair = (joins: readonly ('series' | 'parallel')[], more: Parameters<typeof bankOf>[2] = {}) =>
  boxOf([bankOf(2, [settingOf(9, 100)], { joins, ...more })]);

const together = { switching: 'together' } as const;
/** A pedal on a nine-volt battery of 500 mAh, which is owned. */
function onBattery(draw: number, change: Parameters<typeof pedalOf>[2] = {}) {
  const battery = { type: 'block', count: 1, of: pedalId('one') };
  const [pedal = pedalOf('one', draw)] = one(draw, { battery, ...change });
  const block = partOf('block', 3, {
    kind: 'battery',
    type: 'block',
    millivolts: volts(9),
    microampHours: microampHours(500_000),
  });
  const supply = ownBatteryOf(pedal, block);
  if (supply === null) throw new RangeError('a battery that the pedal takes');
  return {
    pedals: [pedal],
    supplies: [],
    parts: [block],
    gear: { supplies: [supply] },
    owned: { [supply.id]: 1, block: 1 },
    wiring: [{ ...plug('one'), supply: supply.id }],
  };
}

const batteriesFor = (change: number) => ({ batteries: { change: factor(change), pay: factor(1) } });

const both = [settingOf(9, 100), settingOf(12, 100)];
const wide = pairWith({ accepts: listed(9, 12) });
const positive = pairWith({ ground: 'positive' });

/** A pedal on a supply that hangs on the box by an inlet of 9 V. */
const onLock = (milliampsDrawn: number) => ({
  pedals: one(50),
  supplies: [
    box(2),
    supplyOf('lock', 10, [bankOf(1, [settingOf(9, 60)])], fedBy({ microamps: milliamps(milliampsDrawn) })),
  ],
  owned: { box: 1, lock: 1 },
  wiring: [{ ...plug('one'), supply: supplyId('lock') }],
});

export const ofOneUnit: readonly RuleCase[] = [
  ruleCase('inlet', 'of a supply that hangs on nothing', onLock(100), { inlets: [plugInlet('lock')] }),
  ruleCase('inlet', 'by what it draws', { ...onLock(100.001), inlets: [plugInlet('lock')] }, onLock(100)),
  ruleCase(
    'inlet',
    'beside a pedal on one ground',
    {
      ...onLock(100),
      pedals: pairWith(),
      supplies: [box(2, { isolated: false }), ...onLock(100).supplies.slice(1)],
      wiring: [...onLock(100).wiring, plug('two', { outputs: [2] })],
      inlets: [plugInlet('lock')],
    },
    { supplies: onLock(100).supplies },
  ),
  ruleCase(
    'total',
    'of the supply in mA',
    { pedals: pairWith(), supplies: [box(2, {}, { total: currentTotal(79.999) })], wiring: apart },
    { supplies: [box(2, {}, { total: currentTotal(80) })] },
  ),
  ruleCase(
    'total',
    'of a bank in W',
    { pedals: pairWith(), supplies: [box(2, { total: powerTotal(0.719) })], wiring: apart },
    { supplies: [box(2, { total: powerTotal(0.72) })] },
  ),
  ruleCase(
    'battery',
    'that does not last',
    // 500 mAh ÷ 50 mA = 10 h.
    { ...onBattery(50), policy: batteriesFor(10.001) },
    { policy: batteriesFor(10) },
  ),
  ruleCase(
    'battery',
    'of volts that the pedal does not accept',
    { ...onBattery(50, { accepts: listed(12) }), policy: batteriesFor(10) },
    { pedals: onBattery(50).pedals },
  ),
  ruleCase('battery', 'of which nobody says how long a set must last', onBattery(50), { policy: batteriesFor(10) }),
  ruleCase(
    'runtime',
    'of a power bank, to the last of its charge',
    // 9 V × (40 + 40) mA × 2 h = 1.44 Wh.
    {
      pedals: pairWith(),
      supplies: [box(2, {}, onCharge(1.439))],
      wiring: apart,
      policy: { runtime: { hours: factor(2), usable: factor(1) } },
    },
    { supplies: [box(2, {}, onCharge(1.44))] },
  ),
  ruleCase(
    'runtime',
    'of a power bank of which nobody says how long it has to last',
    { pedals: pairWith(), supplies: [box(2, {}, onCharge(74))], wiring: apart },
    { policy: { runtime: { hours: factor(2), usable: factor(1) } } },
  ),
  ruleCase(
    'startup',
    'of all on a supply in mA',
    {
      pedals: pairWith({ startup: milliamps(60) }),
      supplies: [box(2, {}, { total: currentTotal(99.999) })],
      wiring: apart,
    },
    { supplies: [box(2, {}, { total: currentTotal(100) })] },
  ),
  ruleCase(
    'startup',
    'of all on a bank in W',
    { pedals: pairWith({ startup: milliamps(60) }), supplies: [box(2, { total: powerTotal(0.899) })], wiring: apart },
    { supplies: [box(2, { total: powerTotal(0.9) })] },
  ),
  ruleCase(
    'setting',
    'a bank switched together',
    {
      pedals: wide,
      supplies: [boxOf([bankOf(2, both, together)])],
      wiring: [plug('one'), plug('two', { outputs: [2], volts: 12 })],
    },
    { wiring: apart },
  ),
  ruleCase(
    'setting',
    'one output at two settings',
    {
      pedals: wide,
      supplies: [boxOf([bankOf(1, both)])],
      parts: [fan],
      wiring: [plug('one', { chain: 'fan' }), plug('two', { chain: 'fan', volts: 12 })],
    },
    { wiring: chained },
  ),
  ruleCase(
    'ground',
    'a common ground',
    { pedals: positive, supplies: [box(2, { isolated: false })], wiring: apart },
    { supplies: [box(2)] },
  ),
  ruleCase(
    'ground',
    'a chain',
    { pedals: positive, supplies: [box(1)], parts: [fan], wiring: chained },
    { pedals: pairWith() },
  ),
  ruleCase(
    'chain',
    'no chain lead',
    { pedals: pairWith(), supplies: [box(1)], parts: [fan], wiring: [plug('one'), plug('two')] },
    { wiring: chained },
  ),
  ruleCase(
    'chain',
    'too few tails',
    {
      pedals: [...pairWith(), pedalOf('three', 1)],
      supplies: [box(1)],
      parts: [partOf('fan', 1, { kind: 'chain', tails: 2 })],
      wiring: [...chained, plug('three', { chain: 'fan' })],
    },
    { parts: [fan] },
  ),
  ruleCase(
    'chain',
    'the policy',
    { pedals: pairWith(), supplies: [box(1)], parts: [fan], policy: { chains: 'never' }, wiring: chained },
    { policy: {} },
  ),
  ruleCase(
    'chain',
    'a pedal that must be alone',
    { pedals: pairWith({ alone: true }), supplies: [box(1)], parts: [fan], wiring: chained },
    { pedals: pairWith() },
  ),
  ruleCase(
    'chain',
    'a chain lead for one',
    { pedals: one(), supplies: [box(1)], parts: [fan], wiring: [plug('one', { chain: 'fan' })] },
    { wiring: alone },
  ),
  ruleCase(
    'join',
    'not allowed by its maker',
    {
      pedals: one(50, { accepts: listed(18) }),
      supplies: [isolatedPair([])],
      parts: [stack],
      wiring: [plug('one', { outputs: [1, 2], volts: 18, join: ['series', 'stack'] })],
    },
    { supplies: [isolatedPair(['series'])] },
  ),
  ruleCase(
    'join',
    'the wrong lead',
    {
      pedals: one(150),
      supplies: [isolatedPair(['parallel'])],
      parts: [stack, twin],
      wiring: [plug('one', { outputs: [1, 2], join: ['parallel', 'stack'] })],
    },
    { wiring: [plug('one', { outputs: [1, 2], join: ['parallel', 'twin'] })] },
  ),
  ruleCase(
    'join',
    'outputs that are not isolated',
    {
      pedals: one(150),
      supplies: [isolatedPair(['parallel'], { isolated: false })],
      parts: [twin],
      wiring: [plug('one', { outputs: [1, 2], join: ['parallel', 'twin'] })],
    },
    { supplies: [isolatedPair(['parallel'])] },
  ),
];

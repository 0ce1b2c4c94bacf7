/** Boards without a plan for what batteries, power banks and fed supplies lack, worked out by hand. */
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { ownBatteryOf } from '../../src/domain/own-battery.js';
import { microampHours, pedalId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { box, type Given } from '../src/planning/given.js';
import {
  bankOf,
  factor,
  fedBy,
  listed,
  milliamps,
  onCharge,
  partOf,
  pedalOf,
  settingOf,
  supplyOf,
  volts,
} from './builders.js';

/** A 9 V pedal that takes one block battery. */
export const wah = (draw: number, changed: Partial<Pedal> = {}): Pedal =>
  pedalOf('wah', draw, { battery: { type: '9V-block', count: 1, of: pedalId('wah') }, ...changed });

/** A nine-volt block for 3 euros, as many as one wants. */
export const block = (milliampHours: number, changed: Partial<Part> = {}): Part =>
  partOf(
    'block',
    3,
    { kind: 'battery', type: '9V-block', millivolts: volts(9), microampHours: microampHours(milliampHours * 1000) },
    changed,
  );

/** The sets of these batteries that go into the pedals, as gear that is owned. */
export function setsOf(pedals: readonly Pedal[], parts: readonly Part[]): Pick<Given, 'gear' | 'owned'> {
  const supplies = pedals.flatMap((pedal) => parts.flatMap((part) => ownBatteryOf(pedal, part) ?? []));
  return { gear: { supplies }, owned: Object.fromEntries(supplies.map(({ id }) => [id, 1])) };
}

/** A wah that draws so much, and blocks that hold so much, of which a set has to last eight hours; a hundred are paid for. */
export function onBlocks(draw: number, milliampHours: number, more: Partial<Given> = {}): Given {
  const [pedals, parts] = [[wah(draw)], [block(milliampHours)]];
  const batteries = { change: factor(8), pay: factor(100) };
  return { pedals, parts, supplies: [], ...setsOf(pedals, parts), policy: { batteries }, ...more };
}

/** A power bank with one 9 V output of 200 mA, that holds so much. */
export const bankHolding = (wattHours: number): Supply =>
  supplyOf('bank', 40, [bankOf(1, [settingOf(9, 200)])], { ...onCharge(wattHours), stock: 1 });

/** A power bank has to last four hours, by half of what it holds. */
export const fourHours = { runtime: { hours: factor(4), usable: factor(0.5) } };

/** A fed supply with one 9 V output of 100 mA, whose inlet takes 12 V. */
export const lock = supplyOf(
  'lock',
  20,
  [bankOf(1, [settingOf(9, 100)])],
  fedBy({ accepts: listed(12), microamps: milliamps(150) }),
);

export const impossibleSources: readonly {
  readonly why: string;
  readonly given: Given;
  readonly pedals: readonly string[];
  readonly facts: readonly ('battery' | 'runtime' | 'stock' | 'sockets')[];
  readonly ways: readonly string[];
}[] = [
  {
    why: 'a battery is empty too soon',
    given: onBlocks(2, 10),
    pedals: ['wah'],
    facts: ['battery'],
    ways: ['supply', 'battery', 'hours'],
  },
  {
    why: 'nobody has the battery',
    given: { ...onBlocks(2, 10, { parts: [], gear: {}, owned: {} }) },
    pedals: ['wah'],
    facts: [],
    ways: ['supply', 'battery'],
  },
  {
    // 9 V × 100 mA × 4 h take 3.6 Wh; half of 1.8 Wh arrives.
    why: 'a power bank is empty too soon',
    given: { pedals: [pedalOf('looper', 100)], supplies: [bankHolding(1.8)], policy: fourHours },
    pedals: ['looper'],
    facts: ['runtime'],
    ways: ['supply', 'hours'],
  },
  {
    why: 'a power bank is empty too soon, and there is no socket',
    given: { pedals: [pedalOf('looper', 100)], supplies: [bankHolding(1.8)], policy: { ...fourHours, sockets: 0 } },
    pedals: ['looper'],
    facts: ['runtime'],
    ways: ['supply', 'hours'],
  },
  {
    why: 'nothing feeds the inlet of a fed supply',
    given: { pedals: [pedalOf('p1', 60), pedalOf('p2', 70)], supplies: [box(1, {}, { stock: 1 }), lock] },
    pedals: ['p1', 'p2'],
    facts: ['stock'],
    ways: ['stock', 'supply', 'supply', 'inlet', 'pedal', 'pedal'],
  },
];

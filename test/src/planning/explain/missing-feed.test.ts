import { expect, it } from 'vitest';

import {
  bankOf,
  factor,
  fedBy,
  listed,
  milliamps,
  onCharge,
  pedalOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { fourHours, lock } from '../../../support/impossible-sources.js';
import { box, type Given } from '../given.js';
import { offered } from './explained.js';

/** One output for two pedals, and a supply that hangs on nothing there is. */
const unfed = (more: Partial<Given> = {}): Given => ({
  pedals: [pedalOf('p1', 60), pedalOf('p2', 70)],
  supplies: [box(1, {}, { stock: 1 }), lock],
  ...more,
});

it('is told with the output that the inlet needs, its reserve counted', async () => {
  const headroom = { alone: factor(1.2), chained: factor(1), supply: factor(1) };
  const { ways, texts } = await offered('inlet', unfed({ policy: { headroom } }));
  expect(ways.map(({ change: { of, supply } }) => [of, supply.source.kind, supply.banks[0]?.settings])).toEqual([
    ['lock', 'mains', [{ millivolts: volts(12), rating: milliamps(180), openCircuit: null }]],
  ]);
  expect(texts).toEqual([
    'Find one more supply for the inlet of lock: an isolated output of 12 V DC with 180 mA or more, centre-negative, ' +
      'plug 2.1 mm barrel. Then the cheapest plan buys 1 × box and 1 × lock besides, for 30.00 EUR.',
  ]);
});

it('may be a power bank, with what it has to hold, where there is no socket', async () => {
  const bank = supplyOf('bank', 40, [bankOf(1, [settingOf(9, 100)])], { ...onCharge(20), stock: 1 });
  const given = unfed({ supplies: [bank, lock], policy: { ...fourHours, sockets: 0 } });
  const { texts } = await offered('inlet', given);
  // 12 V × 150 mA × 4 h are 7.2 Wh, of which half arrives.
  expect(texts[0]).toMatch(/with 150 mA or more, .* of a power bank of 14\.4 Wh or more\. /);
});

it('of several supplies is told in one text', async () => {
  const locks = ['lock', 'latch', 'bolt'].map((id, at) =>
    supplyOf(id, 20, lock.banks, fedBy({ accepts: listed(12 + at), microamps: milliamps(150) })),
  );
  const { texts } = await offered('inlet', unfed({ supplies: [box(1, {}, { stock: 1 }), ...locks] }));
  expect(texts).toHaveLength(1);
  expect(texts[0]).toMatch(
    /^Find one more supply for the inlet of any one of these: lock, .* 12 V .*; latch, .*; bolt, .* 14 V /,
  );
});

const none: readonly (readonly [string, Given])[] = [
  ['there is no fed supply', unfed({ supplies: [box(1, {}, { stock: 1 })] })],
  ['it would be one supply in use too many', unfed({ policy: { bricks: 2 } })],
  ['the fed supply has nothing for the pedals', unfed({ pedals: [pedalOf('p1', 60), pedalOf('p2', 170)] })],
  ['none of it can be had', unfed({ supplies: [box(1, {}, { stock: 1 }), { ...lock, stock: 0 }] })],
];

it.each(none)('is not offered where %s', async (_, given) => {
  const { ways } = await offered('inlet', given);
  expect(ways).toEqual([]);
});

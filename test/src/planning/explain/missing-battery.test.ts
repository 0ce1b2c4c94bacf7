import { expect, it } from 'vitest';

import { minorUnits, pedalId } from '../../../../src/domain/quantities.js';
import { factor, listed, pedalOf, volts } from '../../../support/builders.js';
import { block, onBlocks, setsOf, wah } from '../../../support/impossible-sources.js';
import type { Given } from '../given.js';
import { offered } from './explained.js';

it('is looked for where what there is would be empty too soon: load × hours, at the volts that its type has', async () => {
  const { ways, texts } = await offered('battery', onBlocks(2.3, 10));
  expect(ways.map(({ change: { pedal, count, battery } }) => [pedal, count, battery.role])).toEqual([
    ['wah', 1, { kind: 'battery', type: '9V-block', millivolts: 9000, microampHours: 19_000 }],
  ]);
  expect(texts).toEqual([
    'Find batteries for wah: 1 × 9 V block battery of 9 V with 19 mAh or more, which last 8 h by what is known of the draw. ' +
      'Then there is a plan that buys nothing besides.',
  ]);
});

it('is looked for as a set, a share of the volts each, where nobody has any of its type', async () => {
  const pedals = [
    wah(100, { accepts: listed(9, 12), prefers: volts(12), battery: { type: 'AA', count: 6, of: pedalId('wah') } }),
  ];
  const { ways, texts } = await offered('battery', { ...onBlocks(2, 10), ...setsOf(pedals, []), pedals, parts: [] });
  expect(ways.map(({ change: { battery } }) => battery.role)).toMatchObject([
    { millivolts: 2000, microampHours: 800_000 },
  ]);
  expect(texts[0]).toMatch(/^Find batteries for wah: 6 × AA batteries of 2 V with 800 mAh or more, which last 8 h /);
});

it('counts a guess as the board does', async () => {
  const pedals = [wah(2, { figure: 'guess' })];
  const policy = { batteries: { change: factor(8), pay: factor(100) }, guess: factor(1.5) };
  const { ways } = await offered('battery', { ...onBlocks(2, 10), ...setsOf(pedals, [block(10)]), pedals, policy });
  expect(ways.map(({ change }) => change.battery.role.microampHours)).toEqual([24_000]);
});

it('is one for each of several pedals, any of which would do', async () => {
  const pedals = ['alder', 'birch', 'cedar'].map((id) =>
    pedalOf(id, 2, { battery: { type: '9V-block', count: 1, of: pedalId(id) } }),
  );
  const parts = [block(20, { stock: 2 })];
  const { texts } = await offered('battery', {
    ...onBlocks(2, 20),
    ...setsOf(pedals, parts),
    pedals,
    parts,
    policy: { batteries: { change: factor(8), pay: factor(8) } },
  });
  expect(texts).toHaveLength(1);
  expect(texts[0]).toMatch(
    /^Find batteries for any one of these pedals: alder, 1 × 9 V block battery of 9 V with 16 mAh or more; birch, .*; cedar, .*\. They last 8 h /,
  );
});

const none: readonly (readonly [string, Given])[] = [
  ['nobody has said how long it has to last', onBlocks(2, 10, { policy: {} })],
  ['the pedal takes none', onBlocks(2, 10, { pedals: [pedalOf('wah', 2)], gear: {}, owned: {} })],
  // Money is short, not batteries.
  [
    'one that does can be bought',
    onBlocks(2, 500, { policy: { batteries: { change: factor(8), pay: factor(100) }, budget: minorUnits(1) } }),
  ],
  [
    'its type gives volts that the pedal does not accept',
    onBlocks(2, 10, { pedals: [wah(2, { accepts: listed(12) })] }),
  ],
];

it.each(none)('is not looked for where %s', async (_, given) => {
  const { ways } = await offered('battery', given);
  expect(ways).toEqual([]);
});

it('that holds a milliamp-hour less does not do', async () => {
  const { ways } = await offered('battery', onBlocks(2.3, 18));
  expect(ways.map(({ change }) => change.battery.role.microampHours)).toEqual([19_000]);
});

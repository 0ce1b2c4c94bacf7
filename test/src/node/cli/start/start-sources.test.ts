import { readFile, writeFile } from 'node:fs/promises';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, complaints, fixture } from '../command.js';
import { enough, first, next, notOwned, quietPolicy, starting } from './starting.js';
import type { Step } from './scripted.js';

const { at, printed, start } = starting({ catalogue: false });

const whole = 'barrel-2.1 negative ground neg';
const slipway = fixture('shops/slipway.yaml');

/** A power bank with two outputs, as its label describes it. */
const bank: readonly Step[] = [
  ['own a supply', true],
  ['supply called', 'Barge'],
  ['watt-hours', '74 Wh'],
  ['regulated', 'yes'],
  ['How many outputs', '2'],
  ['each of them give', '9v dc 500ma'],
  ['other volts as well', false],
  ['Which sign', 'centre-negative'],
  ['Which plug', 'barrel-2.1'],
  ['isolated', 'yes'],
  ['be joined', 'none'],
  ['other outputs', false],
  ['give together', 'none'],
  ['Is this right?', true],
  ['How many of it', ''],
  ['own another supply', false],
  ['own chain leads', false],
];

describe('a pedal with a source of its own', () => {
  it('keeps its adapter, of which nothing else has to be known or assumed', async () => {
    const path = at('hall.yaml');
    const { heard } = await start(path, [
      first('Wharf station own adapter 220-240v'),
      enough,
      ...quietPolicy,
      notOwned,
      ['plugged in today', false],
    ]);
    expect(heard.join('\n')).toContain('Wharf station: keeps its own adapter for 220 to 240 V mains.');
    expect(heard.join('\n')).not.toContain('Not known yet');
    const board = parse(await readFile(path, 'utf8')) as { readonly pedals: readonly object[] };
    expect(board.pedals).toEqual([{ name: 'Wharf station', adapter: { mains: { from: 220, to: 240 } } }]);
    expect(board).not.toHaveProperty('assume');
    const chosen = await boardfeed(['choose', path, slipway, '--json']);
    expect(chosen.code, complaints(chosen)).toBe(0);
    expect(JSON.parse(chosen.output)).toMatchObject({ feeds: [{ pedal: 'wharf-station', source: 'adapter' }] });
  });

  it('that has its figures, too, may be fed by others', async () => {
    await start(undefined, [
      first(`Tern looper 9v 180 ${whole} own adapter`),
      enough,
      ...quietPolicy,
      notOwned,
      ['plugged in today', false],
    ]);
    expect(parse(printed.output)).toMatchObject({
      pedals: [{ name: 'Tern looper', volts: 9, milliamps: 180, power: 'DC', adapter: {} }],
    });
  });

  it('takes batteries, for which hours and what is owned are asked then', async () => {
    const path = at('street.yaml');
    const { heard } = await start(path, [
      first(`Sedge wah 9v 2 ${whole} block`),
      next(`Ruff tuner 9v 20 ${whole} 6xAA`),
      enough,
      ...quietPolicy,
      ['How many hours must a set of batteries last', '12'],
      notOwned,
      ['Which batteries do you own', '2 x AA block'],
      ['Which batteries do you own', '2 x 9v block'],
      ['Which other batteries', '9v block'],
      ['Which other batteries', '6xAA 2500mAh'],
      ['Which other batteries', ''],
      ['plugged in today', false],
    ]);
    expect(heard).toContain('That kind was told already: tell all of a kind at once.');
    expect(heard.join('\n')).toContain(
      'Sedge wah: 9 V, 2 mA, centre-negative, 2.1 mm barrel, negative ground, takes 1 × 9 V block battery.',
    );
    const text = await readFile(path, 'utf8');
    expect(parse(text)).toMatchObject({
      policy: { batteries: { change: 12, pay: 100 } },
      pedals: [{ battery: { type: '9V-block', count: 1 } }, { battery: { type: 'AA', count: 6 } }],
      gear: {
        batteries: [
          { name: '9 V block 500 mAh', type: '9V-block', volts: 9, milliampHours: 500 },
          { name: 'AA 2500 mAh', type: 'AA', volts: 1.5, milliampHours: 2500 },
        ],
      },
      owned: { batteries: { '9-v-block-500-mah': 2, 'aa-2500-mah': 6 } },
    });
    expect(text).toContain('# as such batteries usually hold: an estimate');
    const chosen = await boardfeed(['choose', path, slipway, '--json']);
    expect(chosen.code, complaints(chosen)).toBe(0);
    expect(JSON.parse(chosen.output)).toMatchObject({
      score: { money: '0.00' },
      feeds: [{ source: 'battery', battery: { id: '9-v-block-500-mah', count: 1 } }, { source: 'battery' }],
    });
  });

  it('is told of a board that is there, whose policy then says how long batteries must last', async () => {
    const path = at('street.yaml');
    await start(path, [first(`Gorse drive 9v 8 ${whole}`), enough, ...quietPolicy, notOwned]);
    const before = await readFile(path, 'utf8');
    await start(path, [
      next(`Sedge wah 9v 2 ${whole} block`),
      enough,
      ['How many hours must a set', ''],
      notOwned,
      ['Which batteries do you own', ''],
    ]);
    const text = await readFile(path, 'utf8');
    expect(parse(text)).toMatchObject({
      policy: { batteries: { change: 8, pay: 100 } },
      pedals: [{}, { battery: {} }],
    });
    for (const line of before.split('\n')) expect(text).toContain(line);
    // And then not again.
    await writeFile(path, text.replace('currency', 'owned: {supplies: []}\ncurrency'));
    await start(path, [enough]);
  });
});

it('a power bank is a supply in watt-hours, and is asked how long it must last', async () => {
  const path = at('street.yaml');
  await start(path, [
    first(`Gannet looper 9v 120 ${whole}`),
    enough,
    ...quietPolicy,
    ...bank,
    ['How many hours must the power bank last', 'soon'],
    ['How many hours must the power bank last', '3 h'],
    ['plugged in today', false],
  ]);
  expect(parse(await readFile(path, 'utf8'))).toMatchObject({
    policy: { runtime: { hours: 3, usable: 0.8 } },
    gear: { supplies: [{ name: 'Barge', charge: { wattHours: 74 } }] },
    owned: { supplies: ['barge'] },
  });
  const chosen = await boardfeed(['choose', path, '--json']);
  expect(chosen.code, complaints(chosen)).toBe(0);
  expect(JSON.parse(chosen.output)).toMatchObject({ feeds: [{ supply: 'barge' }], runtimes: [{ supply: 'barge' }] });
});

it('nobody is asked of batteries or hours who has none', async () => {
  const { heard } = await start(undefined, [first(`Gorse drive 9v 8 ${whole}`), enough, ...quietPolicy, notOwned]);
  expect(heard.join('\n')).not.toMatch(/How many hours|Which batteries/);
  expect(parse(printed.output)).not.toHaveProperty('policy.batteries');
});

/** A converter lead, as its label describes it. */
const step = (inlet: Step[1]): readonly Step[] => [
  ['own another supply', true],
  ['supply called', 'Nine-volt step'],
  ['hangs on another supply', inlet],
  ['volts of its inlet', 'DC'],
  ['sign is printed at its inlet', 'centre-negative'],
  ['plug goes into its inlet', 'barrel-2.1'],
  ['regulated', 'yes'],
  ['How many outputs', '1'],
  ['each of them give', '12v dc 400ma'],
  ['other volts as well', false],
  ['Which sign', 'centre-negative'],
  ['Which plug', 'barrel-2.1'],
  ['isolated', 'yes'],
  ['other outputs', false],
  ['give together', 'none'],
  ['Is this right?', true],
  ['How many of it', ''],
];

describe('a supply that hangs on another one', () => {
  it('is told by what its inlet takes, and asked where it hangs', async () => {
    const path = at('street.yaml');
    const { heard } = await start(path, [
      ...[first(`Gannet looper 12v 120 ${whole}`), enough, ...quietPolicy, ...bank.slice(0, -2)],
      ['own another supply', true],
      ['supply called', 'Nine-volt step'],
      ['hangs on another supply', '9 V'],
      ...step('9 V 400 mA').slice(2),
      ['own another supply', false],
      ['own chain leads', false],
      ['How many hours must the power bank last', '3'],
      ['plugged in today', true],
      ['Gannet looper?', 'b'],
      ['Nine-volt step inlet?', 'b'],
      ['Nine-volt step inlet?', 'a2'],
    ]);
    expect(heard.join('\n')).toContain('write the volts and the current that it takes: 12 V DC 600 mA.');
    expect(heard.join('\n')).toContain('That one hangs on another supply itself');
    expect(parse(await readFile(path, 'utf8'))).toMatchObject({
      gear: {
        supplies: [
          { name: 'Barge' },
          {
            name: 'Nine-volt step',
            inlet: { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative', volts: 9, milliamps: 400 },
          },
        ],
      },
      wiring: [
        { pedal: 'gannet-looper', supply: 'nine-volt-step', unit: 1, output: 1, volts: 12 },
        { inlet: 'nine-volt-step', inletUnit: 1, supply: 'barge', unit: 1, output: 2, volts: 9 },
      ],
    });
    const checked = await boardfeed(['check', path, '--json']);
    expect(checked.code, complaints(checked)).toBe(0);
    expect(JSON.parse(checked.output)).toMatchObject({ status: 'safe', feeds: [{ supply: 'nine-volt-step' }] });
  });

  it('has its output to itself, and stays a comment while something of its inlet is not known', async () => {
    const unread = step('9 V 400 mA').map((one): Step =>
      one[0] === 'Is this right?' ? ['until this is known: inlet', true] : one,
    );
    const steps = unread.map((one): Step => (one[0] === 'sign is printed at its inlet' ? [one[0], 'unknown'] : one));
    await start(undefined, [
      ...[first(`Gannet looper 9v 120 ${whole}`), enough, ...quietPolicy, ...bank.slice(0, -2)],
      ...steps,
      ...[['own another supply', false] as const, ['own chain leads', false] as const],
      ['How many hours', '3'],
      ['plugged in today', true],
      ['Gannet looper?', '1'],
    ]);
    expect(parse(printed.output)).toMatchObject({ owned: { supplies: ['barge'] }, wiring: [{ supply: 'barge' }] });
    expect(printed.output).toContain('# Left out of every plan until this is known: Nine-volt step');
    printed.output = '';
    const { heard } = await start(undefined, [
      ...[first(`Gannet looper 9v 120 ${whole}`), enough, ...quietPolicy, ...bank.slice(0, -2)],
      ...step('9 V 400 mA'),
      ...[['own another supply', false] as const, ['own chain leads', false] as const],
      ['How many hours', '3'],
      ['plugged in today', true],
      ['Gannet looper?', 'a1'],
      ['Nine-volt step inlet?', 'a1'],
      ['Nine-volt step inlet?', ''],
    ]);
    expect(heard.join('\n')).toContain('Gannet looper is there, and an inlet hangs alone on its output.');
  });
});

describe('how it is plugged today', () => {
  it('may be an own adapter, a battery or a power bank, each in one answer', async () => {
    const path = at('mixed.yaml');
    await start(path, [
      first('Wharf station own adapter 220-240v'),
      next(`Sedge wah 9v 2 ${whole} block`),
      next(`Tern looper 9v 180 ${whole} own adapter`),
      enough,
      ...quietPolicy,
      ['How many hours must a set', '8'],
      ...bank,
      ['Which batteries do you own', '9v block'],
      ['Which other batteries', ''],
      ['How many hours must the power bank last', '3'],
      ['plugged in today', true],
      ['Wharf station?', 'own'],
      ['Sedge wah?', 'own adapter'],
      ['Sedge wah?', 'battery'],
      ['Tern looper?', '2'],
    ]);
    expect(parse(await readFile(path, 'utf8'))).toMatchObject({
      wiring: [
        { pedal: 'tern-looper', supply: 'barge', unit: 1, output: 2, volts: 9 },
        { pedal: 'wharf-station', supply: 'own-wharf-station' },
        { pedal: 'sedge-wah', battery: '9-v-block-500-mah' },
      ],
    });
    const checked = await boardfeed(['check', path, '--json']);
    expect(checked.code, complaints(checked)).toBe(0);
    expect(JSON.parse(checked.output)).toMatchObject({
      feeds: [{ source: 'adapter' }, { source: 'battery' }, { source: 'output' }],
    });
  });

  it('is asked of those alone that something can feed, and which batteries where several would do', async () => {
    await start(undefined, [
      first('Wharf station own adapter'),
      next(`Sedge wah 9v 2 ${whole} block`),
      next(`Gorse drive 9v 8 ${whole}`),
      enough,
      ...quietPolicy,
      ['How many hours must a set', '8'],
      notOwned,
      ['Which batteries do you own', '9v block'],
      ['Which other batteries', '9v block 600 mAh'],
      ['Which other batteries', ''],
      ['plugged in today', true],
      ['Wharf station?', '1'],
      ['Wharf station?', ''],
      ['Sedge wah?', 'battery'],
      ['Which batteries are in Sedge wah', '9-v-block-600-mah'],
    ]);
    expect(parse(printed.output)).toMatchObject({ wiring: [{ pedal: 'sedge-wah', battery: '9-v-block-600-mah' }] });
  });
});

import { readFile, writeFile } from 'node:fs/promises';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, complaints } from '../command.js';
import { stop, type Step } from './scripted.js';
import { assume, enough, first, next, notOwned, policy, quietPolicy, starting } from './starting.js';

const { at, printed, start } = starting({ catalogue: false });

const whole = 'barrel-2.1 negative ground neg';
const drive = `Gorse drive 9v 8 ${whole}`;
const chorus = `Linnet chorus 9v 40 ${whole}`;
const boost = `Teal boost 9v 5 ${whole}`;
const delay = `Ouzel delay 9v 250 ${whole}`;

const bank = (outputs: string, settings: readonly string[], more: readonly Step[]): readonly Step[] => [
  ['How many outputs', outputs],
  ...settings.flatMap((setting, at): readonly Step[] => [
    [at === 0 ? 'each of them give' : 'next setting', setting],
    ['other volts as well', at < settings.length - 1],
  ]),
  ['Which sign', 'centre-negative'],
  ['Which plug', 'barrel-2.1'],
  ['isolated', 'yes'],
  ...more,
];
const box: readonly Step[] = [
  ['own a supply', true],
  ['supply called', 'Box'],
  ['mains volts', '100-240V'],
  ['regulated', 'yes'],
  ...bank('6', ['9v dc 150ma'], [['be joined', 'none']]),
  ['other outputs', true],
  ...bank(
    '2',
    ['9v dc 300ma', '12v 250ma'],
    [
      ['be joined', 'none'],
      ['volts chosen', 'each'],
    ],
  ),
  ['other outputs', false],
  ['give together', '1500 mA'],
  ['Is this right?', true],
  ['How many of it', ''],
];
const adapter: readonly Step[] = [
  ['own another supply', true],
  ['supply called', 'Wall adapter'],
  ['mains volts', '?'],
  ['regulated', 'yes'],
  ...bank('1', ['9v dc 500ma'], []),
  ['other outputs', false],
  ['give together', 'none'],
  ['Is this right?', true],
  ['How many of it', '2'],
];
const noOther: Step = ['own another supply', false];
const fan: readonly Step[] = [
  ['own chain leads', true],
  ['kind of lead', 'chain'],
  ['called', 'Fan'],
  ['goes into it', 'barrel-2.1'],
  ['does it offer', 'barrel-2.1'],
  ['How many pedals', '3'],
  ['swap plus and minus', 'no'],
  ['Is this right?', true],
  ['How many of it', ''],
  ['Another lead', false],
];

describe('what is owned and how it is plugged', () => {
  it('is told of a new board, which can then be checked as it stands', async () => {
    const path = at('tour.yaml');
    const { heard } = await start(path, [
      ...[first(drive), next(chorus), next(boost), next(delay), enough, ...policy],
      ...[...box, ...adapter, noOther, ...fan],
      ['plugged in today', true],
      ['Gorse drive?', 'a1'],
      ['Linnet chorus?', 'a3'],
      ['Teal boost?', 'a3'],
      ['Ouzel delay?', 'a7'],
      ['Ouzel delay?', 'a7 9v'],
    ]);
    expect(heard.join('\n')).toContain('a  Box, outputs 1 to 8\n  b  Wall adapter, one output\n  c  Wall adapter');
    expect(heard).toContain('That output gives 9 or 12 V: write a7 9v, as it is set.');
    const text = await readFile(path, 'utf8');
    expect(parse(text)).toMatchObject({
      gear: {
        supplies: [
          { name: 'Box', mains: { from: 100, to: 240 }, total: { milliamps: 1500 } },
          { name: 'Wall adapter' },
        ],
        parts: [{ name: 'Fan', tails: 3 }],
      },
      owned: { supplies: ['box', 'wall-adapter', 'wall-adapter'], parts: { fan: 1 } },
      wiring: [
        { pedal: 'gorse-drive', supply: 'box', unit: 1, output: 1, volts: 9 },
        { pedal: 'linnet-chorus', supply: 'box', unit: 1, output: 3, volts: 9, chain: 'fan' },
        { pedal: 'teal-boost', supply: 'box', unit: 1, output: 3, volts: 9, chain: 'fan' },
        { pedal: 'ouzel-delay', supply: 'box', unit: 1, output: 7, volts: 9 },
      ],
    });
    expect(text).not.toContain('price');
    expect(printed.errors).toContain(`Next: boardfeed rewire ${path}`);
    const checked = await boardfeed(['check', path]);
    expect(checked.code, complaints(checked)).toBe(0);
  });

  it('is no chain without a chain lead, and no output gives two voltages', async () => {
    const { heard } = await start(undefined, [
      ...[first(drive), next(`Wren drive 12v 40 ${whole}`), next(chorus), enough, ...quietPolicy],
      ...[...box, noOther, ...fan],
      ['plugged in today', true],
      ['Gorse drive?', '7 9v'],
      ['Wren drive?', '7 12v'],
      ['Wren drive?', '8 12v'],
      ['Linnet chorus?', ''],
    ]);
    expect(heard).toContain('Gorse drive has 9 V there, and an output gives one voltage.');
    printed.output = '';
    const other = await start(undefined, [
      ...[first(drive), next(chorus), enough, ...quietPolicy, ...box, noOther],
      ['own chain leads', false],
      ['plugged in today', true],
      ['Gorse drive?', '1'],
      ['Linnet chorus?', '1'],
      ['Linnet chorus?', ''],
    ]);
    expect(other.heard.join('\n')).toContain('Two on one output need a chain lead');
    expect(parse(printed.output)).toMatchObject({ wiring: [{ pedal: 'gorse-drive' }] });
  });

  it('leaves out a supply of which something is not known, and says so', async () => {
    const steps = box.map((step): Step =>
      step[0] === 'Is this right?' ? ['until this is known: polarity', true] : step,
    );
    const unknown = steps.map((step): Step => (step[0] === 'Which sign' ? ['Which sign', 'unknown'] : step));
    await start(undefined, [first(drive), enough, ...quietPolicy, ...unknown, noOther, ['own chain leads', false]]);
    expect(parse(printed.output)).toMatchObject({ gear: { supplies: [] }, owned: { supplies: [] } });
    expect(printed.output).toContain('# Left out of every plan until this is known: Box');
  });

  it('survives a stop as far as it was told', async () => {
    const steps = [first(drive), enough, ...quietPolicy, ...box, ['own another supply', stop] as const];
    expect((await start(undefined, steps)).code).toBe(5);
    expect(parse(printed.output)).toMatchObject({ owned: { supplies: ['box'], parts: {} } });
  });

  it('is asked of a board that is there where it says nothing', async () => {
    const path = at('tour.yaml');
    await start(path, [first(drive), enough, ...quietPolicy, notOwned]);
    const before = await readFile(path, 'utf8');
    await start(path, [
      enough,
      ...[...box, noOther, ['own chain leads', false] as const],
      ['plugged in today', true],
      ['Gorse drive?', '2'],
    ]);
    const text = await readFile(path, 'utf8');
    expect(text.startsWith(before)).toBe(true);
    expect(parse(text)).toMatchObject({ owned: { supplies: ['box'] }, wiring: [{ pedal: 'gorse-drive', output: 2 }] });
    // And then not again.
    await start(path, [enough]);
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  it('asks for the wiring of what the file describes, but of no place that is only kept', async () => {
    const path = at('tour.yaml');
    await start(path, [
      first(drive),
      enough,
      ...quietPolicy,
      ...box,
      noOther,
      ['own chain leads', false],
      ['plugged in today', false],
    ]);
    const text = (await readFile(path, 'utf8')).replace('pedals:\n', 'pedals:\n  - {name: Plover, volts: unknown}\n');
    await writeFile(path, text);
    await start(path, [['Plover. ', ''], enough, assume('usual'), ['plugged in today', true], ['Gorse drive?', '1']]);
    expect(parse(await readFile(path, 'utf8'))).toMatchObject({ wiring: [{ pedal: 'gorse-drive' }] });
  });
});

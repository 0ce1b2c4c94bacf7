import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import { describe, expect, it, test } from 'vitest';

import { typedLine, type PedalLine } from '../../../../src/reading/typed/pedal-line.js';

const read = (text: string, named = true): PedalLine => {
  const typed = typedLine(text, named);
  if (typed.kind === 'unclear') throw new Error(typed.faults.join(' '));
  return typed.line;
};

const mA = (milliamps: number): object => ({ milliamps, workings: null });
const figureOf = (text: string): string => /\d[\d.-]*(?: m?A)?/.exec(text)?.[0] ?? '';
const negative = { polarity: 'centre-negative' };

describe('a pedal on a line', () => {
  test.each<[string, object]>([
    ['moth delay 9v 300', { name: 'moth delay', volts: 9, draw: mA(300) }],
    ['moth delay 9v 300 neg digital', { name: 'moth delay', volts: 9, draw: mA(300), ...negative, digital: true }],
    ['Moth delay, 9 V, 300 mA, centre-negative', { name: 'Moth delay', volts: 9, draw: mA(300), ...negative }],
    ['gorse drive 9v 8 c-', { name: 'gorse drive', volts: 9, draw: mA(8), ...negative }],
    ['gorse drive 9v 8 minus on the pin', { name: 'gorse drive', volts: 9, draw: mA(8), ...negative }],
    ['plover reverb 500ma c+', { name: 'plover reverb', draw: mA(500), polarity: 'centre-positive' }],
    ['ruff tuner', { name: 'ruff tuner' }],
    ['heath fuzz ?', { name: 'heath fuzz' }],
    ['heath fuzz 9v no sign', { name: 'heath fuzz', volts: 9 }],
    [
      'old fuzz dc 9V 4mA positive ground',
      { name: 'old fuzz', power: 'DC', volts: 9, draw: mA(4), ground: 'positive' },
    ],
    ['wren 12VAC 1A', { name: 'wren', power: 'AC', volts: 12, draw: mA(1000) }],
    ['wren 9V⎓300mA', { name: 'wren', power: 'DC', volts: 9, draw: mA(300) }],
    ['wren 9V ~ 0,3A max.', { name: 'wren', power: 'AC', volts: 9, draw: mA(300) }],
    ['wren 9V~300mA', { name: 'wren', power: 'AC', volts: 9, draw: mA(300) }],
    ['wren 9V = 300mA', { name: 'wren', volts: 9, draw: mA(300) }],
    ['wren 9V/300mA', { name: 'wren', volts: 9, draw: mA(300) }],
    ['wren 9V (DC) 300mA', { name: 'wren', power: 'DC', volts: 9, draw: mA(300) }],
    ['wren 9V DC [300 mA max]', { name: 'wren', power: 'DC', volts: 9, draw: mA(300) }],
    ['wren 9V 300 mA [peak 410 mA]', { name: 'wren', volts: 9, draw: mA(300), startup: 410 }],
    ['wren (9 V, 300 mA, tip negative)', { name: 'wren', volts: 9, draw: mA(300), ...negative }],
    ['wren 9V, at least 300 mA', { name: 'wren', volts: 9, draw: mA(300) }],
    ['wren 9V ≥ 300 mA', { name: 'wren', volts: 9, draw: mA(300) }],
    ['wren 9V up to 300 mA', { name: 'wren', volts: 9, draw: mA(300) }],
    ['2xwren 9V 300 mA', { name: '2xwren', volts: 9, draw: mA(300) }],
    ['wren [mk 2] 9V 300 mA', { name: 'wren [mk 2]', volts: 9, draw: mA(300) }],
    ['wren (digital) 9V 300 mA', { name: 'wren (digital)', volts: 9, draw: mA(300) }],
    ['wren 9-18V 15', { name: 'wren', volts: { from: 9, to: 18 }, draw: mA(15) }],
    ['wren 9 or 18v 15', { name: 'wren', volts: [9, 18], draw: mA(15) }],
    ['wren 9/12/18 V 15mA jack-3.5', { name: 'wren', volts: [9, 12, 18], draw: mA(15), inlet: 'jack-3.5' }],
    ['wren 9/18 15mA', { name: 'wren', volts: [9, 18], draw: mA(15) }],
    ['wren 9/12/18 15', { name: 'wren', volts: [9, 12, 18], draw: mA(15) }],
    [
      'wren 9VDC, 2.1mm, centre neg. 15 mA',
      { name: 'wren', volts: 9, power: 'DC', inlet: 'barrel-2.1', draw: mA(15), ...negative },
    ],
    ['wren 9v 15 pos tip', { name: 'wren', volts: 9, draw: mA(15), polarity: 'centre-positive' }],
    ['wren 9v 15 centre+', { name: 'wren', volts: 9, draw: mA(15), polarity: 'centre-positive' }],
    ['wren 9v 15 center -', { name: 'wren', volts: 9, draw: mA(15), ...negative }],
    ['wren 9v 15 tip -', { name: 'wren', volts: 9, draw: mA(15), ...negative }],
    ['wren 2.7W 9v', { name: 'wren', volts: 9, draw: { milliamps: 300, workings: '2.7 W at 9 V' } }],
    ['wren 9v 300 startup 450', { name: 'wren', volts: 9, draw: mA(300), startup: 450 }],
    ['wren 9v 300 startup 450mA alone', { name: 'wren', volts: 9, draw: mA(300), startup: 450, alone: true }],
    ...[
      ...['start 410', 'starts 410 mA', 'starting current: 410 mA', 'start-up 0.41 A', 'startup current of 410'],
      ...['peak 410', 'peak current 410mA', 'inrush 410 mA', 'inrush current = 0,41A', 'surge 410'],
      ...['switch-on 410', 'at switch-on 410 mA', '410 mA at switch-on', '410 at switch on', '410mA at start'],
      ...['410 mA peak', '410 mA (peak)', '410 mA inrush', '410 mA at startup.', '410 mA when it starts'],
      ...['410 mA when switched on', '410 at power-up', 'power-on 410 mA', '410 mA on starting', 'start up 410'],
      ...['410 mA peak current', '410 mA (inrush current)', '410 mA starting draw'],
    ].flatMap((words): [string, object][] => [
      [`wren 9v 280 ${words}`, { name: 'wren', volts: 9, draw: mA(280), startup: 410 }],
      [`wren 9v 280mA, ${words}, digital`, { name: 'wren', volts: 9, draw: mA(280), startup: 410, digital: true }],
      [`wren 9v ${words}, 280mA`, { name: 'wren', volts: 9, draw: mA(280), startup: 410 }],
    ]),
    ...[
      ...['about 90 mA', '90 mA approx.', 'approx. 90', '90mA typ', 'typ. 90 mA', '~90 mA DC', 'neg ~90 mA'],
      ...['DC ~90mA', 'ca. 90 mA', '≈90 mA', '90 guess', ', ~90 mA', '(~90 mA)', '(approx. 90 mA)'],
    ].map((words): [string, object] => [
      `wren 9v neg DC ${words}`,
      { name: 'wren', volts: 9, power: 'DC', ...negative, draw: mA(90), figure: 'guess' },
    ]),
    ['wren 9V~ 90 mA', { name: 'wren', power: 'AC', volts: 9, draw: mA(90) }],
    ['wren ~90 mA 9v', { name: 'wren', volts: 9, draw: mA(90), figure: 'guess' }],
    ['about time delay 9v 90', { name: 'about time delay', volts: 9, draw: mA(90) }],
    ...['max 90 mA', '90 mA max.', '<90 mA', '< 90mA', '>90mA', 'less than 90 mA'].map((words): [string, object] => [
      `wren 9v ${words}`,
      { name: 'wren', volts: 9, draw: mA(90) },
    ]),
    ...['50-80 mA', '50 mA - 80 mA', '50 to 80mA', '50–80 mA', '0.05-0.08 A', '50 mA to 0.08 A'].map(
      (words): [string, object] => [
        `wren 9v ${words} neg`,
        { name: 'wren', volts: 9, draw: { milliamps: 80, workings: `the most of ${words}` }, ...negative },
      ],
    ),
    [
      'wren 9-18V 50-80 mA',
      { name: 'wren', volts: { from: 9, to: 18 }, draw: { milliamps: 80, workings: 'the most of 50-80 mA' } },
    ],
    ...[
      ['80 mA typical', '100 mA max'],
      ['max 100 mA', 'typ. 80 mA'],
      ['80 typ', '100 max'],
      ['80 mA', '≤100 mA'],
      ['80 mA typ.', '100 mA'],
      ['80 mA', '0.1 A maximum'],
      ['80-90 mA typ', '100 mA max'],
      ['80 mA', 'up to 100 mA'],
      ['100 mA typ', '80 mA max'],
    ].map(([one = '', other = '']): [string, object] => [
      `wren 9V ${one}, ${other} neg`,
      {
        name: 'wren',
        volts: 9,
        draw: { milliamps: 100, workings: `the most of ${figureOf(one)} and ${figureOf(other)}` },
        ...negative,
      },
    ]),
    [
      'wren 9V 280 mA typical, 300 mA max, 410 mA when it starts',
      { name: 'wren', volts: 9, draw: { milliamps: 300, workings: 'the most of 280 mA and 300 mA' }, startup: 410 },
    ],
    [
      'wren 9V about 80 mA, 100 mA max',
      { name: 'wren', volts: 9, draw: { milliamps: 100, workings: 'the most of 80 mA and 100 mA' }, figure: 'guess' },
    ],
    ['wren 5v 500 micro USB', { name: 'wren', volts: 5, draw: mA(500), inlet: 'usb-micro' }],
    ...['(410 mA peak)', '(peak: 410)', '( 0.41 A inrush current )', '(410 at switch-on)', '(starts 410 mA)'].flatMap(
      (words): [string, object][] => [
        [`wren 9v 280 ${words}`, { name: 'wren', volts: 9, draw: mA(280), startup: 410 }],
        [`wren 9v 280 mA ${words}, digital`, { name: 'wren', volts: 9, draw: mA(280), startup: 410, digital: true }],
        [`wren (mk 2) ${words} 9v 280`, { name: 'wren (mk 2)', volts: 9, draw: mA(280), startup: 410 }],
      ],
    ),
    ...['peak 410 mA', 'inrush current 410', 'peak of 410 mA', 'starting draw: 410'].map((words): [string, object] => [
      `wren 9v 280 mA ${words}`,
      { name: 'wren', volts: 9, draw: mA(280), startup: 410 },
    ]),
  ])('%s', (text, expected) => {
    expect(read(text)).toEqual({ ...expected, notes: [] });
  });

  test.each<[string, object]>([
    ['digital delay 9v 300', { name: 'digital delay' }],
    ['high gain drive', { name: 'high gain drive' }],
    ['negative space reverb 9v', { name: 'negative space reverb' }],
    ['moth 2 delay 9v 300', { name: 'moth 2 delay', volts: 9, draw: mA(300) }],
    ['moth 2, 9v 300', { name: 'moth 2', volts: 9, draw: mA(300) }],
    ['analogue, 9v', { name: 'analogue', volts: 9 }],
    ['cold start drive 9v 300', { name: 'cold start drive', volts: 9, draw: mA(300) }],
    ['start up drive 9v 300', { name: 'start up drive', volts: 9, draw: mA(300) }],
    ['wren (peak 2) 9v 300', { name: 'wren (peak 2)', volts: 9, draw: mA(300) }],
    ['peak 2 drive 9v 300', { name: 'peak 2 drive', volts: 9, draw: mA(300) }],
  ])('%s: words that are a name are no figures', (text, expected) => {
    expect(read(text)).toEqual({
      ...(text.includes('9v') ? { volts: 9 } : {}),
      ...drawn(text),
      ...expected,
      notes: [],
    });
  });
  const drawn = (text: string): object => (text.includes('9v 300') ? { draw: mA(300) } : {});

  test.each(['9v ~90 mA', '9 V ~90 mA', '9V  ~90mA', '9v (~90 mA)'])(
    '%s: it is about so much, and AC is told as the other reading',
    (words) => {
      const notes = [
        '"~" before the figure is taken for about: write AC where the label has that sign behind the volts.',
      ];
      expect(read(`wren ${words}`)).toEqual({ name: 'wren', volts: 9, draw: mA(90), figure: 'guess', notes });
    },
  );

  it('without a name is read whole too', () => {
    expect(read('9V DC 250mA - digital', false)).toEqual({
      name: '',
      volts: 9,
      power: 'DC',
      draw: mA(250),
      digital: true,
      notes: ['A dash says nothing of the polarity: write neg for minus on the pin, pos for plus.'],
    });
    expect(read('9V - neg', false).notes).toEqual([]);
    expect(read('9V AC - alone', false).notes).toEqual([]);
    expect(read('', false)).toEqual({ name: '', notes: [] });
  });
});

describe('the volts that a pedal would rather have', () => {
  const wren = { name: 'wren', volts: { from: 9, to: 12 }, draw: mA(40), ...negative, notes: [] };

  test.each([
    ...[
      'likes 12v',
      'prefers 12',
      'prefers: 12 V',
      'best at 12 V',
      'best with 12V',
      'preferred 12 volts',
      '12V preferred',
    ],
  ])('%s', (words) => {
    for (const line of [
      `9-12v 40 c- ${words}`,
      `9-12v ${words} 40 c-`,
      `9-12v ${words}, 40 mA, c-`,
      `${words}, 9-12v 40 c-`,
    ])
      expect(read(`wren ${line}`)).toEqual({ ...wren, prefers: 12 });
    expect(read(`wren 9-12v (${words}) 40 mA c-`)).toEqual({ ...wren, prefers: 12 });
  });

  it('are one of those that it lists, or within its range', () => {
    expect(read('wren 9/12/18 15 prefers 18')).toMatchObject({ volts: [9, 12, 18], prefers: 18 });
    expect(read('wren 9v 15 prefers 9')).toMatchObject({ volts: 9, prefers: 9 });
  });

  it('leave words of a name alone', () => {
    expect(read('wren likes fuzz 9v 15')).toEqual({ name: 'wren likes fuzz', volts: 9, draw: mA(15), notes: [] });
  });
});

describe('what is not clear is asked for, never guessed', () => {
  test.each<[string, RegExp]>([
    ['wren 9-12v 40 likes 15v', /^"likes 15v" is none of the volts that it takes, "9-12v": write one of those\.$/],
    [
      'wren 9/18v 40 best at 12 V',
      /^"best at 12 V" is none of the volts that it takes, "9\/18v": write one of those\.$/,
    ],
    ['wren 40mA prefers 12', /^"prefers 12": say the volts that it takes as well, such as 9-12V\.$/],
    ['wren 9-18v 40 prefers 9-12v', /^"prefers 9-12v": say one voltage, such as prefers 12 V\.$/],
    ['wren 9-18v 40 prefers 9 likes 12', /^the volts that it prefers are said twice: "prefers 9" and "likes 12"\.$/],
    ['wren 9-18v 40 preffers', /^"preffers" is not understood\. Did you mean prefers\?$/],
    ['', /^Begin with what it is called, such as/],
    ['9v 300', /^Begin with what it is called/],
    ['moth delay 9v 300 digitl', /^"digitl" is not understood\. Did you mean digital\?$/],
    ['moth delay 9v 300 purple', /^"purple" is not understood\. Say it such as/],
    [
      'plover reverb 500 neg',
      /^"500" may be what it draws, or belong to its name: write 500mA, or a comma behind the name\.$/,
    ],
    ['moth 2 9v 300', /^"2" may be .*comma/],
    [
      'moth delay 9 300ma',
      /^"9" may be its volts, what it draws, or belong to its name: write 9V or 9mA, or a comma behind the name\.$/,
    ],
    ['moth delay 9v 300 400', /^the draw is said twice: "300" and "400"; if one is .* starts, write startup 400\.$/],
    ['moth delay 9v 80 mA typ, 100 mA max, 120 mA', /^the draw is said twice: "80 mA" and "100 mA"/],
    ['moth delay 9v 80 mA typ, 1,800 mA max', /^"1,800 mA": It may mean 1800 mA or 1\.8 mA/],
    ['moth delay 9v 12v 40', /^the volts are said twice: "9v" and "12v"; .*9\/12V/],
    ['moth delay 9v neg pos', /^"neg" and "pos" cannot both be right\.$/],
    ['moth delay 9v ac dc', /^"ac" and "dc" cannot both be right\.$/],
    ['moth delay 9vac 300 neg', /^AC has no polarity/],
    ['moth delay 9v 300 + ', /^"\+" is not understood\. .*pos/],
    ['moth delay 9v startup soon', /no current: write startup 350 mA/],
    [
      'moth delay 9v 280 peak 410 startup 420',
      /^what it takes when it starts is said twice: "peak 410" and "startup 420"\.$/,
    ],
    ['moth delay 9v 80-50 mA', /^"80-50 mA": Write a range such as 50-80 mA, the smaller one first/],
    ['moth delay 9v 300 -(o)+', /^"-\(o\)\+" does not say which sign leads to the dot/],
    ['moth delay 9v 300 or', /^"or" is not understood/],
    ['moth delay 9v (neg) (12v) 40', /^the volts are said twice/],
    ['moth delay 9v 280 [purple]', /^"\[purple\]" is not understood/],
    ['moth delay 9v 280 peak', /^"peak" is not understood/],
    ['moth delay 2.7W', /^"2\.7W": Without the volts/],
    ['moth delay 18-9V', /^"18-9V": Write volts such as/],
    ['moth delay .5A', /^"\.5A" is not understood/],
    [`${'x'.repeat(201)} 9v`, /At most 200 characters/],
  ])('%s', (text, fault) => {
    const typed = typedLine(text, true);
    expect(typed.kind === 'unclear' ? typed.faults.join('\n') : 'it is understood').toMatch(fault);
  });
});

it('reads the lines that docs/start.md shows', async () => {
  const page = await readFile(join(import.meta.dirname, '../../../../docs/start.md'), 'utf8');
  const lines = [...page.matchAll(/^\| `([^`]+)` +\|/gm)].map(([, line = '']) => read(line));
  expect(lines).toHaveLength(9);
  expect(lines).toMatchObject([
    { name: 'moth delay', volts: 9, draw: mA(300), ...negative },
    { name: 'Moth delay', volts: 9, draw: mA(300), ...negative, power: 'DC' },
    { volts: { from: 9, to: 18 }, draw: mA(15), polarity: 'centre-positive', highGain: true },
    { volts: { from: 9, to: 12 }, draw: mA(40), prefers: 12, ...negative },
    { volts: [9, 12], draw: { milliamps: 300 }, inlet: 'jack-3.5', alone: true },
    { name: 'ruff tuner', notes: [] },
    { name: 'wharf station', adapter: { mains: { from: 100, to: 240 } } },
    { name: 'sedge wah', volts: 9, draw: mA(2), battery: { type: '9V-block', count: 1 } },
    { name: 'cockle tuner', volts: 9, draw: mA(20), battery: { type: 'AA', count: 6 } },
  ]);
});

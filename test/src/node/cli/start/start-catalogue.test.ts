import { readFile, writeFile } from 'node:fs/promises';

import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { jsonSchema } from '../../../../../src/report/json/schemas.js';
import { readInputs } from '../../../../../src/node/disk/read-inputs.js';
import { fixture } from '../command.js';
import { stop, type Step } from './scripted.js';
import { starting } from './starting.js';

const { at, printed, start } = starting({ catalogue: true });

const head: readonly Step[] = [
  ['list of supplies called', 'Shop'],
  ['Which currency', 'EUR'],
];
const brickHead: readonly Step[] = [
  ['supply called', 'Quay 6'],
  ['What does it cost', '119,00'],
  ['mains volts', 'AC 100-240V ~ 50/60 Hz'],
  ['regulated', 'yes'],
];
const firstBank: readonly Step[] = [
  ['How many outputs', '4'],
  ['each of them give', '9V DC 100 mA'],
  ['other volts as well', false],
  ['Which sign', 'centre-negative'],
  ['Which plug', 'barrel-2.1'],
  ['isolated', 'yes'],
  ['be joined', 'none'],
];
const secondBank: readonly Step[] = [
  ['How many outputs', '2'],
  ['each of them give', '9 V 0.4 A'],
  ['other volts as well', true],
  ['next setting', '9 V 1 A'],
  ['next setting', '12V 300mA'],
  ['other volts as well', false],
  ['beside the volts', 'DC'],
  ['Which sign', 'either'],
  ['Which plug', 'barrel-2.1'],
  ['isolated', 'yes'],
  ['be joined', 'both'],
  ['volts chosen', 'each'],
];
const brick: readonly Step[] = [
  ['supply to add', true],
  ...brickHead,
  ...firstBank,
  ['other outputs', true],
  ...secondBank,
  ['other outputs', false],
  ['give together', '1.8 A'],
  ['Is this right?', true],
];
const noMore: Step = ['another supply', false];
const noLead: Step = ['lead or adapter to add', false];

const only = (bank: readonly Step[], total = 'none'): readonly Step[] => [
  ['supply to add', true],
  ...brickHead,
  ...bank,
  ['other outputs', false],
  ['give together', total],
];

describe('a new catalogue', () => {
  it('is written with supplies, banks, settings, totals and leads, reads as one, and keeps to its schema', async () => {
    const path = at('shop.yaml');
    const leads: readonly Step[] = [
      ['lead or adapter to add', true],
      ['kind of lead', 'reversing'],
      ['called', 'Flip'],
      ['cost', '4'],
      ['goes into it', 'barrel-2.1'],
      ['does it offer', 'barrel-2.1'],
      ['Is this right?', true],
      ['another lead', true],
      ['kind of lead', 'chain'],
      ['called', 'flip'],
      ['called', 'Fan'],
      ['cost', '8.50'],
      ['goes into it', 'barrel-2.1'],
      ['does it offer', 'barrel-2.1'],
      ['How many pedals', '1'],
      ['How many pedals', '5'],
      ['swap plus and minus', 'no'],
      ['Is this right?', true],
      ['another lead', true],
      ['kind of lead', 'series'],
      ['called', 'Odd'],
      ['cost', '9'],
      ['goes into it', 'barrel-2.1'],
      ['does it offer', 'unknown'],
      ['another lead', false],
    ];
    const { code, heard } = await start(path, [...head, ...brick, noMore, ...leads]);
    expect(code).toBe(0);
    const data: unknown = parse(await readFile(path, 'utf8'));
    const outlet = { power: 'DC', plug: 'barrel-2.1' };
    expect(data).toEqual({
      catalogue: 'Shop',
      currency: 'EUR',
      supplies: [
        {
          name: 'Quay 6',
          price: 119,
          mains: { from: 100, to: 240 },
          regulated: true,
          total: { milliamps: 1800 },
          banks: [
            {
              outputs: 4,
              isolated: true,
              ...outlet,
              polarity: 'centre-negative',
              settings: [{ volts: 9, milliamps: 100 }],
            },
            {
              outputs: 2,
              isolated: true,
              ...outlet,
              polarity: 'either',
              switch: 'each',
              settings: [
                { volts: 9, milliamps: 400 },
                { volts: 12, milliamps: 300 },
              ],
              joins: ['series', 'parallel'],
            },
          ],
        },
      ],
      parts: [
        { name: 'Flip', price: 4, fits: 'barrel-2.1', gives: 'barrel-2.1', reverses: true },
        { name: 'Fan', price: 8.5, fits: 'barrel-2.1', gives: 'barrel-2.1', tails: 5 },
      ],
    });
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile({ ...jsonSchema('catalogue') });
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(await readInputs(fixture('boards/first-board.yaml'), path)).toMatchObject({ kind: 'read' });
    expect(printed.errors).toContain(`Next: boardfeed choose BOARD ${path}`);
    expect(heard.join('\n')).toContain('How to tell');
    expect(heard).toContain('There is a setting for 9 V already.');
    expect(heard).toContain(
      'Without its plugs a lead is of no use to a plan. Compare them with others, and add it then.',
    );
  });

  it('takes AC, watts, a single output', async () => {
    const bank: readonly Step[] = [
      ['How many outputs', '0'],
      ['How many outputs', '1'],
      ['each of them give', '9 V'],
      ['each of them give', '9 V AC 1 A'],
      ['other volts as well', false],
      ['Which plug', 'barrel-2.5'],
      ['isolated', 'yes'],
    ];
    await start(undefined, [...head, ...only(bank, '18 W'), ['Is this right?', true], noMore, noLead]);
    expect(parse(printed.output)).toMatchObject({
      supplies: [
        {
          total: { watts: 18 },
          banks: [
            { outputs: 1, isolated: true, power: 'AC', plug: 'barrel-2.5', settings: [{ volts: 9, milliamps: 1000 }] },
          ],
        },
      ],
    });
    expect(printed.output).not.toContain('polarity');
  });
});

describe('what is not known of a supply', () => {
  const bankWith = (index: number, ...steps: readonly Step[]): readonly Step[] =>
    firstBank.toSpliced(index, 1, ...steps);

  it('isolation is counted as none, and the file says so', async () => {
    const bank = bankWith(5, ['isolated', 'unknown']).slice(0, 6);
    await start(undefined, [...head, ...only(bank), ['Is this right?', true], noMore, noLead]);
    expect(parse(printed.output)).toMatchObject({ supplies: [{ banks: [{ isolated: false }] }] });
    expect(printed.output).toContain('# not known whether isolated: counted as not, the careful assumption');
  });

  it('mains volts are left out, and the file says what follows', async () => {
    const steps = only(firstBank).map((step): Step => (step[0] === 'mains volts' ? ['mains volts', '?'] : step));
    await start(undefined, [...head, ...steps, ['Is this right?', true], noMore, noLead]);
    expect(printed.output).toContain('# mains volts not known: refused where a board states its own');
    expect(printed.output).not.toContain('mains: ');
  });

  it('open-circuit volts of an unregulated one are asked for', async () => {
    const steps = only(
      bankWith(1, ['each of them give', '9V DC 100 mA'], ['nothing plugged in', '8 V'], ['nothing plugged in', '13.6']),
    ).map((step): Step => (step[0] === 'regulated' ? ['regulated', 'no'] : step));
    await start(undefined, [...head, ...steps, ['Is this right?', true], noMore, noLead]);
    expect(parse(printed.output)).toMatchObject({
      supplies: [{ regulated: false, banks: [{ settings: [{ volts: 9, milliamps: 100, openCircuitVolts: 13.6 }] }] }],
    });
  });

  const instead = (steps: readonly Step[], words: string, ...others: readonly Step[]): readonly Step[] =>
    steps.flatMap((step) => (step[0] === words ? others : [step]));
  it.each<readonly [string, readonly Step[]]>([
    ['polarity', instead(only(firstBank), 'Which sign', ['Which sign', 'unknown'])],
    ['plug', instead(only(firstBank), 'Which plug', ['Which plug', 'unknown'])],
    ['regulated', instead(only(firstBank), 'regulated', ['regulated', 'unknown'])],
    [
      'power',
      instead(only(firstBank), 'each of them give', ['each of them give', '9V 1A']).toSpliced(8, 0, [
        'beside the volts',
        'unknown',
      ]),
    ],
    [
      'openCircuitVolts',
      instead(
        instead(only(firstBank), 'regulated', ['regulated', 'no']),
        'each of them give',
        ['each of them give', '9V DC 1A'],
        ['nothing plugged in', '?'],
      ),
    ],
  ])('without its %s it stays in the file as a comment that says what to look for', async (key, steps) => {
    await start(undefined, [...head, ...steps, [`until this is known: ${key}.`, true], noMore, noLead]);
    expect(parse(printed.output)).toEqual({ catalogue: 'Shop', currency: 'EUR', supplies: [] });
    expect(printed.output).toMatch(new RegExp(`# {3}${key}: look for `));
    expect(printed.output).toContain('…');
  });
});

it('adds to a catalogue that is there, and what was finished survives a stop', async () => {
  const path = at('shop.yaml');
  const text = await readFile(fixture('shops/quayside.yaml'), 'utf8');
  await writeFile(path, text);
  const steps: readonly Step[] = [
    ['supply to add', true],
    ['supply called', 'quay 6'],
    ['supply called', 'Quay 7'],
    ...brick.slice(2),
    ['another supply', true],
    ['supply called', stop],
  ];
  expect((await start(path, steps)).code).toBe(5);
  const after = await readFile(path, 'utf8');
  expect(parse(after)).toMatchObject({ supplies: [{ id: 'quay-6' }, { name: 'Quay 7' }] });
  const kept = after.split('\n');
  for (const line of text.split('\n')) expect(kept).toContain(line);
});

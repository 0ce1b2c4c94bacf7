import { readFile, readdir, writeFile } from 'node:fs/promises';

import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it, vi } from 'vitest';
import { parse } from 'yaml';

import { jsonSchema } from '../../../../../src/report/json/schemas.js';
import { readInputs } from '../../../../../src/node/disk/read-inputs.js';
import { spawned, marramStreet, printedObject } from '../command.js';
import type { Step } from './scripted.js';
import { another, boardHead, delay, enough, fuzz, noSchema, starting } from './starting.js';

const { at, printed, start, folder } = starting({ catalogue: false });
const head = boardHead;

const pedalsIn = async (path: string): Promise<unknown> =>
  (parse(await readFile(path, 'utf8')) as { pedals: unknown }).pedals;

describe('a new board', () => {
  it('is written with all that was told, reads as a board, and keeps to its schema, which may lie beside it', async () => {
    const path = at('tour.yaml');
    const { code } = await start(path, [...head, ...delay, enough, ['board.schema.json be written', true]]);
    expect(code).toBe(0);
    const text = await readFile(path, 'utf8');
    expect(text).toMatch(/^# yaml-language-server: \$schema=board\.schema\.json\n/);
    expect(await readdir(folder())).toEqual(['board.schema.json', 'tour.yaml']);
    const data: unknown = parse(text);
    expect(data).toEqual({
      board: 'Tour: east',
      currency: 'EUR',
      assume: { ground: 'negative' },
      policy: {
        headroom: { alone: 1.2, chained: 2, supply: 1.2 },
        guess: 1.5,
        chains: 'allow',
        noisePrice: 25,
        mains: 230,
      },
      pedals: [
        {
          name: 'Lode delay',
          power: 'DC',
          polarity: 'centre-negative',
          inlet: 'barrel-2.1',
          volts: 9,
          milliamps: 300,
          figure: 'label',
          digital: true,
        },
      ],
    });
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile({ ...jsonSchema('board') });
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(await readInputs(path, marramStreet)).toMatchObject({ kind: 'read' });
    expect(printed.errors).toContain(`Next: boardfeed choose ${path} CATALOGUE`);
  });

  it('goes to standard output when no file is named', async () => {
    expect((await start(undefined, [...head, ...delay, enough])).code).toBe(0);
    expect(parse(printed.output)).toMatchObject({ pedals: [{ name: 'Lode delay' }] });
  });

  it('asks again after an answer that says nothing clear, with what would', async () => {
    const steps: readonly Step[] = [
      ...head.slice(0, 1),
      ['Which currency', 'euro'],
      ...head.slice(1, 3),
      ['What is it worth', '1,800'],
      ...head.slice(3),
      ['pedal called', '?!'],
      ...delay.slice(0, 2),
      ['Which volts', 'plenty'],
      ['Which volts', '9,12'],
      ['Which volts', '9/18 V'],
      ['beside the volts', 'DC'],
      ...delay.slice(3, 5),
      ['What current', '300'],
      ['What current', '1,800 mA'],
      ['What current', '2,7 W'],
      ...delay.slice(6),
      another,
      ['pedal called', 'lode DELAY'],
      ['pedal called', 'Lode two'],
      ...delay.slice(1),
      enough,
    ];
    const { heard } = await start(undefined, steps);
    for (const words of [
      'Did you mean EUR?',
      'nothing between thousands',
      'It needs a letter or a digit.',
      'Write volts such as',
      'Write the unit as well: 300 mA, 0.3 A or 2.7 W.',
      'Write a current such as',
      'That name is there already',
    ])
      expect(heard.join('\n')).toContain(words);
    expect(parse(printed.output)).toMatchObject({ pedals: [{ volts: [9, 18], milliamps: 300 }, { name: 'Lode two' }] });
    expect(printed.output).toContain('# from 2.7 W at 9 V');
  });

  it('takes current and kind of current from the line with the volts', async () => {
    const steps: readonly Step[] = [
      ...delay.slice(0, 2),
      ['Which volts', '12V AC 1A'],
      ...delay.slice(4, 5),
      ...delay.slice(6),
    ];
    await start(undefined, [...head, ...steps, enough]);
    const { pedals } = parse(printed.output) as { pedals: readonly unknown[] };
    expect(pedals[0]).toEqual({
      name: 'Lode delay',
      power: 'AC',
      inlet: 'barrel-2.1',
      volts: 12,
      milliamps: 1000,
      figure: 'label',
      digital: true,
    });
  });
});

describe('what is not known', () => {
  const guessed: readonly Step[] = [...delay.slice(0, 5), ['What current', "don't know"], ...delay.slice(7)];

  it('a draw becomes a planning figure, marked as a guess, that every result asks to confirm', async () => {
    const path = at('tour.yaml');
    const { heard } = await start(path, [...head, ...guessed, enough, noSchema]);
    expect(heard.join('\n')).toContain(
      'Then plans count with 300 mA, the upper end of what is usual for digital delay or reverb',
    );
    const text = await readFile(path, 'utf8');
    expect(text).toMatch(
      /milliamps: 300 +# not known: a planning figure for digital delay or reverb\n {4}figure: guess/,
    );
    vi.restoreAllMocks();
    const plan = printedObject(await spawned(['choose', path, marramStreet, '--json']));
    expect(plan).toMatchObject({
      status: 'proven',
      confirm: [{ pedal: 'lode-delay', assumed: { ground: 'negative' }, guessed: { milliamps: 300 } }],
    });
  });

  it('a polarity leaves the pedal out of the plan, and in the file as a comment that says what to look for', async () => {
    const path = at('tour.yaml');
    await start(path, [...head, ...delay, another, ...fuzz, enough, noSchema]);
    expect(await pedalsIn(path)).toMatchObject([{ name: 'Lode delay' }]);
    const text = await readFile(path, 'utf8');
    expect(text).toContain('# Left out of every plan until this is known: Old fuzz\n');
    expect(text).toMatch(/# {3}polarity: look for the sign with a \+ and a -/);
    expect(printed.errors).toContain('Left out of plans until more is known: Old fuzz.');
    // With the figure filled in and the signs taken off it is a pedal like any other.
    const completed = text
      .replace('polarity: …', 'polarity: centre-positive')
      .replace(/^( {2})# ((?:- | {2})[a-z]+: .*)$/gim, (line, indentation: string, rest: string) =>
        line.includes('look for') ? line : `${indentation}${rest}`,
      );
    await writeFile(path, completed);
    expect(await pedalsIn(path)).toMatchObject([
      {},
      { name: 'Old fuzz', polarity: 'centre-positive', ground: 'positive', milliamps: 10, figure: 'guess' },
    ]);
    expect(await readInputs(path, marramStreet)).toMatchObject({ kind: 'read' });
  });

  it.each<readonly [string, readonly Step[], string]>([
    [
      'volts',
      [
        ...fuzz.slice(0, 2),
        ['Which volts', '?'],
        ...fuzz.slice(3, 4),
        ['Which sign', 'centre-negative'],
        ...fuzz.slice(5, 9),
        ['until this is known: volts.', true],
      ],
      'volts',
    ],
    [
      'power',
      [
        ...fuzz.slice(0, 3),
        ['beside the volts', 'unknown'],
        ['Which sign', 'centre-negative'],
        ...fuzz.slice(5, 9),
        ['until this is known: power.', true],
      ],
      'power',
    ],
    [
      'inlet',
      [
        ...fuzz.slice(0, 4),
        ['Which sign', 'centre-negative'],
        ['Which plug', 'unknown'],
        ...fuzz.slice(6, 9),
        ['until this is known: inlet.', true],
      ],
      'inlet',
    ],
    [
      'ground',
      [
        ...fuzz.slice(0, 4),
        ['Which sign', 'centre-negative'],
        ['Which plug', 'other'],
        ['call it', 'snap'],
        ['negative or positive', 'unknown'],
        ...fuzz.slice(7, 9),
        ['until this is known: ground.', true],
      ],
      'ground',
    ],
  ])('%s do the same', async (_name, steps, key) => {
    await start(undefined, [...head, ...delay, another, ...steps, enough]);
    expect(parse(printed.output)).toMatchObject({ pedals: [{ name: 'Lode delay' }] });
    expect((parse(printed.output) as { pedals: unknown[] }).pedals).toHaveLength(1);
    expect(printed.output).toMatch(new RegExp(`# {3}${key}: look for `));
    expect(printed.output).toContain(`${key}: …`);
  });

  it('watts need volts', async () => {
    const steps: readonly Step[] = [
      ...delay.slice(0, 2),
      ['Which volts', '?'],
      ['beside the volts', 'DC'],
      ...delay.slice(3, 5),
      ['What current', '2.7 W'],
      ['What current', '300 mA'],
      ...delay.slice(6),
    ];
    expect((await start(undefined, [...head, ...steps, enough])).heard.join('\n')).toContain(
      'Without the volts, watts do not tell the current',
    );
  });
});

import { readFile, readdir } from 'node:fs/promises';

import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { jsonSchema } from '../../../../../src/report/json/schemas.js';
import { readInputs } from '../../../../../src/node/disk/read-inputs.js';
import { marramStreet } from '../command.js';
import { back, type Step } from './scripted.js';
import { assume, enough, first, next, notOwned, policy, quietPolicy, starting } from './starting.js';

const { at, printed, start, folder } = starting({ catalogue: false });

const delay = 'Lode delay 9V DC 0.3A neg';
const drive = 'Gorse drive 9v dc 8 c- barrel-2.1 negative ground';

const pedals = (text: string): readonly unknown[] => (parse(text) as { pedals: readonly unknown[] }).pedals;

describe('a new board', () => {
  it('is written with all that was told, reads as a board, and keeps to its schema', async () => {
    const path = at('tour.yaml');
    const { code } = await start(path, [first(delay), next(drive), enough, assume('usual'), ...policy, notOwned]);
    expect(code).toBe(0);
    expect(await readdir(folder())).toEqual(['tour.yaml']);
    const text = await readFile(path, 'utf8');
    const data: unknown = parse(text);
    expect(data).toEqual({
      board: 'tour',
      currency: 'EUR',
      assume: { inlet: 'barrel-2.1', ground: 'negative' },
      policy: {
        headroom: { alone: 1.2, chained: 2, supply: 1.2 },
        guess: 1.5,
        chains: 'allow',
        noisePrice: 25,
        mains: 230,
        budget: 120,
      },
      pedals: [
        { name: 'Lode delay', power: 'DC', polarity: 'centre-negative', volts: 9, milliamps: 300, digital: true },
        {
          name: 'Gorse drive',
          power: 'DC',
          polarity: 'centre-negative',
          inlet: 'barrel-2.1',
          ground: 'negative',
          volts: 9,
          milliamps: 8,
          highGain: true,
        },
      ],
    });
    expect(text).toContain('digital: true               # taken for: digital delay or reverb');
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile({ ...jsonSchema('board') });
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(await readInputs(path, marramStreet)).toMatchObject({ kind: 'read' });
    expect(printed.errors).toContain(`Next: boardfeed choose ${path} CATALOGUE`);
  });

  it('goes to standard output when no file is named', async () => {
    expect((await start(undefined, [first(drive), enough, ...quietPolicy, notOwned])).code).toBe(0);
    expect(parse(printed.output)).toMatchObject({ board: 'My board', pedals: [{ name: 'Gorse drive' }] });
    expect(printed.output).not.toContain('\nassume:');
  });

  it('says back what it understood of each line', async () => {
    const { heard } = await start(undefined, [
      first('Lode delay 9-18V 2.7W jack-3.5 startup 400mA'),
      next('Wren 12v 1A positive ground high gain digital alone - '),
      enough,
      assume('usual'),
      ...policy,
      notOwned,
    ]);
    const said = heard.join('\n');
    expect(said).toContain(
      'Lode delay: 9 to 18 V, 300 mA (2.7 W at 9 V), 3.5 mm jack, 400 mA when it starts, digital by its name.\n' +
        'Not known yet: the sign at its inlet.',
    );
    expect(said).toContain(
      'Wren: 12 V, 1000 mA, positive ground, digital, high gain, alone on an output.\n' +
        'Not known yet: the sign at its inlet.\nA dash',
    );
  });

  it('asks again after an answer that says nothing clear, with what would', async () => {
    const steps: readonly Step[] = [
      first(''),
      first('9v 300'),
      first('Lode delay 9v 1,800 mA'),
      first('Lode delay 9v 300 purple'),
      first(delay),
      next('lode DELAY 9v 300'),
      next(drive),
      enough,
      assume('usual'),
      ['What is the most', '120 euro'],
      ['What is the most', '99 usd'],
      ['How much more', '1,800'],
      ['How much more', ''],
      ['Which mains volts', 'plenty'],
      ['Which mains volts', ''],
      notOwned,
    ];
    const { heard } = await start(undefined, steps);
    for (const words of [
      'Begin with what it is called',
      'It may mean 1800 mA or 1.8 mA',
      '"purple" is not understood',
      'That name is there already',
      'Did you mean EUR?',
      'nothing between thousands',
      'Write the volts of the mains',
    ])
      expect(heard.join('\n')).toContain(words);
    expect(parse(printed.output)).toMatchObject({ currency: 'USD', policy: { noisePrice: 20, budget: 99 } });
    expect(printed.output).toContain('# mains: ');
  });

  it('lets every answer be taken back, and a pedal begun by mistake be left', async () => {
    const { offered } = await start(undefined, [
      first('Wren 9v'),
      ['what kind of circuit is Wren', back],
      first('Lode delay 9v 300 neg'),
      next('Thrush 9v'),
      ['what kind of circuit is Thrush', back],
      next(back),
      first('Lode delay 9v 310 neg'),
      enough,
      assume('nothing'),
      ['What is the most', back],
      assume('usual'),
      ...quietPolicy,
      notOwned,
    ]);
    expect(offered.slice(0, 4)).toEqual([undefined, 'Wren 9v', undefined, 'Lode delay 9v 300 neg']);
    expect(pedals(printed.output)).toMatchObject([{ name: 'Lode delay', milliamps: 310 }]);
    expect(pedals(printed.output)).toHaveLength(1);
    expect(parse(printed.output)).toMatchObject({ assume: { inlet: 'barrel-2.1' } });
  });
});

describe('what is not known', () => {
  it('stands in the file as unknown, with where to look for it', async () => {
    await start(undefined, [first('Ruff tuner'), next('Heath fuzz 9v'), enough, assume('usual'), ...policy, notOwned]);
    expect(parse(printed.output)).toMatchObject({
      assume: { power: 'DC', inlet: 'barrel-2.1', ground: 'negative', volts: 9 },
    });
    expect(pedals(printed.output)).toEqual([
      {
        name: 'Ruff tuner',
        polarity: 'unknown',
        volts: 'unknown',
        milliamps: 'unknown',
        circuit: 'tuner',
        digital: true,
      },
      // An old fuzz may have a positive ground: nobody is to assume it has not.
      {
        name: 'Heath fuzz',
        polarity: 'unknown',
        ground: 'unknown',
        volts: 9,
        milliamps: 'unknown',
        circuit: 'fuzz',
        highGain: true,
      },
    ]);
    expect(printed.output).toMatch(/polarity: unknown +# which of \+ and - leads to the dot/);
  });

  it('is asked about once for all, and nothing is taken unless it is chosen', async () => {
    const lines = [first('Ruff tuner'), enough] as const;
    await start(undefined, [...lines, assume('polarity'), ...quietPolicy, notOwned]);
    expect(parse(printed.output)).toMatchObject({
      assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative', volts: 9 },
    });
    expect(pedals(printed.output)).toEqual([
      { name: 'Ruff tuner', volts: 'unknown', milliamps: 'unknown', circuit: 'tuner', digital: true },
    ]);
    printed.output = '';
    await start(undefined, [...lines, assume('nothing'), ...quietPolicy, notOwned]);
    expect(parse(printed.output)).not.toHaveProperty('assume');
    expect(pedals(printed.output)).toMatchObject([
      { power: 'unknown', polarity: 'unknown', inlet: 'unknown', ground: 'unknown', volts: 'unknown' },
    ]);
  });

  it('a draw is planned by the kind of circuit: by the name, or asked for', async () => {
    const { heard } = await start(undefined, [
      first('Linnet chorus 9v neg'),
      ['what kind of circuit is Linnet chorus', 'analogue-modulation'],
      enough,
      assume('usual'),
      ...quietPolicy,
      notOwned,
    ]);
    expect(heard.join('\n')).toContain('Not known yet: what it draws (planned with 50 mA, as a guess).');
    expect(pedals(printed.output)).toMatchObject([{ milliamps: 'unknown', circuit: 'analogue-modulation' }]);
  });
});

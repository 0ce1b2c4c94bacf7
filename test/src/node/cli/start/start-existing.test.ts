import { readFile, readdir, writeFile } from 'node:fs/promises';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { stop } from './scripted.js';
import { assume, enough, first, next, notOwned, starting } from './starting.js';

const { at, printed, start, folder } = starting({ catalogue: false });
const delay = 'Lode delay 9v dc 300 neg barrel-2.1 negative ground';

const pedalsIn = async (path: string): Promise<unknown> =>
  (parse(await readFile(path, 'utf8')) as { pedals: unknown }).pedals;

describe('a board that is there', () => {
  const board = [
    '# mine',
    'board:   Mine   # of old',
    'currency: EUR',
    'policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2},',
    '         chains: never}',
    'pedals:',
    '  # the first',
    '  - {name: Echo, power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative, volts: 9, milliamps: 100}',
    '# what I own',
    'owned: {supplies: [quay-6]}',
    '',
  ].join('\n');

  it('gets the new pedals below the others; nothing else changes', async () => {
    const path = at('mine.yaml');
    await writeFile(path, board);
    expect((await start(path, [next(delay), enough])).code).toBe(0);
    const [before = '', after = ''] = board.split('# what I own');
    const text = await readFile(path, 'utf8');
    expect(text.startsWith(before)).toBe(true);
    expect(text.endsWith(`# what I own${after}`)).toBe(true);
    expect(await pedalsIn(path)).toMatchObject([{ name: 'Echo' }, { name: 'Lode delay', ground: 'negative' }]);
    expect(printed.errors).toContain(`${path}: 1 added.\nNext: boardfeed choose`);
  });

  it('is told to be incomplete when what was added needs more of it', async () => {
    const path = at('mine.yaml');
    await writeFile(path, board);
    await start(path, [next('Lode delay 9v'), enough, assume('usual')]);
    expect(printed.errors).toMatch(
      /Before it can be used:\n\S+mine\.yaml:\d+:\d+ policy\.guess: missing; the draw of "Lode delay" is a guess/,
    );
  });

  it('does not take a name twice', async () => {
    const path = at('mine.yaml');
    await writeFile(path, board);
    const { heard } = await start(path, [next('ECHO 9v 30'), next(delay), enough]);
    expect(heard).toContain('That name is there already: add a word that tells them apart.');
  });

  it('in JSON keeps being JSON', async () => {
    const path = at('mine.json');
    await writeFile(path, JSON.stringify(parse(board)));
    await start(path, [next(delay), next('Old fuzz'), enough, assume('usual')]);
    const { pedals } = JSON.parse(await readFile(path, 'utf8')) as { readonly pedals: readonly unknown[] };
    expect(pedals).toMatchObject([{ name: 'Echo' }, { name: 'Lode delay' }, { name: 'Old fuzz', volts: 'unknown' }]);
    expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({ assume: { volts: 9 } });
  });

  it.each([
    ['a catalogue', 'shop.yaml', 'catalogue: C\nsupplies: []\n', 'this is a catalogue, not a board.'],
    ['no YAML', 'x.yaml', 'pedals: [', 'not valid YAML'],
    ['a table', 'x.csv', 'name,volts\n', 'nothing is added to a table'],
  ])('is refused before anything is asked when it is %s', async (_name, name, text, message) => {
    await writeFile(at(name), text);
    expect((await start(at(name), [])).code).toBe(3);
    expect(printed.errors).toContain(message);
    expect(await readFile(at(name), 'utf8')).toBe(text);
  });

  it('is refused when there is no such folder', async () => {
    expect((await start(at('no/such.yaml'), [])).code).toBe(3);
    expect(printed.errors).toContain('there is no such folder');
  });

  it('whose list stands elsewhere is left alone, and what was told is printed', async () => {
    const path = at('mine.yaml');
    const text = `${board.replace('pedals:\n', 'x: &p\n')}pedals: *p\n`;
    await writeFile(path, text);
    expect((await start(path, [next(delay), enough])).code).toBe(3);
    expect(await readFile(path, 'utf8')).toBe(text);
    expect(parse(printed.output)).toMatchObject([{ name: 'Lode delay' }]);
  });
});

describe('what was not known before', () => {
  const half = [
    'board: Half',
    'currency: EUR',
    'assume: {inlet: barrel-2.1, ground: negative, volts: 9}',
    'pedals:',
    '  - name: Ruff tuner     # in the bag',
    '    power: DC',
    '    polarity: unknown           # which of + and - leads to the dot',
    '    volts: unknown',
    '    milliamps: unknown',
    '    circuit: tuner',
    '  # worn',
    '  - {name: Heath fuzz, power: DC, polarity: unknown, volts: 9, milliamps: 4}',
    '',
  ].join('\n');

  it('is asked for first, and written where it stood', async () => {
    const path = at('half.yaml');
    await writeFile(path, half);
    const { heard } = await start(path, [
      ['Ruff tuner. Not known: the sign at its inlet, its volts and what it draws.', 'measured 9v 31 neg'],
      ['Heath fuzz. Not known: the sign at its inlet.', ''],
      enough,
      notOwned,
    ]);
    expect(heard).toContain('Ruff tuner: 9 V, 31 mA, centre-negative.');
    expect(await readFile(path, 'utf8')).toBe(
      half
        .replace(/unknown {11}# which.*/, 'centre-negative')
        .replace('volts: unknown', 'volts: 9')
        .replace('milliamps: unknown', 'milliamps: 31')
        .replace('circuit: tuner\n', 'circuit: tuner\n    figure: measured\n'),
    );
    expect(printed.errors).toContain('0 added, 1 read.');
    expect(printed.errors).toContain('To be read: Heath fuzz: the sign at its inlet.');
  });

  it('is no way to change what the file says', async () => {
    const path = at('half.yaml');
    await writeFile(path, half);
    const { heard } = await start(path, [
      ['Ruff tuner. ', '9v 31 purple'],
      ['Ruff tuner. ', '?'],
      ['Heath fuzz. ', '12v neg'],
      ['Heath fuzz. ', 'neg'],
      enough,
      notOwned,
    ]);
    expect(heard.join('\n')).toContain('"purple" is not understood');
    expect(heard.join('\n')).toContain('The file says already its volts.');
    expect(await pedalsIn(path)).toMatchObject([{ polarity: 'unknown' }, { polarity: 'centre-negative', volts: 9 }]);
  });

  it('is printed where it cannot be written', async () => {
    const path = at('half.yaml');
    await writeFile(path, 'x: &x {name: Echo, volts: unknown}\npedals: [*x]\n');
    expect((await start(path, [['Echo. ', '9v'], enough, notOwned])).code).toBe(3);
    expect(printed.output).toBe('# pedal 1: {volts: 9}\n');
  });
});

describe('a conversation that is broken off', () => {
  it('leaves what was finished in the file, exit code 5', async () => {
    const path = at('tour.yaml');
    expect((await start(path, [first(delay), next('Wren 9v'), ['what kind of circuit', stop]])).code).toBe(5);
    expect(await pedalsIn(path)).toMatchObject([{ name: 'Lode delay' }]);
    expect(await readdir(folder())).toEqual(['tour.yaml']);
  });

  it('keeps what was answered of the rest', async () => {
    const path = at('tour.yaml');
    expect(
      (await start(path, [first('Lode delay 9v 300'), enough, assume('usual'), ['What is the most', stop]])).code,
    ).toBe(5);
    expect(parse(await readFile(path, 'utf8'))).toMatchObject({ assume: { ground: 'negative' }, currency: 'EUR' });
  });

  it('asks when it is run again what it had not come to', async () => {
    const path = at('tour.yaml');
    await start(path, [first('Lode delay 300ma neg'), next(stop)]);
    expect(printed.errors).toContain('nothing is assumed to plan a place for it with');
    printed.errors = '';
    await start(path, [
      ['Lode delay. Not known: the plug that fits, its ground and its volts.', '9v'],
      enough,
      assume('usual'),
      notOwned,
    ]);
    expect(parse(await readFile(path, 'utf8'))).toMatchObject({
      assume: { inlet: 'barrel-2.1' },
      pedals: [{ volts: 9 }],
    });
    expect(printed.errors).toContain(`Next: boardfeed choose ${path} CATALOGUE`);
  });

  it('writes nothing when nothing was finished', async () => {
    expect((await start(at('tour.yaml'), [first(stop)])).code).toBe(5);
    expect(await readdir(folder())).toEqual([]);
    expect(printed.errors).toBe('Nothing was written.\n');
  });
});

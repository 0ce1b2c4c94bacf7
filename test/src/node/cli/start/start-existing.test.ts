import { readFile, readdir, writeFile } from 'node:fs/promises';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { stop, type Step } from './scripted.js';
import { another, boardHead, delay, enough, fuzz, starting } from './starting.js';

const { at, printed, start, folder } = starting({ catalogue: false });
const head = boardHead;

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
  const withGround: readonly Step[] = [...delay.slice(0, 5), ['negative or positive', 'negative'], ...delay.slice(5)];

  it('gets the new pedals below the others; nothing else changes', async () => {
    const path = at('mine.yaml');
    await writeFile(path, board);
    expect((await start(path, [...withGround, enough])).code).toBe(0);
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
    await start(path, [...withGround.slice(0, 6), ['What current', '?'], ...withGround.slice(8), enough]);
    expect(printed.errors).toMatch(
      /Before it can be used:\n\S+mine\.yaml:\d+:\d+ policy\.guess: missing; the draw of "Lode delay" is a guess/,
    );
  });

  it('does not take a name twice', async () => {
    const path = at('mine.yaml');
    await writeFile(path, board);
    const { heard } = await start(path, [['pedal called', 'ECHO'], ...withGround, enough]);
    expect(heard).toContain('That name is there already: add a word that tells them apart.');
  });

  it('in JSON keeps being JSON; a pedal that is left out is told instead', async () => {
    const path = at('mine.json');
    await writeFile(path, JSON.stringify(parse(board)));
    await start(path, [...withGround, another, ...fuzz, enough]);
    expect((JSON.parse(await readFile(path, 'utf8')) as { pedals: unknown[] }).pedals).toHaveLength(2);
    expect(printed.errors).toContain('Not in the file, which has no comments:');
    expect(printed.errors).toContain('polarity: …');
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
    expect((await start(path, [...withGround, enough])).code).toBe(3);
    expect(await readFile(path, 'utf8')).toBe(text);
    expect(parse(printed.output)).toMatchObject([{ name: 'Lode delay' }]);
  });
});

describe('a conversation that is broken off', () => {
  it('leaves what was finished in the file, exit code 5', async () => {
    const path = at('tour.yaml');
    expect(
      (await start(path, [...head, ...delay, another, ...fuzz.slice(0, 3), ['beside the volts', stop]])).code,
    ).toBe(5);
    expect(await pedalsIn(path)).toMatchObject([{ name: 'Lode delay' }]);
    expect(await readdir(folder())).toEqual(['tour.yaml']);
  });

  it('writes nothing when nothing was finished', async () => {
    expect((await start(at('tour.yaml'), [...head, ...delay.slice(0, 4), ['Which plug', stop]])).code).toBe(5);
    expect(await readdir(folder())).toEqual([]);
    expect(printed.errors).toBe('Nothing was written.\n');
  });

  it('what is called wrong is not taken down', async () => {
    const wrong: readonly Step[] = [...delay.slice(0, 8), ['Is this right?', false]];
    await start(undefined, [...head, ...wrong, another, ...delay, enough]);
    expect((parse(printed.output) as { pedals: unknown[] }).pedals).toHaveLength(1);
  });
});

import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, describe, expect, test } from 'vitest';

import { boardfeed, complaints, copied, fixture, marramStreet, printedObject, spawned, tideway } from '../command.js';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-report-'));
});
afterEach(() => rm(folder, { recursive: true }));

const inFolder = (name: string): string => join(folder, name);
const reports = (...names: readonly string[]): readonly string[] =>
  names.flatMap((name) => ['--report', inFolder(name)]);
const textOf = (name: string): Promise<string> => readFile(inFolder(name), 'utf8');

describe('--report', () => {
  test('writes one file each, prints the result as ever, and says where on standard error', async () => {
    const names = ['a.html', 'a.labels.html', 'a.md', 'a.csv', 'a.buy.csv', 'a.svg', 'a.json'];
    const plain = await boardfeed(['choose', ...tideway, '--json']);
    const ended = await boardfeed(['choose', ...tideway, '--json', ...reports(...names)]);
    expect(ended.code).toBe(0);
    expect(ended.output).toBe(plain.output);
    expect(complaints(ended)).toBe(names.map((name) => `Report written to ${inFolder(name)}.\n`).join(''));
    expect((await readdir(folder)).sort()).toEqual([...names].sort());
    expect(await textOf('a.json')).toBe(plain.output);
    expect(await textOf('a.html')).toMatch(/^<!DOCTYPE html>[^]*<h1>Tideway four-piece: how to power it<\/h1>/);
    expect(await textOf('a.svg')).toMatch(/^<\?xml [^]*<svg /);
    expect(await textOf('a.md')).toMatch(/^# Tideway four-piece/);
  });

  test('tells the reasons where there is no plan, with its exit code', async () => {
    const ended = await boardfeed([
      'choose',
      fixture('boards/impossible.yaml'),
      marramStreet,
      ...reports('no.html', 'no.csv'),
    ]);
    expect(ended.code).toBe(4);
    expect(await textOf('no.html')).toContain('no plan exists');
    expect(await textOf('no.csv')).toContain('Kiln-yard amplifier');
  });

  test('writes the best plan found in time', async () => {
    const ended = await boardfeed(['choose', ...tideway, '--time', '0.001', ...reports('early.html')]);
    expect(ended.code).toBe(5);
    expect(await textOf('early.html')).toContain('Best found, not proven');
  });
});

describe('--report of rewire', () => {
  const newPedal = fixture('boards/new-pedal.yaml');

  test('writes what changes and the steps, from a board that describes all its gear', async () => {
    const names = ['r.html', 'r.labels.html', 'r.md', 'r.csv', 'r.buy.csv', 'r.svg', 'r.json'];
    const ended = await boardfeed(['rewire', newPedal, '--json', ...reports(...names)]);
    expect(ended.code).toBe(0);
    expect(complaints(ended)).toBe(names.map((name) => `Report written to ${inFolder(name)}.\n`).join(''));
    expect(await textOf('r.json')).toBe(ended.output);
    const page = await textOf('r.html');
    expect(page).toMatch(
      /<h1>Harbour-light board: how to re-plug it<\/h1>[^]*>What changes<[^]*>Re-plugging, step by step</,
    );
    expect(page).toContain('Made by boardfeed. A plan');
    expect(await textOf('r.md')).toContain('| Skerry delay | Jetty 6 output 6, 9 V |');
    expect((await textOf('r.csv')).split('\r\n').filter((line) => line.includes(',moves,'))).toHaveLength(1);
  });

  test('is refused like that of choose', async () => {
    await writeFile(inFolder('r.md'), 'mine');
    const there = await boardfeed(['rewire', newPedal, ...reports('r.md')]);
    expect(there).toMatchObject({ code: 3, output: '' });
    expect(await textOf('r.md')).toBe('mine');
    expect((await boardfeed(['rewire', newPedal, ...reports('r.md'), '--force'])).code).toBe(0);
    expect(await textOf('r.md')).toMatch(/^# Harbour-light board: how to re-plug it/);
    expect((await boardfeed(['rewire', newPedal, '--force'])).code).toBe(2);
    expect((await boardfeed(['rewire', newPedal, ...reports('r.pdf')])).code).toBe(2);
    const board = await copied(newPedal, inFolder('board.json'));
    expect((await boardfeed(['rewire', board, ...reports('board.json'), '--force'])).code).toBe(3);
    expect(await readFile(board)).toEqual(await readFile(newPedal));
  });
});

describe('--report of compare', () => {
  test('writes the comparison as a page, Markdown, a table and JSON', async () => {
    const names = ['c.html', 'c.md', 'c.csv', 'c.json'];
    const ended = await boardfeed(['compare', ...tideway, '--json', ...reports(...names)]);
    expect(ended.code).toBe(0);
    expect((await readdir(folder)).sort()).toEqual([...names].sort());
    expect(await textOf('c.json')).toBe(ended.output);
    expect(await textOf('c.html')).toMatch(/^<!DOCTYPE html>[^]*<h1>Tideway four-piece: purchases compared<\/h1>/);
  });

  test.each([
    { given: reports('a.labels.html'), says: /it must end in \.html, \.sheet\.html, \.md, \.csv or \.json/ },
    { given: reports('a.svg'), says: /it must end in/ },
    { given: ['--force'], says: /--force goes with --report only/ },
  ])('is refused as $given', async ({ given, says }) => {
    const ended = await boardfeed(['compare', ...tideway, ...given]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(says);
  });

  test('goes with one board only', async () => {
    const ended = await boardfeed(['compare', '--boards', folder, tideway[1], ...reports('a.html')]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(/--report goes with one board/);
  });
});

/** JavaScript by which the files that a report is first written to fail in this way after half of it. */
const failing = (code: string): string => `
  import files from 'node:fs/promises';
  import { syncBuiltinESMExports } from 'node:module';
  const { open } = files;
  files.open = async (path, ...rest) => {
    const handle = await open(path, ...rest);
    if (!String(path).endsWith('.part')) return handle;
    const writeFile = handle.writeFile.bind(handle);
    handle.writeFile = async (text) => {
      await writeFile(text.slice(0, text.length / 2));
      throw Object.assign(new Error('${code}'), { code: '${code}' });
    };
    return handle;
  };
  syncBuiltinESMExports();`;

describe('what the disk refuses', () => {
  test.each([
    { code: 'ENOSPC', says: 'the disk is full. Make room, or name a file on another disk.' },
    { code: 'EFBIG', says: 'the disk takes no file of this size. Name a file on another one.' },
    { code: 'EIO', says: 'cannot be written (EIO). Check the path and the disk.' },
  ])('$code half-way leaves nothing behind, and nothing changed', async ({ code, says }) => {
    await writeFile(inFolder('b.csv'), 'mine');
    const given = ['choose', ...tideway, '--force', ...reports('a.html', 'b.csv')];
    const ended = await spawned(given, { before: failing(code) });
    expect(ended.code).toBe(3);
    expect(ended.output).toContain('Tideway four-piece: how to power it');
    expect(complaints(ended)).toBe(
      ['a.html', 'b.csv'].map((name) => `${inFolder(name)}: ${says} The report was not written.\n`).join(''),
    );
    expect(await readdir(folder)).toEqual(['b.csv']);
    expect(await textOf('b.csv')).toBe('mine');
  });

  test.each([
    { code: 'EROFS', says: 'nothing can be written on this disk. Name a file on another one.' },
    { code: 'EACCES', says: 'there is no permission to write here. Name a file in another folder.' },
  ])('$code is said before the search', async ({ code, says }) => {
    // Whoever may write everywhere, as in a container, finds no folder that refuses.
    const before = `
      import files from 'node:fs/promises';
      import { syncBuiltinESMExports } from 'node:module';
      files.access = async () => { throw Object.assign(new Error('${code}'), { code: '${code}' }); };
      syncBuiltinESMExports();`;
    const ended = await spawned(['choose', ...tideway, ...reports('a.html')], { before });
    expect(ended).toMatchObject({ code: 3, output: '', errors: `${inFolder('a.html')}: ${says}\n` });
    expect(await readdir(folder)).toEqual([]);
  });

  test('a folder in the place of a file stays, with --force, too', async () => {
    await mkdir(inFolder('a.html'));
    const ended = await boardfeed(['choose', ...tideway, '--force', ...reports('a.html')]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toBe(`${inFolder('a.html')}: this is a folder, not a file. Name a file in it.\n`);
    expect(await readdir(folder)).toEqual(['a.html']);
  });
});

describe('before the search', () => {
  test('a file that is there is refused, and replaced with --force only', async () => {
    await writeFile(inFolder('a.md'), 'mine');
    const refused = await boardfeed(['choose', ...tideway, ...reports('b.html', 'a.md')]);
    expect(refused).toMatchObject({ code: 3, output: '' });
    expect(refused.errors).toBe(
      `${inFolder('a.md')}: there is a file of that name already. Give another name, or add --force to replace it.\n`,
    );
    expect(await readdir(folder)).toEqual(['a.md']);
    expect(await textOf('a.md')).toBe('mine');
    expect((await boardfeed(['choose', ...tideway, ...reports('a.md'), '--force'])).code).toBe(0);
    expect(await textOf('a.md')).toMatch(/^# Tideway/);
  });

  test('every file that cannot be written is named, the proof among them', async () => {
    const ended = await boardfeed([
      'choose',
      ...tideway,
      ...reports('none/a.html', 'none/b.md'),
      '--proof',
      inFolder('none/proof.json'),
    ]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors.trimEnd().split('\n')).toHaveLength(3);
    expect(ended.errors.match(/there is no such folder/g)).toHaveLength(3);
  });

  test('no report replaces a file that it is made from', async () => {
    const board = await copied(tideway[0], inFolder('board.json'));
    const ended = await boardfeed(['choose', board, tideway[1], ...reports('./board.json'), '--force']);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('this is a file that the report is made from.');
    expect(await readFile(board)).toEqual(await readFile(tideway[0]));
  });
});

describe('wrong use', () => {
  test.each([
    {
      names: ['a.pdf'],
      says: /^error: no report has a name like '.*a\.pdf'; it must end in \.labels\.html, \.sheet\.html, \.html, \.md, /,
    },
    { names: ['a.html', 'a.html'], says: /^error: '.*a\.html' is named twice/ },
    { names: ['a.html', 'x/../a.html'], says: /is named twice/ },
  ])('$names', async ({ names, says }) => {
    const ended = await boardfeed(['choose', 'no-board.yaml', 'no-shop.yaml', ...reports(...names)]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(says);
  });

  test('a report where the proof goes', async () => {
    const ended = await boardfeed(['choose', 'b.yaml', 's.yaml', ...reports('p.json'), '--proof', inFolder('p.json')]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(/is named twice/);
  });

  test('--force without a file to replace', async () => {
    expect((await boardfeed(['choose', ...tideway, '--force'])).code).toBe(2);
  });
});

test('hostile names come to nothing in any report', async () => {
  const hostile = '</title><script>alert(1)</script>=1\u001b[31m\u202e|**x**';
  const board = JSON.stringify({
    board: hostile,
    currency: 'EUR',
    policy: { headroom: { alone: 1, chained: 1, supply: 1 }, guess: 1, chains: 'allow', noisePrice: 0 },
    assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
    pedals: [{ id: 'one', name: hostile, volts: 9, milliamps: 10, figure: 'label' }],
  });
  const bank = {
    ...{ outputs: 1, isolated: true, power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative' },
    settings: [{ volts: 9, milliamps: 100 }],
  };
  const shop = JSON.stringify({
    catalogue: hostile,
    currency: 'EUR',
    supplies: [{ id: 'single', name: hostile, price: 10, regulated: true, banks: [bank] }],
    parts: [],
  });
  await writeFile(inFolder('board.in'), board);
  await writeFile(inFolder('shop.in'), shop);
  const names = ['a.html', 'a.labels.html', 'a.svg', 'a.md', 'a.csv', 'a.buy.csv', 'a.json'];
  const ended = await boardfeed(['choose', inFolder('board.in'), inFolder('shop.in'), '--json', ...reports(...names)]);
  expect(ended.code).toBe(0);
  expect(printedObject(ended)['board']).toBe(hostile);
  for (const name of names) {
    const text = await textOf(name);
    expect(text.slice(1)).not.toMatch(/(?![\n\r])[\p{Cc}\p{Cf}]/u);
    if (/html|svg/.test(name)) expect(text).not.toContain('<script');
  }
});

import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

import { expect, test } from 'vitest';

import { givenFiles, type Given } from '../../../../../src/web/file/given-files.js';
import { boardfeed, fixture, gigBoard, marramStreet, scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();
const place = async (name: string): Promise<string> => join(dirname(await scratch('beside.txt', '')), name);

async function givenIn(path: string): Promise<Given> {
  const page = await readFile(path, 'utf8');
  return givenFiles(/id="given">([^]*?)<\/script>/.exec(page)?.[1] ?? '');
}

test('without files the page begins with the example', async () => {
  const out = await place('demo.html');
  const ended = await boardfeed(['page', '--out', out]);
  expect(ended).toMatchObject({ code: 0, output: '' });
  expect(ended.errors).toBe(`Page written to ${out}. Open it in a browser: file://${out}\n`);
  expect((await givenIn(out)).files).toEqual({
    board: { file: 'gig-board.yaml', text: await readFile(gigBoard, 'utf8') },
    shop: { file: 'marram-street.yaml', text: await readFile(marramStreet, 'utf8') },
  });
});

test('files stand in it letter by letter, by their names alone; a table of pedals as a board', async () => {
  const out = await place('own.html');
  const table = await scratch(
    'festival.csv',
    '# currency: EUR\n# assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}\nname,volts,milliamps\nEcho,9,300\n',
  );
  expect((await boardfeed(['page', table, '--out', out])).code).toBe(0);
  const { files } = await givenIn(out);
  expect(files).toMatchObject({ board: { file: 'festival.yaml' }, shop: null });
  expect(files?.board.text).toContain('Echo');
});

test('a pedal that is left out of a table is told', async () => {
  const table = await scratch(
    'rehearsal.csv',
    '# currency: EUR\nname,power,volts,milliamps,polarity,inlet,ground\nEcho,DC,9,300,centre-negative,barrel-2.1,negative\nOwl,DC,9,30,sideways,barrel-2.1,negative\n',
  );
  const ended = await boardfeed(['page', table, '--out', await place('rehearsal.html')]);
  expect(ended.code).toBe(0);
  expect(ended.errors).toContain('left out "Owl"');
});

test('a page is told from others by the files inside', async () => {
  const [one, other] = [await place('one.html'), await place('other.html')];
  await boardfeed(['page', gigBoard, marramStreet, '--out', one]);
  await boardfeed(['page', ...tideway, '--out', other]);
  const demo = await place('again.html');
  await boardfeed(['page', '--out', demo]);
  expect((await givenIn(one)).origin).toBe((await givenIn(demo)).origin);
  expect((await givenIn(one)).origin).not.toBe((await givenIn(other)).origin);
});

test('nothing is replaced unless that is asked for, and never what it is made from', async () => {
  const out = await scratch('taken.html', 'mine');
  const refused = await boardfeed(['page', '--out', out]);
  expect(refused.code).toBe(3);
  expect(refused.errors).toContain('--force');
  expect(await readFile(out, 'utf8')).toBe('mine');
  expect((await boardfeed(['page', '--out', out, '--force'])).code).toBe(0);
  const board = await scratch('board.yaml', await readFile(gigBoard, 'utf8'));
  const own = await boardfeed(['page', board, marramStreet, '--out', board, '--force']);
  expect(own).toMatchObject({ code: 3 });
  expect(await readFile(board, 'utf8')).toBe(await readFile(gigBoard, 'utf8'));
});

test('files that are wrong are told as by any command, and no page is written', async () => {
  const out = await place('none.html');
  const board = await scratch('bad.yaml', 'board: B\n');
  const ended = await boardfeed(['page', board, '--out', out]);
  expect(ended.code).toBe(3);
  expect(ended.errors).toContain(basename(board));
  await expect(readFile(out)).rejects.toThrow('ENOENT');
  expect((await boardfeed(['page', fixture('boards/nowhere.yaml'), '--out', out])).code).toBe(3);
});

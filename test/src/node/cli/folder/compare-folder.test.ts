import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, test } from 'vitest';

import { supplyId } from '../../../../../src/domain/quantities.js';
import { hashOf } from '../../../../../src/node/cli/folder/folder-run.js';
import {
  boardFile,
  boardfeed,
  complaints,
  fixture,
  interruptedAt,
  longBoard,
  marramStreet,
  spawned,
  tideway,
} from '../command.js';

const place = await mkdtemp(join(tmpdir(), 'boardfeed-folder-'));
afterAll(() => rm(place, { recursive: true }));

let folders = 0;
async function folderOf(files: Readonly<Record<string, unknown>>): Promise<string> {
  folders += 1;
  const folder = join(place, `boards-${folders}`);
  await mkdir(folder);
  for (const [name, content] of Object.entries(files))
    await writeFile(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return folder;
}

type Line = {
  readonly file: string;
  readonly hash: string | null;
  readonly status: string;
  readonly comparison?: Readonly<Record<string, unknown>>;
  readonly error?: { readonly message: string };
};
const linesOf = (text: string): readonly Line[] =>
  text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Line)
    .sort((first, second) => (first.file < second.file ? -1 : 1));

const [tidewayBoard, quayside] = tideway;
const first = await boardFile(tidewayBoard);
const named = (board: string) => ({ ...first, board });
const furnace = { ...first.pedals[0], name: 'Furnace', volts: 37 };
const best = ['--best', '1'] as const;

describe('a folder of boards', () => {
  test('gives a line each, whatever is wrong with some of them', async () => {
    const folder = await folderOf({
      'a.json': named('A'),
      'b.yaml': 'board: [',
      'c.json': { ...named('C'), pedals: [...first.pedals, furnace] },
      'd.json': named('D'),
      'notes.txt': 'not a board',
    });
    const ended = await boardfeed(['compare', '--boards', folder, quayside, ...best]);
    expect(ended.code).toBe(3);
    const lines = linesOf(ended.output);
    expect(lines.map(({ file, status }) => [file, status])).toEqual([
      ['a.json', 'proven'],
      ['b.yaml', 'faulty'],
      ['c.json', 'impossible'],
      ['d.json', 'proven'],
    ]);
    expect(lines[1]?.error?.message).toMatch(/b\.yaml:1:\d+/);
    expect(lines[3]?.comparison).toMatchObject({ format: 'boardfeed/comparison/1', board: 'D' });
    expect(ended.errors).toContain(
      '4 of 4 boards are done: 2 compared, 1 that nothing can power, 1 with faults in their files.',
    );
  });

  test('gives what boardfeed compare prints for each', async () => {
    const folder = await folderOf({ 'a.json': named('A') });
    const [line] = linesOf((await boardfeed(['compare', '--boards', folder, quayside])).output);
    const alone = await boardfeed(['compare', join(folder, 'a.json'), quayside, '--json']);
    expect(line?.comparison).toEqual(JSON.parse(alone.output));
  });
});

describe('a file of results', () => {
  test('takes the lines, and a second run passes over what is there', async () => {
    const folder = await folderOf({ 'a.json': named('A'), 'b.json': named('B') });
    const out = join(place, 'twice.jsonl');
    const run = () => boardfeed(['compare', '--boards', folder, quayside, ...best, '--out', out]);
    expect(await run()).toMatchObject({ code: 0, output: '' });
    const before = await readFile(out, 'utf8');
    expect(linesOf(before).map(({ file }) => file)).toEqual(['a.json', 'b.json']);
    const again = await run();
    expect(again.code).toBe(0);
    expect(again.errors).toContain('2 of 2 boards are done (2 of them before): 2 compared.');
    expect(await readFile(out, 'utf8')).toBe(before);
  });

  test('has the results of boards that have changed, are new, or were cut off made anew', async () => {
    const folder = await folderOf({ 'a.json': named('A'), 'b.json': named('B'), 'c.json': named('C') });
    const out = join(place, 'changed.jsonl');
    const run = () => boardfeed(['compare', '--boards', folder, quayside, ...best, '--out', out]);
    await run();
    const kept = linesOf(await readFile(out, 'utf8'))[0];
    await writeFile(join(folder, 'b.json'), JSON.stringify(named('B again')));
    await writeFile(join(folder, 'd.json'), JSON.stringify(named('D')));
    const text = await readFile(out, 'utf8');
    const cut = text.split('\n').filter((line) => !line.startsWith('{"file":"c.json"'));
    await writeFile(out, `${cut.join('\n')}{"file":"c.json","ha`);
    const again = await run();
    expect(again.errors).toContain('4 of 4 boards are done (1 of them before)');
    const lines = linesOf(await readFile(out, 'utf8'));
    expect(lines.map(({ comparison }) => comparison?.['board'])).toEqual(['A', 'B again', 'C', 'D']);
    expect(lines[0]).toEqual(kept);
  });

  test('counts as made for one catalogue and one question, however long that may take', () => {
    const job = {
      catalogue: { file: 'shop.yaml', text: 'supplies: []' },
      skipBadRows: false,
      aim: 'cost',
      best: 3,
      asked: [],
      timeMs: 1,
    } as const;
    const asked = [new Map([[supplyId('quay-6'), 2]])];
    const others = [
      hashOf(job, 'board: B'),
      hashOf({ ...job, aim: 'bricks' }, 'board: A'),
      hashOf({ ...job, best: 2 }, 'board: A'),
      hashOf({ ...job, asked }, 'board: A'),
      hashOf({ ...job, skipBadRows: true }, 'board: A'),
      hashOf({ ...job, catalogue: { ...job.catalogue, text: 'supplies: [] # none' } }, 'board: A'),
    ];
    const hash = hashOf(job, 'board: A');
    expect(new Set([hash, ...others]).size).toBe(7);
    expect(hashOf({ ...job, timeMs: Infinity }, 'board: A')).toBe(hash);
  });

  test('that holds anything else is refused and left alone', async () => {
    const folder = await folderOf({ 'a.json': named('A') });
    const out = join(place, 'mine.txt');
    await writeFile(out, 'my notes');
    const ended = await boardfeed(['compare', '--boards', folder, quayside, '--out', out]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(complaints(ended)).toMatch(/mine\.txt:1: this line is no result of boardfeed/);
    expect(await readFile(out, 'utf8')).toBe('my notes');
  });

  test('keeps what was done when Ctrl-C ends the run, and the next run goes on from there', async () => {
    const quick = await boardFile(fixture('boards/first-board.yaml'));
    const folder = await folderOf({ 'a.json': quick, 'z.json': await longBoard() });
    const out = join(place, 'interrupted.jsonl');
    const ended = await spawned(['compare', '--boards', folder, marramStreet, '--out', out, '--jobs', '2', ...best], {
      // On a terminal, where progress is told five times a second.
      before: `process.stderr.isTTY = true; ${interruptedAt('1 of 2 boards')}`,
    });
    expect(ended).toMatchObject({ code: 5, signal: null });
    expect(ended.errors).toContain('1 of 2 boards are done: 1 compared.');
    expect(linesOf(await readFile(out, 'utf8')).map(({ file }) => file)).toEqual(['a.json']);
    const later = await boardfeed([
      'compare',
      '--boards',
      folder,
      marramStreet,
      '--out',
      out,
      '--time',
      '0.01',
      ...best,
    ]);
    expect(later.code).toBe(5);
    expect(later.errors).toContain('2 of 2 boards are done (1 of them before): 1 compared, 1 not proven in time.');
  });
});

describe('what a folder run refuses', () => {
  test('a folder without boards, and a catalogue with faults', async () => {
    const empty = await folderOf({});
    const ended = await boardfeed(['compare', '--boards', empty, quayside]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(complaints(ended)).toContain('there is no board file in this folder.');
    const folder = await folderOf({ 'a.json': named('A') });
    const faulty = await boardfeed(['compare', '--boards', folder, join(folder, 'a.json')]);
    expect(faulty).toMatchObject({ code: 3, output: '' });
    expect(complaints(faulty)).toContain('this is a board, not a catalogue.');
  });
});

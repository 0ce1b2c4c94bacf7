import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, it } from 'vitest';

import { openResults, type Judge } from '../../../../src/node/disk/result-lines.js';

const folder = await mkdtemp(join(tmpdir(), 'boardfeed-results-'));
afterAll(() => rm(folder, { recursive: true }));

let files = 0;
async function fileWith(text: string): Promise<string> {
  files += 1;
  const path = join(folder, `${files}.jsonl`);
  await writeFile(path, text);
  return path;
}

const line = (file: string, hash: string, more = ''): string => JSON.stringify({ file, hash, status: 'proven', more });
const fresh: Judge = ({ file, hash }) => (file === 'other' ? 'other' : hash === 'new' ? 'done' : 'stale');

describe('a file of results', () => {
  it('is made where there is none, and takes lines', async () => {
    const path = join(folder, 'none.jsonl');
    const opened = await openResults(path, fresh);
    if (opened.kind !== 'open') throw new Error('it was refused');
    expect([...opened.results.done]).toEqual([]);
    const written = await Promise.all(['one', 'two'].map((name) => opened.results.add(line(name, 'new'))));
    await opened.results.close();
    expect(written).toEqual([null, null]);
    expect(await readFile(path, 'utf8')).toBe(`${line('one', 'new')}\n${line('two', 'new')}\n`);
  });

  it('keeps what stands and what is none of its business, and drops what is stale, torn or there twice', async () => {
    const kept = [line('a', 'new', 'ü'.repeat(70_000)), line('other', 'old')];
    const torn = line('d', 'new').slice(0, -5);
    const path = await fileWith([kept[0], line('b', 'old'), kept[1], line('a', 'new'), torn].join('\n'));
    const opened = await openResults(path, fresh);
    if (opened.kind !== 'open') throw new Error('it was refused');
    expect([...opened.results.done]).toEqual([['a', 'proven']]);
    await opened.results.add(line('d', 'new'));
    await opened.results.close();
    expect(await readFile(path, 'utf8')).toBe([...kept, line('d', 'new'), ''].join('\n'));
  });

  it.each(['{', '{"file":"a', line('a', 'new')])('goes on after a run that got as far as %j', async (torn) => {
    const opened = await openResults(await fileWith(`${line('b', 'new')}\n${torn}`), fresh);
    if (opened.kind !== 'open') throw new Error('it was refused');
    expect([...opened.results.done.keys()]).toEqual(['b']);
    await opened.results.close();
  });

  it.each([
    ['notes\n', 1],
    ['notes', 1],
    [`${line('a', 'new')}\n[1]\n`, 2],
    [`${line('a', 'new')}\n{"file": 3, "status": "x", "hash": null}\n`, 2],
  ])('%j is refused and left alone', async (text, number) => {
    const path = await fileWith(text);
    expect(await openResults(path, fresh)).toMatchObject({ kind: 'refused', line: number });
    expect(await readFile(path, 'utf8')).toBe(text);
  });

  it('is no folder, and stands in one that is there', async () => {
    expect(await openResults(folder, fresh)).toMatchObject({ kind: 'refused', line: null });
    expect(await openResults(join(folder, 'no', 'such.jsonl'), fresh)).toMatchObject({ kind: 'refused', line: null });
  });
});

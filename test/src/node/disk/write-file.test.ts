import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { obstacleTo, writeWhole } from '../../../../src/node/disk/write-file.js';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-write-'));
});
afterEach(() => rm(folder, { recursive: true }));

const fresh = { overwrite: false };
const forced = { overwrite: true };

describe('a file is written whole', () => {
  it('where there was none, and nothing else is left behind', async () => {
    expect(await writeWhole(join(folder, 'proof.json'), 'text', fresh)).toBeNull();
    expect(await readFile(join(folder, 'proof.json'), 'utf8')).toBe('text');
    expect(await readdir(folder)).toEqual(['proof.json']);
  });

  it('over another one only when that is wanted', async () => {
    const path = join(folder, 'proof.json');
    await writeFile(path, 'old');
    expect(await writeWhole(path, 'new', fresh)).toMatchObject({ message: 'there is a file of that name already.' });
    expect(await readFile(path, 'utf8')).toBe('old');
    expect(await writeWhole(path, 'new', forced)).toBeNull();
    expect(await readFile(path, 'utf8')).toBe('new');
    expect(await readdir(folder)).toEqual(['proof.json']);
  });

  it('by one of two that write at once, and the other is refused', async () => {
    const path = join(folder, 'proof.json');
    const written = await Promise.all(['one', 'two'].map((text) => writeWhole(path, text, fresh)));
    expect(written.filter((obstacle) => obstacle === null)).toHaveLength(1);
    expect(['one', 'two']).toContain(await readFile(path, 'utf8'));
    expect(await readdir(folder)).toEqual(['proof.json']);
  });
});

describe('what cannot be written is said before and when it is tried', () => {
  it.each([
    ['a folder', async () => mkdir(join(folder, 'proof.json')), 'proof.json', 'this is a folder, not a file.'],
    ['a folder that is not there', () => Promise.resolve(), 'none/proof.json', 'there is no such folder.'],
    [
      'a file for a folder',
      async () => writeFile(join(folder, 'file'), ''),
      'file/proof.json',
      'there is no such folder.',
    ],
    ['a name too long', () => Promise.resolve(), 'x'.repeat(300), 'the name is too long to be that of a file.'],
  ])('%s', async (_, prepare, name, message) => {
    await prepare();
    for (const options of [fresh, forced]) {
      expect(await obstacleTo(join(folder, name), options)).toMatchObject({ message });
      expect(await writeWhole(join(folder, name), 'text', options)).toMatchObject({ message });
    }
  });

  it('what is no ordinary file', async () => {
    expect(await obstacleTo('/dev/null', forced)).toMatchObject({ message: 'this is no ordinary file.' });
  });
});

import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, it } from 'vitest';

import { boardFolder } from '../../../../src/node/disk/board-folder.js';

const folder = await mkdtemp(join(tmpdir(), 'boardfeed-boards-'));
afterAll(() => rm(folder, { recursive: true }));

describe('the boards of a folder', () => {
  it('are its files that end like boards, in order', async () => {
    const names = ['b.yaml', 'a.YML', 'c.json', 'notes.txt', 'results.jsonl', '.hidden.yaml'];
    for (const name of names) await writeFile(join(folder, name), '');
    await mkdir(join(folder, 'd.yaml'));
    expect(await boardFolder(folder)).toEqual({ kind: 'files', names: ['a.YML', 'b.yaml', 'c.json'] });
  });

  it('are none in a folder that is not there, is a file or holds none', async () => {
    const empty = join(folder, 'd.yaml');
    for (const path of [empty, join(folder, 'nowhere'), join(folder, 'b.yaml')])
      expect(await boardFolder(path)).toMatchObject({ kind: 'none' });
  });
});

import { mkdtemp, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { readText } from '../../../../src/node/disk/file-text.js';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function written(content: string | Buffer): Promise<string> {
  const path = join(folder, `file-${Math.random().toString(36).slice(2)}`);
  await writeFile(path, content);
  return path;
}

const refused = async (path: string) => {
  const result = await readText(path);
  if (result.kind === 'text') throw new Error('the file was read');
  return { line: result.line, column: result.column, message: result.words.message };
};

describe('readText', () => {
  it('reads UTF-8 as it is, an empty file too', async () => {
    expect(await readText(await written('a: ü\r\n'))).toEqual({ kind: 'text', text: 'a: ü\r\n' });
    expect(await readText(await written(''))).toEqual({ kind: 'text', text: '' });
  });

  it('says what the file system refuses', async () => {
    expect((await refused(join(folder, 'missing.yaml'))).message).toContain('no such file');
    expect((await refused(join(await written('a'), 'below'))).message).toContain('no such file');
    expect((await refused(folder)).message).toContain('a folder');
    expect((await refused('a\0b')).message).toContain('NUL');
    expect((await refused(join(folder, 'n'.repeat(5000)))).message).toContain('too long');
    await symlink(join(folder, 'loop'), join(folder, 'loop'));
    expect((await refused(join(folder, 'loop'))).message).toContain('circle');
  });

  it('refuses a large file by its size alone', async () => {
    const path = await written('');
    // A file of holes: its size is stated, but there is nothing to read.
    await truncate(path, 50_000_000_000);
    expect((await refused(path)).message).toContain('larger than 5 MB');
  });

  it('takes exactly 5 MB and no byte more', async () => {
    expect((await readText(await written('a'.repeat(5_000_000)))).kind).toBe('text');
    expect((await refused(await written('a'.repeat(5_000_001)))).message).toContain('larger than 5 MB');
  });

  it('says where text ends that is not UTF-8', async () => {
    const bad = await refused(await written(Buffer.from([0x61, 0x0a, 0xff])));
    expect(bad).toMatchObject({ line: 2, column: 1 });
  });
});

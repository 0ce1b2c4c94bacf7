import { link, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, expect, it } from 'vitest';

import { isSameFile } from '../../../../src/node/disk/same-file.js';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-same-'));
  await writeFile(join(folder, 'file'), '');
  await writeFile(join(folder, 'other'), '');
});
afterEach(() => rm(folder, { recursive: true }));

it('is one file by another spelling, by a link, through another folder, even where there is none', async () => {
  await symlink(join(folder, 'file'), join(folder, 'symbolic'));
  await link(join(folder, 'file'), join(folder, 'hard'));
  await mkdir(join(folder, 'below'));
  for (const name of ['file', './file', 'below/../file', 'symbolic', 'hard'])
    expect(await isSameFile(join(folder, 'file'), join(folder, name))).toBe(true);
  expect(await isSameFile(join(folder, 'none'), join(folder, './none'))).toBe(true);
});

it('is not one file by another name', async () => {
  expect(await isSameFile(join(folder, 'file'), join(folder, 'other'))).toBe(false);
  expect(await isSameFile(join(folder, 'file'), join(folder, 'none'))).toBe(false);
  expect(await isSameFile(join(folder, 'none'), join(folder, 'nothing'))).toBe(false);
});

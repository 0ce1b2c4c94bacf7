import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { readText } from '../../../../src/node/disk/file-text.js';
import { nearFile } from '../../../../src/node/disk/near-file.js';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-near-'));
  await mkdir(join(folder, 'boards'));
  for (const name of ['tour.yaml', 'shop.csv', '.hidden.yaml']) await writeFile(join(folder, 'boards', name), '');
});
afterAll(async () => rm(folder, { recursive: true }));

describe('a file that is not there', () => {
  it.each([
    ['boards/tuor.yaml', 'boards/tour.yaml'],
    ['boards/tour.yml', 'boards/tour.yaml'],
    ['boards/Shop.tsv', 'boards/shop.csv'],
    ['borads/tour.yaml', 'boards/tour.yaml'],
    ['borads/tuor.yaml', 'boards/tour.yaml'],
  ])('%s was most likely meant to be %s', async (path, near) => {
    expect(await nearFile(join(folder, path))).toBe(join(folder, near));
  });

  it.each([
    'boards/lighthouse.yaml',
    'boards/none.yaml',
    'boards/hidden.yaml',
    'elsewhere/tour.yaml',
    'no/such/tour.yaml',
  ])('%s is near to none', async (path) => {
    expect(await nearFile(join(folder, path))).toBeNull();
  });

  it('is told with the one that is near, as it was written', async () => {
    expect(await readText(`${folder}//boards/tuor.yaml`)).toMatchObject({
      words: { message: 'there is no such file.', remedy: `Did you mean ${folder}//boards/tour.yaml?` },
    });
    expect(await readText(join(folder, 'boards/lighthouse.yaml'))).toMatchObject({
      words: { remedy: 'Check the path and the spelling of the name.' },
    });
  });
});

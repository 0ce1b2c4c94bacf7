import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, it } from 'vitest';

import { boardFolder, contentHash } from '../../../../src/node/disk/board-folder.js';
import { namedFile } from '../../../../src/node/disk/file-text.js';
import { catalogueIn } from '../../../../src/reading/read-catalogue.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { marramCatalogue, tidewayBoard } from '../../../support/documented.js';

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

it('a hash tells texts apart, and where one ends and the next begins', () => {
  expect(contentHash('a', 'bc')).toBe(contentHash('a', 'bc'));
  expect(contentHash('a', 'bc')).not.toBe(contentHash('ab', 'c'));
});

describe('a catalogue by itself', () => {
  it('is read like one beside a board', async () => {
    const path = join(folder, 'shop.yaml');
    await writeFile(path, marramCatalogue);
    const read = catalogueIn(await namedFile(path));
    const beside = inputsFromText({ file: 'b', text: tidewayBoard }, { file: 's', text: marramCatalogue });
    if (read.kind === 'faulty' || beside.kind === 'faulty') throw new Error('it is without fault');
    expect(read.value).toEqual({ catalogue: beside.value.catalogue, text: marramCatalogue });
  });

  it('is refused with its own faults', async () => {
    const path = join(folder, 'bad-shop.yaml');
    await writeFile(path, marramCatalogue.replace('price: 119.00', 'price: dear'));
    expect(catalogueIn(await namedFile(path))).toMatchObject({
      kind: 'faulty',
      faults: [{ file: path, key: 'supplies[0].price' }],
    });
    expect(catalogueIn(await namedFile(join(folder, 'nowhere.yaml')))).toMatchObject({ kind: 'faulty' });
  });
});

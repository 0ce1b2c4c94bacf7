import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { namedFile } from '../../../src/node/disk/file-text.js';
import { knownIds } from '../../../src/reading/known-ids.js';

const idsIn = async (paths: readonly string[]) => knownIds(await Promise.all(paths.map((path) => namedFile(path))));

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-ids-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function file(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

const nothing = { pedals: [], supplies: [], parts: [], outputs: [] };

describe('the ids in files', () => {
  it('are those of pedals, supplies, leads and outputs, stated or made from names, gear among them', async () => {
    const board = await file(
      'b.yaml',
      [
        'pedals: [{name: Tarn Fuzz}, {id: echo, name: Estuary}]',
        'gear: {supplies: [{name: Old one, banks: [{outputs: 1}]}], parts: [{name: Flip}]}',
        'owned: {supplies: [quay, quay]}',
      ].join('\n'),
    );
    const shop = await file(
      'c.yaml',
      'supplies: [{id: quay, banks: [{outputs: 2}, {outputs: 1}]}]\nparts: [{id: fan}]\n',
    );
    expect(await idsIn([board, shop])).toEqual({
      pedals: ['tarn-fuzz', 'echo'],
      supplies: ['old-one', 'quay'],
      parts: ['flip', 'fan'],
      outputs: ['old-one:1', 'quay:1', 'quay:2', 'quay:3', 'quay/2:1', 'quay/2:2', 'quay/2:3'],
    });
  });

  it('are found in tables', async () => {
    const table = await file('b.csv', 'name,volts,milliamps\nEcho,9,10\nFuzz,9,1\n');
    expect(await idsIn([table])).toEqual({ ...nothing, pedals: ['echo', 'fuzz'] });
  });

  it('are found in files that are wrong elsewhere, and none in what cannot be read', async () => {
    const wrong = await file(
      'w.yaml',
      'pedals: [{name: Echo, volts: many}, 7, {name: {}}]\nsupplies: [{name: Q, banks: [3]}]\n',
    );
    expect(await idsIn([wrong])).toEqual({ ...nothing, pedals: ['echo'], supplies: ['q'] });
    expect(
      await idsIn([join(folder, 'none.yaml'), await file('x.yaml', 'pedals: ['), await file('y.yaml', '7'), folder]),
    ).toEqual(nothing);
  });
});

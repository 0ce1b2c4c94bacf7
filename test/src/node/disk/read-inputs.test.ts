import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { readInputs } from '../../../../src/node/disk/read-inputs.js';
import { marramCatalogue, tidewayBoard } from '../../../support/documented.js';
import { expectedBoard, expectedCatalogue } from '../../reading/tideway.js';

describe('readInputs', () => {
  it('reads files, and tells what is wrong with both', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'boardfeed-'));
    try {
      const board = join(folder, 'board.yaml');
      const shop = join(folder, 'shop.json');
      await writeFile(board, tidewayBoard);
      await writeFile(shop, JSON.stringify(parse(marramCatalogue)));
      expect(await readInputs(board, shop)).toMatchObject({
        kind: 'read',
        value: { board: expectedBoard, catalogue: expectedCatalogue },
      });
      expect(await readInputs(join(folder, 'none'), folder)).toMatchObject({
        kind: 'faulty',
        faults: [
          { file: join(folder, 'none'), line: 1, column: 1, key: '' },
          { file: folder, line: 1, column: 1, key: '' },
        ],
        more: 0,
      });
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

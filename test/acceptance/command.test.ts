import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { marramCatalogue, tidewayBoard } from '../support/documented.js';
import { runHere } from '../support/run-here.js';

const main = resolve(import.meta.dirname, '..', '..', 'dist', 'src', 'node', 'cli', 'main.js');

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-acceptance-'));
  await writeFile(join(folder, 'board.yaml'), tidewayBoard);
  await writeFile(join(folder, 'shop.yaml'), marramCatalogue);
});
afterAll(() => rm(folder, { recursive: true }));

type Run = { readonly code: number; readonly stdout: string; readonly stderr: string };

const boardfeed = async (...words: readonly string[]): Promise<Run> => {
  const { code, output, errors } = await runHere(words, { folder });
  return { code, stdout: output, stderr: errors };
};

/** Likewise, in a process of its own. */
const spawned = (...words: readonly string[]): Promise<Run> =>
  new Promise((done) => {
    execFile(process.execPath, [main, ...words], { cwd: folder }, (error, stdout, stderr) => {
      done({ code: error === null ? 0 : Number(error.code), stdout, stderr });
    });
  });

const put = async (name: string, text: string): Promise<string> => {
  await writeFile(join(folder, name), text);
  return name;
};

describe('choose', () => {
  test.each(['cost', 'bricks', 'quiet'])('the documented example, aim %s', async (aim) => {
    const run = aim === 'cost' ? spawned : boardfeed;
    const { code, stdout, stderr } = await run('choose', 'board.yaml', 'shop.yaml', '--aim', aim, '--json');
    expect(code).toBe(0);
    expect(stderr).toBe('');
    const found = JSON.parse(stdout) as Readonly<Record<string, unknown>>;
    const feed = { polarity: 'centre-negative', join: null, chain: null, parts: [], supply: 'quay-6', unit: 1 };
    expect(found).toMatchObject({
      format: 'boardfeed/plan/1',
      board: 'Tideway four-piece',
      aim,
      status: 'proven',
      currency: 'EUR',
      score: { unpowered: 0, money: '0.00', exposed: 0, bricks: 1, parts: 0, offPreferred: 0, moved: null },
      buy: { supplies: [], parts: [] },
      feeds: [
        { ...feed, pedal: 'estuary-echo', outputs: [5], volts: 9 },
        { ...feed, pedal: 'tarn-fuzz', volts: 9 },
        { ...feed, pedal: 'chapel-drive', outputs: [6], volts: 18 },
      ],
      unpowered: [],
      exposed: [],
      moved: [],
      confirm: [
        {
          pedal: 'estuary-echo',
          assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
        },
        { pedal: 'tarn-fuzz', assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1' } },
        {
          pedal: 'chapel-drive',
          assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
        },
      ],
      cautions: [],
    });
    const [, tarn] = found['feeds'] as readonly { readonly outputs: readonly number[] }[];
    expect([[1], [2], [3], [4]]).toContainEqual(tarn?.outputs);
  });

  test('Windows files with a byte order mark say the same, and faults keep their lines', async () => {
    const windows = (text: string) => `\uFEFF${text.replaceAll('\n', '\r\n')}`;
    const board = await put('windows.yaml', windows(tidewayBoard));
    expect((await boardfeed('choose', board, 'shop.yaml', '--json')).code).toBe(0);
    const wrong = await put('wrong.yaml', windows(tidewayBoard.replace('milliamps: 180', 'miliamps: 180')));
    const { code, stdout, stderr } = await boardfeed('choose', wrong, 'shop.yaml', '--json');
    expect(code).toBe(3);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/^wrong\.yaml:16:5 .*miliamps: unknown key.* Did you mean milliamps\?$/m);
  });
});

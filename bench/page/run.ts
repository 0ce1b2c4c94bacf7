/** How fast the page is, in a Chromium: `npx tsx bench/page/run.ts [RUNS]`. Built before with `node .ci/ready.mjs`. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { startBrowser } from '../../test/browser/chromium.js';
import { boardFileOf, catalogueFileOf } from '../../test/support/as-files.js';
import { filledPage } from '../../src/web/file/page-file.js';
import { instance } from '../instances.js';
import { medianOf } from '../statistics.js';
import { keysWhileSearching, timed, type Timed } from './in-browser.js';

const sizes = [
  { pedals: 6, supplies: 12 },
  { pedals: 12, supplies: 100 },
  { pedals: 20, supplies: 200 },
] as const;
const mostMs = 60_000;
const keys = 20;

const runs = Number(process.argv[2] ?? 5);
const built = await readFile(resolve(import.meta.dirname, '../../dist/page/boardfeed.html'), 'utf8');
const folder = await mkdtemp(join(tmpdir(), 'boardfeed-page-bench-'));
const browser = await startBrowser();
try {
  console.log(`size of the file: ${Math.round(built.length / 1000)} kB; medians of ${runs} boards each, in ms`);
  for (const size of sizes) {
    const paths: string[] = [];
    for (let seed = 1; seed <= runs; seed += 1) paths.push(await written(size, seed));
    const all: Timed[] = [];
    for (const path of paths) all.push(await timed(browser, path, mostMs));
    const [first = ''] = paths;
    const typed = await keysWhileSearching(browser, first, keys);
    console.log(
      [
        `${size.pedals} × ${size.supplies}:`,
        `ready ${shown(all.map(({ ready }) => ready))},`,
        `first answer ${shown(all.map((one) => one.first))},`,
        `proven ${shown(all.map((one) => one.proven))},`,
        `a key while it searches ${shown(typed)} (the slowest ${Math.round(Math.max(...typed))})`,
      ].join(' '),
    );
  }
} finally {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
}

/** What did not come in time counts as if it came then. */
function shown(times: readonly (number | null)[]): string {
  const late = times.filter((time) => time === null).length;
  const median = Math.round(medianOf(times.map((time) => time ?? mostMs)));
  return late === 0 ? String(median) : `${median} (${late} not within ${mostMs / 1000} s)`;
}

async function written(size: (typeof sizes)[number], seed: number): Promise<string> {
  const { board, catalogue } = instance({ ...size, chains: 'adapters', seed });
  const path = join(folder, `${size.pedals}-${size.supplies}-${seed}.html`);
  const files = {
    board: { file: 'board.json', text: JSON.stringify(boardFileOf(board)) },
    shop: { file: 'shop.json', text: JSON.stringify(catalogueFileOf(catalogue)) },
  };
  await writeFile(path, filledPage(built, { origin: path, files }));
  return path;
}

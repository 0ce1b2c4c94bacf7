import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { boardFileOf, catalogueFileOf } from '../../test/support/as-files.js';
import { instance } from '../instances.js';
import { print } from '../output.js';
import { sizeText } from '../sizes.js';
import type { CompareBench } from './options.js';
import { outputOf } from './processes.js';

const command = resolve(import.meta.dirname, '../../dist/command/boardfeed.js');

/** The whole command on a folder of generated boards, files read and lines written. False where a line is missing or a defect. */
export async function benchFolder({ boards, folderSize, best, jobs }: CompareBench): Promise<boolean> {
  const place = await mkdtemp(join(tmpdir(), 'boardfeed-bench-'));
  try {
    const folder = join(place, 'boards');
    await mkdir(folder);
    // A shop that was stocked for many pedals has something for nearly every board.
    const { catalogue } = instance({ pedals: 40, supplies: folderSize.supplies, chains: 'adapters', seed: 1 });
    const shop = join(place, 'shop.yaml');
    await writeFile(shop, JSON.stringify(catalogueFileOf(catalogue)));
    for (let seed = 1; seed <= boards; seed += 1) {
      const { board } = instance({ ...folderSize, chains: 'adapters', seed });
      const free = {
        ...board,
        policy: { ...board.policy, budget: null },
        owned: { supplies: new Map(), parts: new Map() },
      };
      await writeFile(join(folder, `board-${String(seed).padStart(6, '0')}.yaml`), JSON.stringify(boardFileOf(free)));
    }
    const out = join(place, 'results.jsonl');
    const listed = best === null ? [] : ['--best', String(best)];
    const started = performance.now();
    await outputOf([command, 'compare', '--boards', folder, shop, ...listed, '--out', out, '--jobs', String(jobs)]);
    const seconds = (performance.now() - started) / 1000;
    const lines = (await readFile(out, 'utf8')).trimEnd().split('\n');
    const statuses = lines.map((line) => (JSON.parse(line) as { readonly status: string }).status);
    const count = (status: string): number => statuses.filter((each) => each === status).length;
    const rate = boards / seconds;
    const what = best === null ? 'choices that differ in kind' : `${best} best each`;
    print(
      `a folder of ${boards} boards, ${sizeText(folderSize)}, ${what}, ${jobs} at once: ${seconds.toFixed(1)} s`,
      `${rate.toFixed(2)} boards a second, ${(rate / jobs).toFixed(2)} for each of ${jobs}; ${count('proven')} proven, ` +
        `${count('best found')} not all of it, ${count('impossible')} impossible`,
    );
    return lines.length === boards && !statuses.some((status) => ['defect', 'faulty'].includes(status));
  } finally {
    await rm(place, { recursive: true });
  }
}

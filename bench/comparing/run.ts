import { kitOf } from '../../src/domain/kit.js';
/**
 * How long it takes to set purchases side by side, and how many boards of a folder a core compares. Every wiring is audited by
 * the product before it is counted; the exit code is 1 where an answer is not proven or a board's line tells of a defect.
 */
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import type { CompareStage } from '../../src/planning/compare/comparison.js';
import { instance, type Chains } from '../instances.js';
import { loadNow, loadText, machineText } from '../machine.js';
import { print, progress } from '../output.js';
import { closeEngines, compare, startEngines } from '../product.js';
import { sizeText } from '../sizes.js';
import { exactly, spreadOf } from '../statistics.js';
import { tableText } from '../table.js';
import { boardText, catalogueText } from './input-files.js';
import { parseOptions, usage, type CompareBench } from './options.js';

async function bench(): Promise<number> {
  try {
    const options = parseOptions(process.argv.slice(2));
    const loadAtStart = loadNow();
    print(machineText());
    const areProven = await benchBest(options);
    const isRight = options.boards === 0 || (await benchFolder(options));
    print(loadText(loadAtStart, loadNow()));
    return areProven && isRight ? 0 : 1;
  } catch (error) {
    progress(`${error instanceof Error ? error.message : String(error)}\n${usage}`);
    return 2;
  }
}

const milliseconds = (ms: number): string => `${Math.round(ms)} ms`;

type Elapsed = { readonly purchases: number; readonly all: number };

/** The best purchases and what money buys, in a process that is warm. */
async function benchBest(options: CompareBench): Promise<boolean> {
  const { size, seeds, chains, best } = options;
  const engines = startEngines();
  let areProven = true;
  const time = async (profile: Chains, seed: number): Promise<Elapsed> => {
    const { board, catalogue } = instance({ ...size, chains: profile, seed });
    const started = performance.now();
    let purchases = 0;
    const onStage = ({ kind }: CompareStage): void => {
      if (kind === 'trade-offs') purchases = performance.now() - started;
    };
    const comparison = await compare(kitOf(board, catalogue), { best, engines, onStage });
    const all = performance.now() - started;
    areProven &&= comparison.isProven;
    progress(
      `${profile} ${seed}: ${comparison.options.length} purchases in ${milliseconds(purchases)}, ` +
        `all in ${milliseconds(all)}${comparison.isProven ? '' : ', not proven'}`,
    );
    return { purchases, all };
  };
  for (const profile of chains) await time(profile, 100);
  const rows: string[][] = [];
  for (const profile of chains) {
    const times: Elapsed[] = [];
    for (const seed of seeds) times.push(await time(profile, seed));
    rows.push([
      profile,
      ...spreadText(times.map((each) => each.purchases)),
      ...spreadText(times.map((each) => each.all)),
    ]);
  }
  await closeEngines(engines);
  print(`${best} best purchases, ${sizeText(size)}, ${seeds.length} seeds each`, timesTable(rows));
  return areProven;
}

function spreadText(times: readonly number[]): readonly string[] {
  const { least, median, most } = spreadOf(times.map(exactly));
  return [least, median, most].map(({ ms }) => milliseconds(ms));
}

function timesTable(rows: readonly (readonly string[])[]): string {
  const titles = ['chains', 'least', 'median', 'most', 'with what money buys: least', 'median', 'most'];
  return tableText(
    titles.map((title, at) => ({ title, align: at === 0 ? 'left' : 'right' }) as const),
    rows,
  );
}

const command = resolve(import.meta.dirname, '../../dist/src/node/cli/main.js');

/** The whole command on a folder of generated boards, files read and lines written. */
async function benchFolder({ boards, folderSize, best, jobs }: CompareBench): Promise<boolean> {
  const place = await mkdtemp(join(tmpdir(), 'boardfeed-bench-'));
  try {
    const folder = join(place, 'boards');
    await mkdir(folder);
    // A shop that was stocked for many pedals has something for nearly every board.
    const { catalogue } = instance({ pedals: 40, supplies: folderSize.supplies, chains: 'adapters', seed: 1 });
    await writeFile(join(place, 'shop.yaml'), catalogueText(catalogue));
    for (let seed = 1; seed <= boards; seed += 1) {
      const { board } = instance({ ...folderSize, chains: 'adapters', seed });
      const free = {
        ...board,
        policy: { ...board.policy, budget: null },
        owned: { supplies: new Map(), parts: new Map() },
      };
      await writeFile(join(folder, `board-${String(seed).padStart(6, '0')}.yaml`), boardText(free));
    }
    const out = join(place, 'results.jsonl');
    const started = performance.now();
    await run([
      'compare',
      '--boards',
      folder,
      join(place, 'shop.yaml'),
      '--best',
      String(best),
      '--out',
      out,
      '--jobs',
      String(jobs),
    ]);
    const seconds = (performance.now() - started) / 1000;
    const lines = (await readFile(out, 'utf8')).trimEnd().split('\n');
    const statuses = lines.map((line) => (JSON.parse(line) as { readonly status: string }).status);
    const count = (status: string): number => statuses.filter((each) => each === status).length;
    const rate = boards / seconds;
    print(
      `a folder of ${boards} boards, ${sizeText(folderSize)}, ${best} best each, ${jobs} at once: ${seconds.toFixed(1)} s`,
      `${rate.toFixed(2)} boards a second, ${(rate / jobs).toFixed(2)} for each of ${jobs}; ` +
        `${count('proven')} proven, ${count('impossible')} impossible`,
    );
    return lines.length === boards && count('proven') + count('impossible') === boards;
  } finally {
    await rm(place, { recursive: true });
  }
}

/** The command, to its end; what it says on standard error is shown. */
function run(parameters: readonly string[]): Promise<void> {
  const child = spawn(process.execPath, [command, ...parameters], { stdio: ['ignore', 'ignore', 'inherit'] });
  return new Promise((settle, fail) => {
    child.on('error', fail).on('close', () => settle());
  });
}

process.exitCode = await bench();

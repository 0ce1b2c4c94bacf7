import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { boardFileOf, catalogueFileOf } from '../../test/support/as-files.js';
import { instance, type Chains } from '../instances.js';
import { print, progress } from '../output.js';
import { sizeText } from '../sizes.js';
import { exactly, spreadOf } from '../statistics.js';
import { tableText } from '../table.js';
import type { CompareBench } from './options.js';
import { outputOf } from './processes.js';

/** What `compare-child.mjs` reports: milliseconds since its process began, and how much of it is proven. */
type Report = {
  readonly firstMs: number;
  readonly allMs: number;
  readonly processorMs: number;
  readonly shown: number;
  readonly proven: number;
  readonly isFirstProven: boolean;
  readonly isComplete: boolean;
};

const child = resolve(import.meta.dirname, 'compare-child.mjs');

/**
 * The choices of one board, each comparison a process of its own from its start to its answer, after one that warms the disk's
 * cache. False where the first choice of a board is not proven.
 */
export async function benchBoards({ size, seeds, chains, best }: CompareBench): Promise<boolean> {
  const place = await mkdtemp(join(tmpdir(), 'boardfeed-bench-'));
  const time = async (profile: Chains, seed: number): Promise<Report> => {
    const { board, catalogue } = instance({ ...size, chains: profile, seed });
    const folder = join(place, `${profile}-${seed}`);
    await mkdir(folder, { recursive: true });
    const files = [join(folder, 'board.yaml'), join(folder, 'shop.yaml')] as const;
    await writeFile(files[0], JSON.stringify(boardFileOf(board)));
    await writeFile(files[1], JSON.stringify(catalogueFileOf(catalogue)));
    const report = JSON.parse(await outputOf([child, ...files, ...(best === null ? [] : [String(best)])])) as Report;
    progress(`${profile} ${seed}: ${reportText(report)}`);
    return report;
  };
  try {
    const rows: string[][] = [];
    let areProven = true;
    for (const profile of chains) {
      await time(profile, seeds[0] ?? 1);
      const reports: Report[] = [];
      for (const seed of seeds) reports.push(await time(profile, seed));
      areProven &&= reports.every(({ isFirstProven }) => isFirstProven);
      rows.push(rowOf(profile, reports));
    }
    const listed = best === null ? 'choices that differ in kind' : `${best} best purchases`;
    print(`${listed}, ${sizeText(size)}, ${seeds.length} seeds each, whole processes`, timesTable(rows));
    return areProven;
  } finally {
    await rm(place, { recursive: true });
  }
}

const milliseconds = (ms: number): string => `${Math.round(ms)} ms`;

const reportText = ({ firstMs, allMs, processorMs, shown, proven, isComplete }: Report): string =>
  `first in ${milliseconds(firstMs)}, all in ${milliseconds(allMs)} (${milliseconds(processorMs)} of processor), ` +
  `${proven} of ${shown} proven${isComplete ? '' : ', others may be missing'}`;

const columns = [
  ...['chains', 'first: median', 'most', 'all: median', 'most', 'processor: median', 'most'],
  ...['proven', 'of', 'complete'],
];

function rowOf(profile: Chains, reports: readonly Report[]): string[] {
  const spread = (key: 'firstMs' | 'allMs' | 'processorMs'): readonly string[] => {
    const { median, most } = spreadOf(reports.map((report) => exactly(report[key])));
    return [median, most].map(({ ms }) => milliseconds(ms));
  };
  const sum = (of: (report: Report) => number): string => String(reports.reduce((total, each) => total + of(each), 0));
  return [
    profile,
    ...spread('firstMs'),
    ...spread('allMs'),
    ...spread('processorMs'),
    sum(({ proven }) => proven),
    sum(({ shown }) => shown),
    sum(({ isComplete }) => Number(isComplete)),
  ];
}

const timesTable = (rows: readonly (readonly string[])[]): string =>
  tableText(
    columns.map((title, at) => ({ title, align: at === 0 ? 'left' : 'right' }) as const),
    rows,
  );

import { availableParallelism } from 'node:os';
import { join } from 'node:path';

import type { Words } from '../../../domain/finding.js';
import { boardFolder } from '../../disk/board-folder.js';
import { namedFile, readText } from '../../disk/file-text.js';
import { catalogueIn, type CatalogueFile } from '../../../reading/catalogue-file.js';
import { openResults, type ResultFile } from '../../disk/result-lines.js';
import type { BoardStatus } from '../../threads/board-result.js';
import { askedPurchases, type CompareFlags } from '../commands/compare-command.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { open, type Read } from '../pipeline.js';
import { tell } from '../printed/tell.js';
import { wordsText } from '../written/aloud.js';
import { compareAll, hashOf, type FolderRun } from './folder-run.js';
import { folderCode, folderSummary } from './folder-summary.js';

export type FolderFlags = Omit<CompareFlags, 'json' | 'report' | 'force'> & {
  /** The folder of the board files. */
  readonly boards: string;
  /** The file that results are added to; standard output when left out. */
  readonly out?: string;
  /** How many boards are worked on at once; one a core when left out. */
  readonly jobs?: number;
};

/** Compares purchases for every board of a folder, one JSON line each, and returns the exit code. */
export async function runCompareFolder(cataloguePath: string, flags: FolderFlags): Promise<ExitCode> {
  const opened = await open({
    read: async () => readBoth(cataloguePath, flags),
    ask: ({ shop }) => askedPurchases(flags.option, shop.catalogue),
  });
  if (opened === null) return exitCodes.input;
  const { shop, names } = opened.input;
  const { boards, aim, best = null, time, skipBadRows = false, jobs = availableParallelism() } = flags;
  const timeMs = time === undefined ? Infinity : time * 1000;
  const catalogue = { file: cataloguePath, text: shop.text };
  const job = { catalogue, skipBadRows, aim, best, asked: opened.question, timeMs };
  const run: FolderRun = { folder: boards, names, job, jobs };
  const results = flags.out === undefined ? standardOutput() : await resultsIn(flags.out, run);
  if (results === null) return exitCodes.input;
  const { count, obstacle } = await compareAll(run, results);
  if (obstacle !== null) {
    tell(`${flags.out ?? 'standard output'}: ${wordsText(obstacle)}`);
    return exitCodes.input;
  }
  tell(folderSummary(count));
  return folderCode(count);
}

type Found = { readonly shop: CatalogueFile; readonly names: readonly string[] };

/** The catalogue, and the names of the boards. */
async function readBoth(cataloguePath: string, flags: FolderFlags): Promise<Read<Found>> {
  const { boards } = flags;
  const shop = catalogueIn(await namedFile(cataloguePath), flags);
  const folder = await boardFolder(boards);
  if (shop.kind === 'read' && folder.kind === 'files')
    return { kind: 'read', value: { shop: shop.value, names: folder.names }, notes: shop.notes ?? [] };
  return {
    kind: 'faulty',
    files: shop.kind === 'faulty' ? [shop] : [],
    sentences: folder.kind === 'none' ? [`${boards}: ${wordsText(folder.words)}`] : [],
  };
}

/** What lasts as long as nothing that it depends on changes. */
const lasting: readonly string[] = ['proven', 'impossible', 'faulty'] satisfies readonly BoardStatus[];

/** The file of results with those that still stand; null when it cannot be used, which is then said on standard error. */
async function resultsIn(out: string, { folder, names, job }: FolderRun): Promise<ResultFile | null> {
  const hashes = new Map<string, string | null>();
  for (const file of names) {
    const read = await readText(join(folder, file));
    hashes.set(file, read.kind === 'text' ? hashOf(job, read.text) : null);
  }
  const opened = await openResults(out, ({ file, hash, status }) => {
    if (!hashes.has(file)) return 'other';
    return lasting.includes(status) && hash !== null && hash === hashes.get(file) ? 'done' : 'stale';
  });
  if (opened.kind === 'open') return opened.results;
  tell(`${out}${opened.line === null ? '' : `:${opened.line}`}: ${wordsText(opened.words)}`);
  return null;
}

/** Standard output as a file of results that begins empty. A reader that has seen enough ends the run. */
const standardOutput = (): ResultFile => ({
  done: new Map(),
  add: async (json) => {
    const { stdout } = process;
    if (!stdout.destroyed && !stdout.write(`${json}\n`)) await drained(stdout);
    return stdout.destroyed ? closed : null;
  },
  close: () => Promise.resolve(),
});

const drained = (stream: NodeJS.WriteStream): Promise<void> =>
  new Promise((resolve) => {
    for (const event of ['drain', 'close', 'error']) stream.once(event, () => resolve());
  });

const closed: Words = { message: 'nobody reads the results any more.', remedy: 'Give --out to keep them in a file.' };

import { join } from 'node:path';

import type { Words } from '../../../domain/finding.js';
import { readText } from '../../disk/file-text.js';
import type { ResultFile } from '../../disk/result-lines.js';
import {
  defectResult,
  faultyResult,
  isBoardStatus,
  type BoardResult,
  type BoardStatus,
  type BoardTask,
  type FolderJob,
} from '../../threads/board-result.js';
import { contentHash } from './content-hash.js';
import { folderProgressText, type FolderCount } from './folder-summary.js';
import { folderThread } from '../../threads/folder-thread.js';
import { workThrough } from '../../threads/lanes.js';
import { statusLine } from '../progress/status-line.js';

/** The boards of a folder, and how they are compared. */
export type FolderRun = {
  readonly folder: string;
  readonly names: readonly string[];
  readonly job: FolderJob;
  /** How many boards are worked on at once. */
  readonly jobs: number;
};

/** What a board's result depends on; how long it may take is no part of it, for what was not proven is tried again. */
export function hashOf({ catalogue, skipBadRows, aim, best, asked }: FolderJob, text: string): string {
  const purchases = asked.map((bought) => [...bought]);
  const question = JSON.stringify([aim, best, purchases, ...(skipBadRows ? ['skip bad rows'] : [])]);
  return contentHash('boardfeed/comparison/1', question, catalogue.text, text);
}

/** What has become of all boards by the end, and why results could not be written; null when they could. */
type FolderEnd = { readonly count: FolderCount; readonly obstacle: Words | null };

/** Compares all boards that are not done yet. Ctrl-C ends the run; what is done by then stays. */
export async function compareAll(run: FolderRun, results: ResultFile): Promise<FolderEnd> {
  const { names, job, jobs } = run;
  const stop = new AbortController();
  const tally = new Tally(names.length, results);
  const progress = statusLine((seconds, width) => folderProgressText(tally.count, seconds, width));
  const waiting = names.filter((name) => !results.done.has(name));
  const finish = async (result: BoardResult): Promise<void> => {
    if (!(await tally.take(result, results))) stop.abort();
  };
  const onInterrupt = (): void => {
    stop.abort();
  };
  process.once('SIGINT', onInterrupt);
  try {
    const lanes = Array.from({ length: Math.min(jobs, waiting.length) }, () => folderThread(job));
    await workThrough(lanes, {
      next: async () => nextTask(waiting, run, finish),
      broken: defectResult,
      done: finish,
      signal: stop.signal,
    });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
    await results.close();
  }
  return { count: tally.count, obstacle: tally.obstacle };
}

/** Counts results as they are written. */
class Tally {
  readonly #all: number;
  readonly #before: number;
  readonly #statuses = new Map<BoardStatus, number>();
  #done: number;
  obstacle: Words | null = null;

  constructor(all: number, { done }: ResultFile) {
    this.#all = all;
    this.#before = done.size;
    this.#done = done.size;
    for (const status of done.values()) if (isBoardStatus(status)) this.#add(status);
  }

  get count(): FolderCount {
    return { all: this.#all, before: this.#before, done: this.#done, statuses: this.#statuses };
  }

  /** False when it could not be written. */
  async take({ status, line }: BoardResult, results: ResultFile): Promise<boolean> {
    this.obstacle ??= await results.add(line);
    if (this.obstacle !== null) return false;
    this.#add(status);
    this.#done += 1;
    return true;
  }

  #add(status: BoardStatus): void {
    this.#statuses.set(status, (this.#statuses.get(status) ?? 0) + 1);
  }
}

/** The next board that can be read; those that cannot are done with. */
async function nextTask(
  waiting: string[],
  { folder, job }: FolderRun,
  finish: (result: BoardResult) => Promise<void>,
): Promise<BoardTask | null> {
  for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
    const path = join(folder, file);
    const read = await readText(path);
    if (read.kind === 'text') return { file, path, text: read.text, hash: hashOf(job, read.text) };
    const { line, column, words } = read;
    await finish(faultyResult({ file, hash: null }, [{ file: path, line, column, key: '', ...words }], 0));
  }
  return null;
}

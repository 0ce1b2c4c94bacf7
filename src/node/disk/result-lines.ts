import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, rename, rm, stat, type FileHandle } from 'node:fs/promises';

import type { Words } from '../../domain/finding.js';
import { isTornResult, resultIn, type ResultLine } from '../../reading/text/result-line.js';
import { unlessMissing, wordsOf } from './write-file.js';

/** A file of results, one JSON object a line, that more are added to. */
export type ResultFile = {
  /** The files whose results are there already, with their status. */
  readonly done: ReadonlyMap<string, string>;
  /** Adds a line, whole. Returns why it could not be written; null when it was. */
  readonly add: (json: string) => Promise<Words | null>;
  readonly close: () => Promise<void>;
};

type OpenedResults =
  | { readonly kind: 'open'; readonly results: ResultFile }
  | {
      readonly kind: 'refused';
      /** From 1; null for the file as a whole. */
      readonly line: number | null;
      readonly words: Words;
    };

/** `done`: the result stands; `stale`: it is to be made anew, and goes; `other`: it is none of this run's, and stays. */
export type Judge = (line: ResultLine) => 'done' | 'stale' | 'other';

/**
 * Opens a file of results to add to; a new one where there is none. What a run that was cut short has left of its last line
 * goes, and so do lines that are stale. A file that holds anything else is refused and stays as it is.
 */
export async function openResults(path: string, judge: Judge): Promise<OpenedResults> {
  try {
    const found = await stat(path).catch(unlessMissing);
    if (found?.isDirectory() === true) return { kind: 'refused', line: null, words: isFolder };
    const looked = found === null ? nothing : await lookThrough(path, judge);
    if (looked.refused !== null) return { kind: 'refused', line: looked.refused, words: foreign };
    if (looked.dropped.size > 0) await rewrite(path, looked.dropped);
    return { kind: 'open', results: resultFile(await open(path, 'a'), looked.done) };
  } catch (error) {
    return { kind: 'refused', line: null, words: wordsOf(error) };
  }
}

function resultFile(handle: FileHandle, done: ReadonlyMap<string, string>): ResultFile {
  let last: Promise<Words | null> = Promise.resolve(null);
  const write = async (json: string): Promise<Words | null> => {
    try {
      await handle.appendFile(`${json}\n`);
      return null;
    } catch (error) {
      return wordsOf(error);
    }
  };
  return {
    done,
    add: (json) => (last = last.then(async () => write(json))),
    close: async () => {
      await last;
      await handle.sync().catch(() => undefined);
      await handle.close();
    },
  };
}

type Looked = {
  readonly done: ReadonlyMap<string, string>;
  /** Numbers of lines, from 1. */
  readonly dropped: ReadonlySet<number>;
  readonly refused: number | null;
};

const nothing: Looked = { done: new Map(), dropped: new Set(), refused: null };

async function lookThrough(path: string, judge: Judge): Promise<Looked> {
  const done = new Map<string, string>();
  const dropped = new Set<number>();
  let number = 0;
  for await (const { text, isWhole } of linesOf(path)) {
    number += 1;
    const line = resultIn(text);
    if (line === null && (isWhole || !isTornResult(text))) return { done, dropped, refused: number };
    const verdict = line === null || !isWhole ? 'stale' : judge(line);
    if (verdict === 'done' && line !== null && !done.has(line.file)) done.set(line.file, line.status);
    else if (verdict !== 'other') dropped.add(number);
  }
  return { done, dropped, refused: null };
}

/** The lines, and whether each has its end: what follows the last line break is what was left of one. */
async function* linesOf(path: string): AsyncGenerator<{ readonly text: string; readonly isWhole: boolean }> {
  let rest = '';
  for await (const chunk of createReadStream(path, { encoding: 'utf8' })) {
    const parts = `${rest}${String(chunk)}`.split('\n');
    rest = parts.pop() ?? '';
    for (const text of parts) yield { text, isWhole: true };
  }
  if (rest !== '') yield { text: rest, isWhole: false };
}

/** The file without some lines, whole or not at all. */
async function rewrite(path: string, dropped: ReadonlySet<number>): Promise<void> {
  const beside = `${path}.${randomUUID()}.part`;
  try {
    const handle = await open(beside, 'wx');
    try {
      let number = 0;
      for await (const { text } of linesOf(path)) {
        number += 1;
        if (!dropped.has(number)) await handle.appendFile(`${text}\n`);
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, path);
  } finally {
    await rm(beside, { force: true }).catch(() => undefined);
  }
}

const isFolder: Words = { message: 'this is a folder, not a file.', remedy: 'Name a file in it.' };

const foreign: Words = {
  message: 'this line is no result of boardfeed compare --boards; the file is left as it is.',
  remedy: 'Name another file, or one that such a run has begun.',
};

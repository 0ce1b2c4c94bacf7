import { spawn, type ChildProcess } from 'node:child_process';
import { copyFile, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

import { afterAll } from 'vitest';
import { parse } from 'yaml';

import { runHere } from '../../../support/run-here.js';

export const root = resolve(import.meta.dirname, '../../../..');
const main = join(root, 'dist/command/boardfeed.js');

export const fixture = (path: string): string => join(root, 'fixtures', path);
export const gigBoard = fixture('boards/gig-board.yaml');
export const marramStreet = fixture('shops/marram-street.yaml');
/** Three pedals and what powers them: the quickest board. */
export const tideway = [fixture('boards/tideway.yaml'), fixture('shops/quayside.yaml')] as const;

export type Ended = {
  /** Null when a signal ended it. */
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly output: string;
  readonly errors: string;
};

export type Manner = {
  /** Set besides PATH and an UTF-8 locale; nothing else is. */
  readonly environment?: Readonly<Record<string, string>>;
  /** JavaScript that the process runs before the command: what the world does to it. */
  readonly before?: string;
  /** An open file for standard output, which then is not collected. */
  readonly outputTo?: number;
  /** Called with all that has been written to standard error, whenever there is more. */
  readonly onErrors?: (errors: string, child: ChildProcess) => void;
  /** Called when it has started. */
  readonly onStart?: (child: ChildProcess) => void;
};

/** Runs the command in the process of the tests, which saves a start; nothing but the start is another than on its own. */
export async function boardfeed(parameters: readonly string[]): Promise<Ended> {
  return { signal: null, ...(await runHere(parameters)) };
}

/** Runs the built command in a process of its own, to its end. */
export function spawned(parameters: readonly string[], manner: Manner = {}): Promise<Ended> {
  const before = manner.before === undefined ? [] : ['--import', moduleOf(manner.before)];
  const environment = { PATH: process.env['PATH'], LC_ALL: 'C.UTF-8', ...manner.environment };
  const child = spawn(process.execPath, [...before, main, ...parameters], {
    env: environment,
    stdio: ['ignore', manner.outputTo ?? 'pipe', 'pipe'],
  });
  let [output, errors] = ['', ''];
  child.stdout?.setEncoding('utf8').on('data', (text: string) => (output += text));
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    errors += text;
    manner.onErrors?.(errors, child);
  });
  manner.onStart?.(child);
  return new Promise((settle, fail) => {
    child.on('error', fail).on('close', (code, signal) => settle({ code, signal, output, errors }));
  });
}

const moduleOf = (code: string): string => `data:text/javascript,${encodeURIComponent(code)}`;

/** What was written to standard error besides progress, which a slow machine may bring about in any run. */
export const complaints = ({ errors }: Pick<Ended, 'errors'>): string =>
  errors.replace(/^(Searching|Comparing), .*\n/gm, '');

/** The one JSON object that was printed. @throws SyntaxError when there is anything else. */
export const printedObject = ({ output }: Ended): Record<string, unknown> =>
  JSON.parse(output) as Record<string, unknown>;

/** Keeps files for the tests of one file: call it at the top of the file. Returns what writes one and gives its path. */
export function scratchFiles(): (name: string, content: unknown) => Promise<string> {
  const folder = mkdtemp(join(tmpdir(), 'boardfeed-cli-'));
  afterAll(async () => rm(await folder, { recursive: true }));
  return async (name, content) => {
    const path = join(await folder, name);
    await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
    return path;
  };
}

type BoardFile = { readonly pedals: readonly Record<string, unknown>[]; readonly policy: Record<string, unknown> };
type ShopFile = { readonly supplies: readonly Record<string, unknown>[]; readonly parts: readonly unknown[] };

export const boardFile = async (path: string): Promise<BoardFile> => parse(await readFile(path, 'utf8')) as BoardFile;
export const shopFile = async (path: string): Promise<ShopFile> => parse(await readFile(path, 'utf8')) as ShopFile;

/** The studio wall, every pedal with a draw of its own, without limits: a search of many seconds. */
export async function longBoard(): Promise<BoardFile> {
  const wall = await boardFile(fixture('boards/studio-wall.yaml'));
  const { sockets: _sockets, budget: _budget, bricks: _bricks, ...policy } = wall.policy;
  const pedals = wall.pedals.map(({ milliamps, ...pedal }, at) => ({
    ...pedal,
    milliamps: typeof milliamps === 'number' ? milliamps + (at % 3) : milliamps,
  }));
  return { ...wall, policy, pedals };
}

/**
 * JavaScript for `before`: Ctrl-C once that stands on standard error, by the process itself, so that no search ends before
 * somebody else has read it.
 */
export const interruptedAt = (words: string): string => `
  const write = process.stderr.write.bind(process.stderr);
  let isSent = false;
  process.stderr.write = (text, ...more) => {
    const isTaken = write(text, ...more);
    if (!isSent && text.includes(${JSON.stringify(words)})) isSent = process.kill(process.pid, 'SIGINT');
    return isTaken;
  };`;

/** A copy of a file at another place, whose path it gives. */
export async function copied(from: string, to: string): Promise<string> {
  await copyFile(from, to);
  return to;
}

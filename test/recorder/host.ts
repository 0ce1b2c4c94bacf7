/** A process that runs commands of one compiled checkout, one after the other: thousands of runs without thousands of starts. */
import { pathToFileURL } from 'node:url';

import type { Command } from 'commander';

import { unhurried } from './unhurried.js';

export type Run = { readonly id: number; readonly parameters: readonly string[]; readonly folder: string };

export type Ran = {
  readonly id: number;
  readonly code: number;
  readonly output: string;
  /** The message of what was thrown and not dealt with; null when nothing was. */
  readonly crash: string | null;
};

unhurried(10);
const [, , module = ''] = process.argv;
const { program } = (await import(pathToFileURL(module).href)) as { program: (version: string) => Command };

let crash: string | null = null;
const note = (error: unknown): void => {
  crash ??= error instanceof Error ? error.message : String(error);
};
process.on('uncaughtException', note);
process.on('unhandledRejection', note);
process.on('message', (run: Run) => {
  void ran(run).then((result) => process.send?.(result));
});

async function ran({ id, parameters, folder }: Run): Promise<Ran> {
  process.chdir(folder);
  crash = null;
  process.exitCode = 0;
  let output = '';
  const restore = [caught(process.stdout, (text) => (output += text)), caught(process.stderr, () => undefined)];
  try {
    await program('0.0.0').parseAsync(['node', 'boardfeed', ...parameters]);
  } catch (error) {
    // The checkout has a commander of its own, so its errors are none of this one's.
    if (error instanceof Error && 'exitCode' in error) process.exitCode = error.exitCode === 0 ? 0 : 2;
    else note(error);
  }
  for (const put of restore) put();
  const { exitCode: code } = process;
  process.exitCode = 0;
  return { id, code, output, crash };
}

/** Keeps what is written to a stream from it; returns what undoes that. */
function caught(stream: NodeJS.WriteStream, keep: (text: string) => void): () => void {
  const write = stream.write.bind(stream);
  stream.write = (text: string | Uint8Array): boolean => {
    keep(typeof text === 'string' ? text : Buffer.from(text).toString('utf8'));
    return true;
  };
  return () => {
    stream.write = write;
  };
}

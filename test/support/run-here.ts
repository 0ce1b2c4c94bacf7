import { CommanderError, type Command } from 'commander';

import type * as sources from '../../src/node/cli/program.js';

/** The built command: it starts threads, which read JavaScript only. */
const built = new URL('../../dist/src/node/cli/program.js', import.meta.url);
const { program } = (await import(/* @vite-ignore */ built.href)) as typeof sources;

/** What is about the command: nothing of this is set when it is left out. */
export type Around = {
  /** Set besides an UTF-8 locale. */
  readonly environment?: Readonly<Record<string, string>>;
  /** Standard output is a terminal of so many columns. */
  readonly columns?: number;
  /** Where it runs; here when left out. */
  readonly folder?: string;
};

export type Printed = { readonly code: number; readonly output: string; readonly errors: string };

/** What a terminal and its owner would say of colours, widths and languages. */
const worldly = ['NO_COLOR', 'FORCE_COLOR', 'TERM', 'COLUMNS', 'LC_CTYPE', 'LANG', 'LC_ALL'] as const;

let last: Promise<unknown> = Promise.resolve();

/**
 * Runs a command in this process, as the command line would, with what it prints kept from the streams: without a terminal,
 * in an UTF-8 locale, unless it is told otherwise. One after the other, however many are asked for at once. @throws what no command may throw.
 */
export function runHere(parameters: readonly string[], around: Around = {}): Promise<Printed> {
  const printed = last.then(() => runNow(parameters, around));
  last = printed.catch(() => undefined);
  return printed;
}

async function runNow(parameters: readonly string[], around: Around): Promise<Printed> {
  const { environment, columns, folder = process.cwd() } = around;
  const printed = { output: '', errors: '' };
  const { exitCode: before, env } = process;
  const home = process.cwd();
  const plain = Object.entries(env).filter(([name]) => !worldly.some((each) => each === name));
  process.env = { ...Object.fromEntries(plain), LC_ALL: 'C.UTF-8', ...environment };
  process.chdir(folder);
  process.exitCode = 0;
  const restore = [caught(process.stdout, (text) => (printed.output += text), columns)];
  restore.push(caught(process.stderr, (text) => (printed.errors += text)));
  try {
    await quiet(program()).parseAsync(['node', 'boardfeed', ...parameters]);
    return { code: exitCodeNow(), ...printed };
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return { code: error.exitCode === 0 ? 0 : 2, ...printed };
  } finally {
    for (const put of restore) put();
    process.chdir(home);
    process.exitCode = before;
    process.env = env;
  }
}

const exitCodeNow = (): number => Number(process.exitCode);

/** With its own exits turned into exceptions, in all of its commands. */
function quiet(command: Command): Command {
  for (const one of [command, ...command.commands]) one.exitOverride();
  return command;
}

/** Keeps what is written to a stream from it; returns what undoes that. */
function caught(stream: NodeJS.WriteStream, keep: (text: string) => void, columns?: number): () => void {
  const { isTTY, columns: width } = stream;
  const write = stream.write.bind(stream);
  Object.assign(stream, { isTTY: columns !== undefined, columns });
  stream.write = (text: string | Uint8Array): boolean => {
    keep(typeof text === 'string' ? text : Buffer.from(text).toString('utf8'));
    return true;
  };
  return () => {
    Object.assign(stream, { isTTY, columns: width, write });
  };
}

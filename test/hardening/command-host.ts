import { CommanderError, type Command } from 'commander';

import { program } from '../../src/node/cli/program.js';

/**
 * Runs commands one after the other in one process, as the command line would, each with what it printed and how it ended:
 * thousands of runs, without thousands of starts. A run that fails in a way that no command may is told as a crash.
 */
export type Run = {
  readonly id: number;
  readonly parameters: readonly string[];
  /** What standard input holds is nothing; what is named here is where it runs. */
  readonly folder: string;
};

export type Ran = {
  readonly id: number;
  readonly code: number;
  readonly output: string;
  readonly errors: string;
  /** What was thrown and not dealt with; null when nothing was. */
  readonly crash: string | null;
  /** Of this process, at the end of the run. */
  readonly residentBytes: number;
  /** Of the processor, in this run. */
  readonly busyMs: number;
};

let crash: string | null = null;
const note = (error: unknown): void => {
  crash ??= error instanceof Error ? (error.stack ?? error.message) : String(error);
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
  const before = process.cpuUsage();
  const printed = { output: '', errors: '' };
  const restore = [caught(process.stdout, (text) => (printed.output += text))];
  restore.push(caught(process.stderr, (text) => (printed.errors += text)));
  try {
    await quiet(program('0.0.0')).parseAsync(['node', 'boardfeed', ...parameters]);
  } catch (error) {
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2;
    else note(error);
  }
  for (const put of restore) put();
  const { user, system } = process.cpuUsage(before);
  const { exitCode } = process;
  process.exitCode = 0;
  return {
    id,
    code: exitCode,
    ...printed,
    crash,
    residentBytes: process.memoryUsage.rss(),
    busyMs: (user + system) / 1000,
  };
}

/** With its own exits turned into exceptions, in all of its commands. */
function quiet(command: Command): Command {
  for (const one of [command, ...command.commands]) one.exitOverride();
  return command;
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

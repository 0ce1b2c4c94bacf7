import { runHere, type Printed } from '../support/run-here.js';

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

export type Ran = Printed & {
  readonly id: number;
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
  const before = process.cpuUsage();
  const printed = await runHere(parameters).catch((error: unknown) => {
    note(error);
    return { code: 1, output: '', errors: '' };
  });
  const { user, system } = process.cpuUsage(before);
  return { id, ...printed, crash, residentBytes: process.memoryUsage.rss(), busyMs: (user + system) / 1000 };
}

import { fork, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';

import type { Ran, Run } from './command-host.js';

/** What no run may last, by the clock: the machine may be busy with others, so this is not the time that a run may use. */
const patienceMs = 900_000;

/** After so many runs a process has a successor, so that what one run holds is not lost among what others left behind. */
const mostRuns = 200;

/** A process that runs commands; one that does not answer is ended and replaced. */
export class Host {
  #child: ChildProcess | null = null;
  #next = 0;

  /** Runs a command in a folder. @returns null when it did not end. */
  run(parameters: readonly string[], folder: string): Promise<Ran | null> {
    if (this.#next % mostRuns === 0) this.close();
    const child = (this.#child ??= started());
    const run: Run = { id: (this.#next += 1), parameters, folder };
    return new Promise((settle) => {
      const finish = (result: Ran | null): void => {
        clearTimeout(timer);
        child.off('message', onMessage).off('exit', onExit);
        settle(result);
      };
      const onMessage = (result: Ran): void => {
        if (result.id === run.id) finish(result);
      };
      const onExit = (): void => {
        this.#child = null;
        finish(null);
      };
      const timer = setTimeout(() => {
        child.kill('SIGKILL');
      }, patienceMs);
      child.on('message', onMessage).on('exit', onExit);
      child.send(run);
    });
  }

  close(): void {
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }
}

const started = (): ChildProcess =>
  fork(join(import.meta.dirname, 'command-host.ts'), {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    env: { PATH: process.env['PATH'], LC_ALL: 'C.UTF-8' },
  });

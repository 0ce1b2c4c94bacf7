import { fork, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';

import type { Ran, Run } from './host.js';

/** What no run may last, by the clock: more than any run is allowed, since others may keep the machine busy. */
const patienceMs = 240_000;

/** After so many runs a process has a successor, so that what runs leave behind does not pile up. */
const mostRuns = 400;

/** Runs commands of one compiled checkout in a process of its own; one that does not answer is ended and replaced. */
export class Runner {
  readonly #program: string;
  #child: ChildProcess | null = null;
  #next = 0;

  /** @param program the compiled module that makes the command line. */
  constructor(program: string) {
    this.#program = program;
  }

  /** @returns null when the run did not end in time; where the process ended over it, that is its crash. */
  run(parameters: readonly string[], folder: string): Promise<Ran | null> {
    if (this.#next % mostRuns === 0) this.close();
    const child = (this.#child ??= started(this.#program));
    const run: Run = { id: (this.#next += 1), parameters, folder };
    return new Promise((settle) => {
      let isLate = false;
      const tidy = (): void => {
        clearTimeout(timer);
        child.off('message', onMessage).off('exit', onExit);
      };
      const onMessage = (result: Ran): void => {
        if (result.id !== run.id) return;
        tidy();
        settle(result);
      };
      const onExit = (code: number | null): void => {
        tidy();
        this.#child = null;
        settle(isLate ? null : { id: run.id, code: code ?? 1, output: '', crash: 'the process ended' });
      };
      const timer = setTimeout(() => {
        isLate = true;
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

const started = (program: string): ChildProcess =>
  fork(join(import.meta.dirname, 'host.ts'), [program], {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    env: { PATH: process.env['PATH'], LC_ALL: 'C.UTF-8' },
  });

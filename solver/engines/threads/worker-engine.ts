/**
 * An engine in a thread of its own, because that is the only sure way to stop one. The thread is started with the first
 * question, kept for the next ones, and ended when an answer is overdue, when the asker cancels or after an exception.
 */
import { Worker } from 'node:worker_threads';

import type { Claim, Engine, Limits } from '../engine.js';
import type { Objective, Program } from '../../program.js';
import { readClaim, readMultipliers } from '../read-claim.js';
import type { Answer, Question } from './worker-protocol.js';

export type WorkerEngineSettings = {
  readonly name: string;
  /** The address of the module that exports `load`: absolute, or relative to the compiled worker. */
  readonly moduleUrl: string;
  /** Whether the module can give multipliers of the relaxation. */
  readonly givesDuals: boolean;
  /** How long past its time limit an answer is waited for; includes starting the thread. */
  readonly graceMs: number;
};

/** The engine of that module; costs nothing until it is asked. An idle thread does not keep the process alive. */
export function workerEngine(settings: WorkerEngineSettings): Engine {
  const thread = new EngineThread(settings);
  const ask = async (task: Question['task'], program: Program, objective: Objective, limits: Limits) =>
    thread.ask({ task, program, objective, timeoutMs: limits.timeoutMs }, limits.signal);
  return {
    name: settings.name,
    solve: async (program, objective, limits) => readClaim(await ask('solve', program, objective, limits)),
    ...(settings.givesDuals
      ? {
          relaxationDuals: async (program: Program, objective: Objective, limits: Limits) =>
            readMultipliers(await ask('relaxationDuals', program, objective, limits)),
        }
      : {}),
    close: async () => thread.close(),
  };
}

/** The compiled worker: a thread reads JavaScript only, also when the code that starts it runs as TypeScript. */
const workerFile = (): URL => new URL(import.meta.resolve('#engine-worker'));

const failed = (reason: string): Claim => ({ kind: 'failed', reason });

class EngineThread {
  private readonly settings: WorkerEngineSettings;
  private worker: Worker | null = null;
  private closed = false;
  private asked = 0;
  /** Takes the answer of the question under way, or the reason why there will be none. */
  private settle: ((value: unknown) => void) | null = null;
  /** Resolves when the thread is free for the next question. */
  private free: Promise<unknown> = Promise.resolve();

  constructor(settings: WorkerEngineSettings) {
    this.settings = settings;
  }

  async ask(question: Omit<Question, 'id'>, signal: AbortSignal | undefined): Promise<unknown> {
    const answer = this.free.then(async () => this.askNow(question, signal));
    this.free = answer.catch(() => undefined);
    return answer;
  }

  async close(): Promise<void> {
    this.closed = true;
    await this.end('the engine is closed');
  }

  private async askNow(question: Omit<Question, 'id'>, signal: AbortSignal | undefined): Promise<unknown> {
    if (this.closed) return failed('the engine is closed');
    if (signal?.aborted) return failed('cancelled');
    const overdueMs = question.timeoutMs + this.settings.graceMs;
    const cancelled = (): void => void this.end('cancelled');
    const timer = setTimeout(() => void this.end(`no answer within ${overdueMs} ms`), overdueMs);
    signal?.addEventListener('abort', cancelled);
    try {
      const worker = (this.worker ??= this.start());
      return await new Promise((resolve) => {
        this.settle = resolve;
        worker.postMessage({ ...question, id: ++this.asked } satisfies Question);
      });
    } finally {
      this.settle = null;
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancelled);
    }
  }

  /** Ends the thread; the question under way fails for that reason. The next question starts another thread. */
  private async end(reason: string): Promise<void> {
    const { worker } = this;
    this.worker = null;
    this.settle?.(failed(reason));
    await worker?.terminate();
  }

  private start(): Worker {
    const { moduleUrl } = this.settings;
    // Without the options that this process was started with, such as a loader for TypeScript.
    const worker = new Worker(workerFile(), { workerData: moduleUrl, execArgv: [] });
    const lost = (error: unknown): void => {
      if (this.worker === worker) void this.end(String(error));
    };
    worker.on('message', ({ id, value }: Answer) => {
      if (this.worker === worker && id === this.asked) this.settle?.(value);
    });
    worker.on('error', lost);
    worker.on('messageerror', lost);
    worker.on('exit', () => lost('the thread has ended'));
    // The timer of a question keeps the process alive while it is under way; an idle thread does not.
    worker.unref();
    return worker;
  }
}

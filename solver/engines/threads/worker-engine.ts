/**
 * An engine in a thread of its own, because that is the only sure way to stop one. The thread is started with the first
 * question, kept for the next ones, and ended when an answer is overdue, when the asker cancels or after an exception: by
 * force only where it is at work.
 */
import { Worker } from 'node:worker_threads';

import type { EngineClaim, Engine, EngineLimits } from '../engine.js';
import type { Objective, Program } from '../../program.js';
import { readClaim } from '../read-claim.js';
import { leave } from './end-thread.js';
import { READY, type WorkerAnswer, type WorkerQuestion } from './worker-protocol.js';

type WorkerEngineSettings = {
  readonly name: string;
  /** The address of the module that exports `load`: absolute, or relative to the compiled worker. */
  readonly moduleUrl: string;
  /** How long past its time limit an answer is waited for; includes starting the thread. */
  readonly graceMs: number;
};

/** The engine of that module; costs nothing until it is asked. An idle thread does not keep the process alive. */
export function workerEngine(settings: WorkerEngineSettings): Engine {
  return engineIn(new EngineThread(settings));
}

/** What solves programs in the thread. */
export const engineIn = (thread: EngineThread): Engine => ({
  name: thread.name,
  solve: async (...question) => readClaim(await thread.ask('solve', ...question)),
  close: async () => thread.close(),
});

/** The compiled worker: a thread reads JavaScript only, also when the code that starts it runs as TypeScript. */
const workerFile = (): URL => new URL(import.meta.resolve('#engine-worker'));

const failed = (reason: string): EngineClaim => ({ kind: 'failed', reason });

/** A question that is asked as soon as the thread is ready, and answered once. */
type Pending = { readonly question: WorkerQuestion; readonly settle: (value: unknown) => void; isAsked: boolean };

/** A thread that is asked one thing after the other; what it answers is of unknown origin. */
export class EngineThread {
  readonly name: string;
  private readonly settings: WorkerEngineSettings;
  private worker: Worker | null = null;
  private isReady = false;
  private closed = false;
  private asked = 0;
  private pending: Pending | null = null;
  /** Resolves when the thread is free for the next question. */
  private free: Promise<unknown> = Promise.resolve();
  /** Resolves when all threads are gone that were ended. */
  private gone: Promise<unknown> = Promise.resolve();

  constructor(settings: WorkerEngineSettings) {
    this.settings = settings;
    this.name = settings.name;
  }

  /** `task` is a method of the module's engine. */
  async ask(task: string, program: Program, objective: Objective, limits: EngineLimits): Promise<unknown> {
    const { timeoutMs, signal } = limits;
    const answer = this.free.then(async () => this.askNow({ task, program, objective, timeoutMs }, signal));
    this.free = answer.catch(() => undefined);
    return answer;
  }

  async close(): Promise<void> {
    this.closed = true;
    this.end('the engine is closed');
    await this.gone;
  }

  private async askNow(question: Omit<WorkerQuestion, 'id'>, signal: AbortSignal | undefined): Promise<unknown> {
    if (this.closed) return failed('the engine is closed');
    if (signal?.aborted) return failed('cancelled');
    const overdueMs = question.timeoutMs + this.settings.graceMs;
    const cancelled = (): void => this.end('cancelled');
    const timer = setTimeout(() => this.end(`no answer within ${overdueMs} ms`), overdueMs);
    signal?.addEventListener('abort', cancelled);
    try {
      return await new Promise((settle) => {
        this.pending = { question: { ...question, id: ++this.asked }, settle, isAsked: false };
        this.worker ??= this.start();
        this.askWhenReady();
      });
    } finally {
      this.pending = null;
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancelled);
    }
  }

  private askWhenReady(): void {
    if (this.pending === null || !this.isReady) return;
    this.worker?.postMessage(this.pending.question);
    this.pending.isAsked = true;
  }

  /** Ends the thread; the question under way fails for that reason. The next question starts another thread. */
  private end(reason: string): void {
    const { worker, pending } = this;
    this.worker = null;
    this.isReady = false;
    pending?.settle(failed(reason));
    if (worker === null) return;
    // A thread that is at work hears nothing.
    const isBusy = pending?.isAsked === true;
    this.gone = Promise.all([this.gone, isBusy ? worker.terminate() : leave(worker)]);
  }

  private start(): Worker {
    const { moduleUrl } = this.settings;
    // Without the options that this process was started with, such as a loader for TypeScript.
    const worker = new Worker(workerFile(), { workerData: moduleUrl, execArgv: [] });
    const lost = (error: unknown): void => {
      if (this.worker === worker) this.end(String(error));
    };
    worker.on('message', (message: WorkerAnswer | typeof READY) => {
      if (this.worker !== worker) return;
      if (message === READY) {
        this.isReady = true;
        this.askWhenReady();
      } else if (message.id === this.asked) this.pending?.settle(message.value);
    });
    worker.on('error', lost);
    worker.on('messageerror', lost);
    worker.on('exit', () => lost('the thread has ended'));
    // The timer of a question keeps the process alive while it is under way; an idle thread does not.
    worker.unref();
    return worker;
  }
}

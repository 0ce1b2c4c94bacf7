import type { Objective, Program } from '../../program.js';

/** What the main thread asks an engine's thread, once that is ready. */
export type WorkerQuestion = {
  readonly id: number;
  /** What is asked of the engine: a method of it. */
  readonly task: string;
  readonly program: Program;
  readonly objective: Objective;
  readonly timeoutMs: number;
};

/** What a thread says when it has loaded its engine. */
export const READY = 'ready';

/** What comes back; the value is whatever the engine says and is not to be relied on. */
export type WorkerAnswer = { readonly id: number; readonly value: unknown };

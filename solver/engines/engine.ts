import type { Objective, ProgramPoint, Program } from '../program.js';

/** What an engine says. Nobody believes it: points are checked in integers, and nothing of a proof rests on the rest. */
export type EngineClaim =
  /** It says that nothing is better than the point. */
  | { readonly kind: 'optimal'; readonly point: ProgramPoint }
  | { readonly kind: 'infeasible' }
  /** Its time ran out, perhaps with a point in hand. */
  | { readonly kind: 'stopped'; readonly point: ProgramPoint | null }
  /** An exception, nonsense, silence; or it was killed or cancelled. */
  | { readonly kind: 'failed'; readonly reason: string };

export type EngineLimits = {
  /** What the engine is given; one that overruns it may be killed. */
  readonly timeoutMs: number;
  readonly signal?: AbortSignal;
};

/** Something that minimises integer programs of at least one column. One question at a time; further ones wait. */
export type Engine = {
  readonly name: string;
  solve(program: Program, objective: Objective, limits: EngineLimits): Promise<EngineClaim>;
  /** Ends whatever runs; every later question is answered with `failed`. */
  close(): Promise<void>;
};

/** The part of an engine that translates and computes, blocking its thread meanwhile. It may throw. */
export type EngineCore = {
  solve(program: Program, objective: Objective, timeoutMs: number): EngineClaim;
};

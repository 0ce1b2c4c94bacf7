import type { ProgramPoint, Program } from '../../../solver/program.js';

/** Why the answer may be believed. */
export type CompactProof =
  /** Value and exact bound are equal, or exact multipliers leave no solution. No engine had to be trusted. */
  | { readonly kind: 'bound' }
  /** A row that no point within the columns' bounds can satisfy. */
  | { readonly kind: 'row'; readonly row: string }
  /** Two engines that share no code claim the same. */
  | { readonly kind: 'agreement'; readonly engines: readonly [string, string] }
  /** The trusted engine claims it, and the right answer to another question from which it follows. */
  | { readonly kind: 'second run'; readonly engine: string };

export type CompactOptimal = {
  readonly kind: 'optimal';
  readonly point: ProgramPoint;
  readonly value: number;
  readonly proof: CompactProof;
  /** The program with lower upper bounds on its columns; every solution of the same value is still in it. */
  readonly remaining: Program;
};

export type CompactInfeasible = { readonly kind: 'infeasible'; readonly proof: CompactProof };

export type CompactStopped = {
  readonly kind: 'stopped';
  /** `unconfirmed`: the engines failed, contradicted each other, or could not show what they claim. */
  readonly reason: 'time' | 'cancelled' | 'unconfirmed';
  /** The best solution in hand, checked, and its value. */
  readonly point: ProgramPoint | null;
  readonly value: number | null;
  /** No solution is worth less. */
  readonly bound: number;
};

export type CompactOutcome = CompactOptimal | CompactInfeasible | CompactStopped;

import type { Point, Program } from '../program.js';

/** Why the answer may be believed. */
export type Proof =
  /** Value and exact bound are equal, or exact multipliers leave no solution. No engine had to be trusted. */
  | { readonly kind: 'bound' }
  /** A row that no point within the columns' bounds can satisfy. */
  | { readonly kind: 'row'; readonly row: string }
  /** Two engines that share no code claim the same. */
  | { readonly kind: 'agreement'; readonly engines: readonly [string, string] }
  /** The trusted engine claims it, and the right answer to another question from which it follows. */
  | { readonly kind: 'second run'; readonly engine: string };

export type Optimal = {
  readonly kind: 'optimal';
  readonly point: Point;
  readonly value: number;
  readonly proof: Proof;
  /** The program with lower upper bounds on its columns; every solution of the same value is still in it. */
  readonly remaining: Program;
};

export type Infeasible = { readonly kind: 'infeasible'; readonly proof: Proof };

export type Stopped = {
  readonly kind: 'stopped';
  /** `unconfirmed`: the engines failed, contradicted each other, or could not show what they claim. */
  readonly reason: 'time' | 'cancelled' | 'unconfirmed';
  /** The best solution in hand, checked, and its value. */
  readonly point: Point | null;
  readonly value: number | null;
  /** No solution is worth less. */
  readonly bound: number;
};

export type Outcome = Optimal | Infeasible | Stopped;

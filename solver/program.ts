/** One column's share in a row or an objective; the coefficient is a safe integer. */
export type LinearTerm = { readonly column: number; readonly coefficient: number };

/** An integer variable from 0 to `upper`, both included. */
export type ProgramColumn = { readonly name: string; readonly upper: number };

/** lower ≤ Σ coefficient · column ≤ upper; null is no bound on that side, equal bounds are an equation. */
export type ProgramRow = {
  readonly name: string;
  readonly terms: readonly LinearTerm[];
  readonly lower: number | null;
  readonly upper: number | null;
};

/** An integer program without an objective: every column is an integer, every number a safe integer. */
export type Program = { readonly columns: readonly ProgramColumn[]; readonly rows: readonly ProgramRow[] };

/** What is minimised: constant + Σ coefficient · column. Coefficients are nonnegative safe integers. */
export type Objective = { readonly name: string; readonly terms: readonly LinearTerm[]; readonly constant: number };

/** The value of every column, in the order of the program's columns. */
export type ProgramPoint = readonly number[];

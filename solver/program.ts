/** One column's share in a row or an objective; the coefficient is a safe integer. */
export type Term = { readonly column: number; readonly coefficient: number };

/** An integer variable from 0 to `upper`, both included. */
export type Column = { readonly name: string; readonly upper: number };

/** lower ≤ Σ coefficient · column ≤ upper; null is no bound on that side, equal bounds are an equation. */
export type Row = {
  readonly name: string;
  readonly terms: readonly Term[];
  readonly lower: number | null;
  readonly upper: number | null;
};

/** An integer program without an objective: every column is an integer, every number a safe integer. */
export type Program = { readonly columns: readonly Column[]; readonly rows: readonly Row[] };

/** What is minimised: constant + Σ coefficient · column. Coefficients are nonnegative safe integers. */
export type Objective = { readonly name: string; readonly terms: readonly Term[]; readonly constant: number };

/** The value of every column, in the order of the program's columns. */
export type Point = readonly number[];

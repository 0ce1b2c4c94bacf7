export type Sense = 'at least' | 'at most' | 'equal';
export type SimplexRow = { readonly sense: Sense; readonly bound: number };

/**
 * What is basic in each row: a column by its number from 0; the row's slack, its shortfall or its excess by a negative
 * number, see row-helpers.
 */
export type SimplexBasis = readonly number[];

/** Where a simplex begins: a basis of its first rows and, where it is known, the basis's inverse. */
export type SimplexStart = {
  readonly basis: SimplexBasis;
  readonly inverse: Float64Array | null;
  /** How often the inverse has been updated since it was made. */
  readonly updates: number;
};

export const COLD: SimplexStart = { basis: [], inverse: null, updates: 0 };

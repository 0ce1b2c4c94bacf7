/**
 * A covering program whose columns are far too many to list: minimise Σ cost · column over whole numbers of columns, such
 * that their amounts of some features keep the rows. Columns are made on demand by whoever knows what they mean.
 */
import type { Sense } from './simplex.js';

/** How much of each feature a column has; features are numbered from 0, and none stands twice. */
export type Amounts = readonly (readonly [feature: number, amount: number])[];

/** One way to use one unit of a group. */
export type CoverColumn<Content> = {
  readonly group: number;
  readonly cost: number;
  readonly amounts: Amounts;
  readonly content: Content;
};

/** Σ amount of a feature over the columns of some groups, or of all where they are null. */
export type Counted = { readonly feature: number; readonly groups: readonly number[] | null };

/** What is counted, against a bound; feature −1 is for fixed columns alone. */
export type CoverRow = Counted & {
  readonly name: string;
  readonly sense: Sense;
  readonly bound: number;
};

/** A column that is known beforehand: from 0 to `most` of it, at a cost each, with coefficients in rows. */
export type FixedColumn = {
  readonly name: string;
  readonly cost: number;
  readonly entries: readonly { readonly row: number; readonly coefficient: number }[];
  /** Infinity for no limit. */
  readonly most: number;
};

/** Which columns are worth making: those of a group whose worth under the dual prices is above a floor. */
export type PricingRequest = {
  readonly group: number;
  /** What one of each feature is worth, in `scale`-ths of the objective; integers. */
  readonly duals: Float64Array;
  readonly scale: number;
  /** A column is worth Σ dual · amount − scale · cost, which is minus its reduced cost; it is wanted above this. */
  readonly floor: number;
  /** No column is wanted that has more of a feature than this; features that are left out have no limit. */
  readonly caps: ReadonlyMap<number, number>;
  /** Whether the bound is to be exact, or what comes easily will do: columns worth having, and any bound. */
  readonly effort: 'quick' | 'exact';
};

export type PricingAnswer<Content> = {
  /** No column of the group that keeps the caps is worth more: exact, or above the truth, never below it. */
  readonly bound: number;
  readonly columns: readonly CoverColumn<Content>[];
};

/** Columns that make up a whole solution, and what it costs with everything counted. */
export type Completed<Content> = { readonly value: number; readonly contents: readonly Content[] };

/** What solutions can cost at all: costs in between need not be looked for. */
export type PossibleCosts = {
  /** The greatest possible cost below this one; −1 when there is none. */
  readonly below: (cost: number) => number;
  /** The least possible cost from this one on; Infinity when there is none. */
  readonly from: (cost: number) => number;
};

/** What columns are of: each uses one unit of a group. */
type CoverGroup = {
  readonly name: string;
  /** How many columns it has at the most. */
  readonly most: number;
  /** What one costs at the least, never below zero. */
  readonly leastCost: number;
  /** Groups with the same word here can be exchanged for one another in any solution; null for one that is like no other. */
  readonly alike: string | null;
};

export type CoverProgram<Content> = {
  /** How many features there are. */
  readonly features: number;
  /** The feature of which every column has exactly one. */
  readonly unit: number;
  readonly rows: readonly CoverRow[];
  readonly fixed: readonly FixedColumn[];
  readonly groups: readonly CoverGroup[];
  /** Columns to begin with. */
  readonly start: readonly CoverColumn<Content>[];
  /** No solution worth looking at costs more. */
  readonly greatest: number;
  readonly branching: Branching;
  /** The features of which pricing can be told how much a column may have. */
  readonly capped: readonly number[];
  readonly possible: PossibleCosts;
  readonly price: (request: PricingRequest) => PricingAnswer<Content>;
  /** Makes an exact solution of columns that cover everything, perhaps twice; null when it cannot. */
  readonly complete: (columns: readonly CoverColumn<Content>[]) => Completed<Content> | null;
};

/** What can be branched on beside the number of columns in all and of each group. */
type Branching = {
  /** Features of which it counts how much there is in all. */
  readonly inAll: readonly number[];
  /** Sets of groups of which it counts how many columns they have together; no group twice, and at least two. */
  readonly sets: () => readonly (readonly number[])[];
  /** Features of which it counts how much a group has, in this order of lists. */
  readonly withinGroups: readonly (readonly number[])[];
};

/** What is counted is at most or at least a bound. */
export type BranchingConstraint = Counted & { readonly sense: 'at least' | 'at most'; readonly bound: number };

import type { Condition, CoverProgram } from './program.js';

/** The state in which a relaxation is solved: what is decided on the way to a node of the search. */
export type Decisions = {
  readonly conditions: readonly Condition[];
  /** How many columns of each group at the most. */
  readonly most: readonly number[];
  /** Columns that are taken already. */
  readonly taken: readonly number[];
};

/** The bound of a row; of one that limits a group's columns what is left of their limit, with those already taken. */
export function boundOfRow<Content>(
  { feature, group, sense, bound }: CoverProgram<Content>['rows'][number] | Condition,
  { unit }: CoverProgram<Content>,
  { most, taken }: Decisions,
): number {
  if (feature !== unit || group === null || sense !== 'at most' || taken.length > 0) return bound;
  return Math.min(bound, most[group] ?? bound);
}

import type { BranchingConstraint, CoverProgram } from './program.js';

/** The state in which a relaxation is solved: what is decided on the way to a node of the search. */
export type Decisions = {
  readonly conditions: readonly BranchingConstraint[];
  /** How many columns of each group at the most. */
  readonly most: readonly number[];
  /** Columns that are taken already. */
  readonly taken: readonly number[];
};

/** The bound of a row; of one that limits a group's columns what is left of their limit, with those already taken. */
export function boundOfRow<Content>(
  { feature, group, sense, bound }: CoverProgram<Content>['rows'][number] | BranchingConstraint,
  { unit }: CoverProgram<Content>,
  { most, taken }: Decisions,
): number {
  if (feature !== unit || group === null || sense !== 'at most' || taken.length > 0) return bound;
  return Math.min(bound, most[group] ?? bound);
}

/** How many columns of each group at the most where a branching constraint holds, too. */
export function capped(
  most: readonly number[],
  { feature, group, sense, bound }: Decisions['conditions'][number],
  { unit }: Pick<CoverProgram<unknown>, 'unit'>,
): readonly number[] {
  if (feature !== unit || group === null || sense !== 'at most') return most;
  return most.with(group, Math.min(most[group] ?? 0, bound));
}

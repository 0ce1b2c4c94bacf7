import type { BranchingConstraint, Counted, CoverProgram } from './program.js';

/** The state in which a relaxation is solved: what is decided on the way to a node of the search. */
export type Decisions = {
  readonly conditions: readonly BranchingConstraint[];
  /** How many columns of each group at the most. */
  readonly most: readonly number[];
  /** Columns that are taken already. */
  readonly taken: readonly number[];
};

/** Whether a group's columns are counted. */
export const counts = ({ groups }: Pick<Counted, 'groups'>, group: number): boolean =>
  groups === null || groups.includes(group);

/** Whether it limits the columns of one group, as `most` does. */
export const limitsOne = (
  { feature, groups, sense }: Pick<CoverProgram<unknown>['rows'][number], 'feature' | 'groups' | 'sense'>,
  { unit }: Pick<CoverProgram<unknown>, 'unit'>,
): boolean => feature === unit && groups?.length === 1 && sense === 'at most';

/** The bound of a row; of one that limits a group's columns what is left of their limit, with those already taken. */
export function boundOfRow<Content>(
  row: CoverProgram<Content>['rows'][number] | BranchingConstraint,
  program: CoverProgram<Content>,
  { most, taken }: Decisions,
): number {
  if (!limitsOne(row, program) || taken.length > 0) return row.bound;
  return Math.min(row.bound, most[row.groups?.[0] ?? -1] ?? row.bound);
}

/** How many columns of each group at the most where a branching constraint holds, too. */
export function capped(
  most: readonly number[],
  condition: BranchingConstraint,
  { unit }: Pick<CoverProgram<unknown>, 'unit'>,
): readonly number[] {
  const { feature, sense, bound } = condition;
  if (feature !== unit || sense !== 'at most') return most;
  return most.map((each, group) => (counts(condition, group) ? Math.min(each, bound) : each));
}

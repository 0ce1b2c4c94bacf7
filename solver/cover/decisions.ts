import { remembered } from '../remembered.js';
import type { Amounts, BranchingConstraint, Counted, CoverProgram } from './program.js';

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

/**
 * Whether a condition says no more than one that is decided. A relaxation may all but keep a condition, when to keep it wholly costs more
 * than to break it by a little: to decide the same again and again would lead nowhere.
 */
export const isDecided = (
  { feature, groups, sense, bound }: BranchingConstraint,
  { conditions }: Pick<Decisions, 'conditions'>,
): boolean =>
  conditions.some(
    (known) =>
      known.feature === feature &&
      known.sense === sense &&
      (sense === 'at most' ? known.bound <= bound : known.bound >= bound) &&
      (sense === 'at most' ? isWithin(groups, known.groups) : isWithin(known.groups, groups)),
  );

/** Whether every group of the one is among those of the other; null for all groups. */
const isWithin = (one: Counted['groups'], other: Counted['groups']): boolean =>
  other === null || (one?.every((group) => other.includes(group)) ?? false);

/** How many columns of each group at the most where a branching constraint holds, too. */
function capped(
  most: readonly number[],
  condition: BranchingConstraint,
  { unit }: Pick<CoverProgram<unknown>, 'unit'>,
): readonly number[] {
  const { feature, sense, bound } = condition;
  if (feature !== unit || sense !== 'at most') return most;
  return most.map((each, group) => (counts(condition, group) ? Math.min(each, bound) : each));
}

/** What is decided where a branching constraint holds, too. */
export const withCondition = <Content>(
  { conditions, most }: Decisions,
  condition: BranchingConstraint,
  program: CoverProgram<Content>,
): Decisions => ({ conditions: [...conditions, condition], most: capped(most, condition, program), taken: [] });

/** The most of a feature that one column may have; features that are left out have no limit. */
export type ColumnCaps = ReadonlyMap<number, number>;

/**
 * What a group's single columns are held to: where all columns together have no more of a feature than so much, none has
 * more by itself. That says more than the sum does, of which parts of columns may be had.
 */
export function columnCaps(
  conditions: readonly BranchingConstraint[],
  { capped: features }: Pick<CoverProgram<unknown>, 'capped'>,
): (group: number) => ColumnCaps {
  const capping = conditions.filter(({ feature, sense }) => sense === 'at most' && features.includes(feature));
  if (capping.length === 0) return () => noCaps;
  const known = new Map<number, ColumnCaps>();
  return (group) => remembered(known, group, () => capsOf(capping.filter((condition) => counts(condition, group))));
}

const noCaps: ColumnCaps = new Map();

function capsOf(conditions: readonly BranchingConstraint[]): ColumnCaps {
  const caps = new Map<number, number>();
  for (const { feature, bound } of conditions) caps.set(feature, Math.min(bound, caps.get(feature) ?? Infinity));
  return caps;
}

/** Whether a column has no more of any feature than it may. */
export const keepsCaps = (amounts: Amounts, caps: ColumnCaps): boolean =>
  caps.size === 0 || amounts.every(([feature, amount]) => amount <= (caps.get(feature) ?? Infinity));

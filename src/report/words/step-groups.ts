import { runsOf } from '../../domain/group-by.js';
import type { Changes } from '../../planning/rewire/changes.js';

type Step = Changes['steps'][number];
export type StepOf<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;

/** Steps that go together; at least one. */
export type StepGroup = readonly [Step, ...Step[]];

/** Runs of steps of one kind. Both kinds of switches are one, and to measure begins with the mains. */
export const stepGroups = (steps: readonly Step[]): readonly StepGroup[] =>
  runsOf(steps, ([first], step) => goesOn(first, step));

const goesOn = (first: Step, { kind }: Step): boolean =>
  first.kind === kind ||
  (first.kind === 'mains on' && kind === 'measure') ||
  (first.kind === 'set volts' && kind === 'set polarity');

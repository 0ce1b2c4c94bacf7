import type { Changes } from '../../planning/rewire/changes.js';

type Step = Changes['steps'][number];
export type StepOf<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;

/** Steps that go together; at least one. */
export type StepGroup = readonly [Step, ...Step[]];

/** Runs of steps of one kind. Both kinds of switches are one, and to measure begins with the mains. */
export function stepGroups(steps: readonly Step[]): readonly StepGroup[] {
  const groups: [Step, ...Step[]][] = [];
  for (const step of steps) {
    const group = groups.at(-1);
    if (group !== undefined && goesOn(group[0], step)) group.push(step);
    else groups.push([step]);
  }
  return groups;
}

const goesOn = (first: Step, { kind }: Step): boolean =>
  first.kind === kind ||
  (first.kind === 'mains on' && kind === 'measure') ||
  (first.kind === 'set volts' && kind === 'set polarity');

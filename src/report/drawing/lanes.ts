import { insertionOrder } from './insertion-order.js';

/** Heights at which a lead leaves outputs, to the left of all lanes, and reaches pedals, to the right. */
export type Run = { readonly lefts: readonly number[]; readonly rights: readonly number[] };

/** Between the ends of two leads that share a lane. */
const laneGap = 8;

/** Whether it needs no lane. */
export const isStraight = ({ lefts, rights }: Run): boolean =>
  lefts.length === 1 && rights.length === 1 && lefts[0] === rights[0];

/**
 * The lane of each lead, from 0 to the left; null for a straight one. Leads that pass each other are in different lanes, in an
 * order in which few of them cross.
 */
export function lanesFor(runs: readonly Run[]): ReadonlyMap<Run, number> {
  const turning = runs.filter((run) => !isStraight(run));
  const order = insertionOrder(turning, crossingsOf);
  const lanes = new Map<Run, number>();
  for (const run of order) {
    const before = [...lanes].filter(([other]) => doMeet(other, run)).map(([, lane]) => lane);
    lanes.set(run, Math.max(-1, ...before) + 1);
  }
  return lanes;
}

/** How often the two cross with the lane of `earlier` to the left. */
const crossingsOf = (earlier: Run, later: Run): number =>
  later.lefts.filter((y) => isWithin(y, earlier)).length + earlier.rights.filter((y) => isWithin(y, later)).length;

const heightsOf = ({ lefts, rights }: Run): readonly number[] => [...lefts, ...rights];
const isWithin = (y: number, run: Run): boolean => y > Math.min(...heightsOf(run)) && y < Math.max(...heightsOf(run));

const doMeet = (one: Run, other: Run): boolean =>
  Math.min(...heightsOf(one)) < Math.max(...heightsOf(other)) + laneGap &&
  Math.min(...heightsOf(other)) < Math.max(...heightsOf(one)) + laneGap;

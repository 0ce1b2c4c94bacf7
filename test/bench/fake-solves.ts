import type { InstanceShape } from '../../bench/instances.js';
import type { Solve } from '../../bench/measure.js';
import type { Verdict } from '../../bench/verdict.js';
import { euros, scoreWith } from '../support/builders.js';

export const score = scoreWith({ money: euros(20), bricks: 1 });

export const proven: Verdict = { kind: 'proven', score };
export const unproven: Verdict = { kind: 'unproven', score };
export const wrong: Verdict = { kind: 'wrong', fault: 'made up' };

/** A solve of 12×40 by `loadouts` that its tags prove in 100 ms, but for the changes. */
export function solveOf({
  shape,
  ...changes
}: Partial<Omit<Solve, 'shape'>> & { shape?: Partial<InstanceShape> }): Solve {
  return {
    shape: { pedals: 12, supplies: 40, chains: 'all', seed: 1, ...shape },
    set: 'loadouts',
    capMs: 60_000,
    elapsedMs: 100,
    enginesMs: 0,
    questions: 0,
    verdict: proven,
    proofBy: 'tags',
    ...changes,
  };
}

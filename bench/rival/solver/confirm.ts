/** The trusted engine's second run: another question, in another order, whose right answer bears the first claim out. */
import { askToSolve } from './ask.js';
import { objectiveStep } from './bound.js';
import { anySolution, atMost, elastic } from './challenge.js';
import { checkPoint } from '../../../solver/check.js';
import { objectiveValue } from './integers.js';
import { compact } from './compact.js';
import { permute } from './permute.js';
import { limitsOf, partWorth, type CompactSearch } from './search.js';

/** Any number will do: it only has to be the same in every run. */
const SEED = 20_011;

/**
 * How it went: the arithmetic alone shows it, or the engine bears it out; or it does not, or says so only in part. Any
 * solution that it comes up with instead goes to the standing.
 */
export type Confirmation = 'shown' | 'borne out' | 'time' | 'not borne out';

/** Whether nothing is better than `best`: the program of the better solutions must have none. */
export async function confirmBest(best: number, search: CompactSearch): Promise<Confirmation> {
  const { options, standing, whole } = search;
  const target = best - Math.max(1, objectiveStep(whole.objective));
  const part = partWorth(target, search);
  const better = part && compact(atMost(target, part.program, part.objective), anySolution);
  if (part === null || better === null || better.kind === 'broken') {
    standing.raise(best);
    return 'shown';
  }
  const { program, objective, restore } = permute(better.restated.program, anySolution, SEED);
  const original = (point: readonly number[]) => part.restore(better.restated.restore(restore(point)));
  if (program.columns.length === 0) return standing.offer(original([])) === null ? 'shown' : 'not borne out';
  const limits = limitsOf(options);
  if (limits === null) return 'time';
  const claim = await askToSolve(options.engines.trusted, program, objective, limits);
  if (claim.kind === 'infeasible') return 'borne out';
  if (claim.kind === 'failed') return 'not borne out';
  if (claim.point !== null) standing.offer(original(claim.point));
  return claim.kind === 'stopped' ? 'time' : 'not borne out';
}

/** Whether there is no solution at all: the least that a point can break the rows by must be at least 1. */
export async function confirmNone({ options, standing, whole }: CompactSearch): Promise<Confirmation> {
  const { program, violation } = elastic(whole.program);
  const question = permute(program, violation, SEED);
  const limits = limitsOf(options);
  if (limits === null) return 'time';
  const claim = await askToSolve(options.engines.trusted, question.program, question.objective, limits);
  if (claim.kind === 'stopped') return 'time';
  if (claim.kind !== 'optimal' || checkPoint(question.program, claim.point).length > 0) return 'not borne out';
  if (objectiveValue(question.objective, claim.point) > 0) return 'borne out';
  standing.offer(whole.restore(question.restore(claim.point)));
  return 'not borne out';
}

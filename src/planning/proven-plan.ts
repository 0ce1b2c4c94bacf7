import type { Board } from '../domain/board.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import { optimise } from '../formulation/optimise.js';
import type { Effort } from '../formulation/optimiser.js';
import type { Question } from '../formulation/question.js';
import { provenWiring, type Terms } from './audited.js';

/** The answer to a question of which only what is proven counts. */
export type Proven =
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan }
  | { readonly kind: 'none' }
  /** The time ran out first. */
  | { readonly kind: 'stopped' };

/**
 * A best plan for the question, audited.
 * @throws Error when it fails its audit, or is not worth what was proven of it: a defect of boardfeed, never of the input.
 */
export async function provenPlan(question: Question, terms: Terms, effort: Effort): Promise<Proven> {
  const outcome = await optimise(question, effort);
  if (outcome.kind === 'stopped') return { kind: 'stopped' };
  return outcome.kind === 'impossible' ? { kind: 'none' } : { kind: 'plan', wiring: provenWiring(terms, outcome) };
}

/** The question with other limits of the policy. */
export const withLimits = (question: Question, limits: Partial<Board['policy']>): Question => ({
  ...question,
  bench: { ...question.bench, policy: { ...question.bench.policy, ...limits } },
});

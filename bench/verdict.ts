import { auditWiring } from '../src/audit/audit-wiring.js';
import { compareScores } from '../src/domain/aim.js';
import type { Board, Catalogue, Policy } from '../src/domain/board.js';
import type { Score } from '../src/domain/plan.js';
import type { Answer } from '../src/planning/answer.js';

/** What an answer is worth before anyone looks at its time. */
export type Verdict =
  /** The plan passes the audit and is said to be the best. */
  | { readonly kind: 'proven'; readonly score: Score }
  /** Not proven within the time; the score is that of an audited plan, null without one. */
  | { readonly kind: 'unproven'; readonly score: Score | null }
  | { readonly kind: 'wrong'; readonly fault: string };

/** Judges one answer to a question that has a plan. */
export function judge(answer: Answer, board: Board, catalogue: Catalogue): Verdict {
  switch (answer.kind) {
    case 'impossible':
      return { kind: 'wrong', fault: 'says that no plan exists' };
    case 'stopped':
      return { kind: 'unproven', score: null };
    case 'plan': {
      const [fault] = auditWiring(board, catalogue, answer.wiring, { partial: false });
      if (fault !== undefined) return { kind: 'wrong', fault: `fails the audit: ${fault.message}` };
      return { kind: answer.gap === null ? 'proven' : 'unproven', score: answer.wiring.score };
    }
  }
}

/**
 * The verdicts on several answers to the same question: a proof is wrong where another answer has a plan, proven or not,
 * that is better in any tier.
 */
export function compared(verdicts: readonly Verdict[], policy: Policy): readonly Verdict[] {
  const scores = verdicts.flatMap((verdict) => (verdict.kind === 'wrong' ? [] : (verdict.score ?? [])));
  const best = scores.reduce<Score | null>(
    (found, score) => (found !== null && compareScores(found, score, 'cost', policy) <= 0 ? found : score),
    null,
  );
  return verdicts.map((verdict) => {
    if (verdict.kind !== 'proven' || best === null) return verdict;
    if (compareScores(verdict.score, best, 'cost', policy) === 0) return verdict;
    return { kind: 'wrong', fault: `proves ${JSON.stringify(verdict.score)}, but there is ${JSON.stringify(best)}` };
  });
}

import { kitOf } from '../src/domain/kit.js';
import { rankedTiersOf } from '../src/domain/aim.js';
import type { Board, Catalogue } from '../src/domain/board.js';
import type { Answer } from '../src/planning/answer.js';
import { audit, optimise, questionOf } from './product.js';

/**
 * What `choose` with the aim `cost` answers when nobody looks for better plans beside the search. Where it does not get to a proof it hands
 * over no plan. Whoever measures judges every answer by the audit.
 */
export async function chooseAlone(
  board: Board,
  catalogue: Catalogue,
  options: { readonly remainingMs: () => number },
): Promise<Answer> {
  const aim = 'cost';
  const tiers = rankedTiersOf(aim, board.policy);
  const outcome = await optimise(questionOf(kitOf(board, catalogue), { tiers, partial: false }), options);
  switch (outcome.kind) {
    case 'proven': {
      const { wiring } = audit(board, catalogue, outcome.feeds, { partial: false });
      return { kind: 'plan', aim, wiring, gap: null, reasons: [], evidence: outcome.evidence };
    }
    case 'impossible':
      return { kind: 'impossible', aim, reasons: [] };
    case 'stopped':
      return { kind: 'stopped', aim };
  }
}

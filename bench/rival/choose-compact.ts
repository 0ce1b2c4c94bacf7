import { audit } from '../../src/audit/audit.js';
import { rankedTiersOf } from '../../src/domain/aim.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import { kitOf } from '../../src/domain/kit.js';
import { questionOf } from '../../src/formulation/question.js';
import type { Answer } from '../../src/planning/answer.js';
import { compactSearch, type CompactEffort } from './formulation/compact-search.js';

/**
 * What the compact program answers where `choose` is asked with the aim `cost`. Where it does not get to a proof it hands over
 * no plan. Whoever measures judges every answer by the audit.
 */
export async function chooseCompact(board: Board, catalogue: Catalogue, effort: CompactEffort): Promise<Answer> {
  const aim = 'cost';
  const tiers = rankedTiersOf(aim, board.policy);
  const outcome = await compactSearch(questionOf(kitOf(board, catalogue), { tiers, partial: false }), effort);
  if (outcome.kind === 'stopped') return { kind: 'stopped', aim };
  if (outcome.kind === 'impossible') return { kind: 'impossible', aim, reasons: [] };
  const { wiring } = audit(board, catalogue, outcome.feeds, { partial: false });
  return { kind: 'plan', aim, wiring, gap: null, reasons: [] };
}

import type { Board } from '../../domain/board.js';
import { moneyText } from '../../domain/money.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Verdict } from '../../planning/verify/verify.js';
import { safeJson } from '../words/safe-text.js';

/** The verdict as one JSON object with a line break at its end. Keys are added, never changed. */
export function verdictJson(board: Board, verdict: Verdict): string {
  return `${safeJson(JSON.stringify(verdictObject(board, verdict), null, 2))}\n`;
}

function verdictObject(board: Board, verdict: Verdict) {
  const proven = verdict.kind === 'proven' ? verdict.tiers : [];
  return {
    format: 'boardfeed/verdict/1',
    board: board.name,
    verdict: verdict.kind,
    aim: verdict.kind === 'proven' ? verdict.aim : null,
    tiers: proven.map(({ tier, value }) => ({
      tier,
      value: tier === 'cost' || tier === 'money' ? moneyText(minorUnits(value), board.currency) : value,
    })),
    unpowered: verdict.kind === 'impossible' ? verdict.unpowered : null,
    cases: verdict.kind === 'refused' ? null : verdict.cases,
    refused: verdict.kind === 'refused' ? verdict.what : null,
    reasons: verdict.kind === 'refused' ? verdict.reasons : [],
  };
}

import { auditWiring } from '../audit/audit-wiring.js';
import { tierValue, type Aim } from '../domain/aim.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { Feed, Wiring } from '../domain/plan.js';
import type { Outcome } from '../formulation/optimiser.js';
import type { Today } from '../loadout/today.js';
import { withMoves } from './rewire/moves.js';
import { wiringOf } from './wiring.js';

/** What a plan is made for, and by what it is measured. */
export type Terms = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly aim: Aim;
  readonly partial: boolean;
  /** How the board is plugged now, for the aim `moves`. */
  readonly today: Today;
};

/**
 * The wiring of feeds that the audit finds nothing wrong with.
 * @throws Error when it does: a defect of boardfeed, never of the input.
 */
export function audited(terms: Terms, feeds: readonly Feed[]): Wiring {
  const { board, catalogue, partial } = terms;
  const wiring = measured(terms, feeds);
  const faults = auditWiring(board, catalogue, wiring, { partial });
  if (faults.length > 0) throw new Error(`the plan fails its audit: ${JSON.stringify(faults)}`);
  return wiring;
}

/**
 * The wiring of a proven plan, audited.
 * @throws Error when it fails its audit, or is not worth what was proven of it.
 */
export function provenWiring(terms: Terms, { feeds, values }: Extract<Outcome, { kind: 'proven' }>): Wiring {
  const wiring = audited(terms, feeds);
  for (const [tier, value] of values) {
    const reached = tierValue(tier, wiring.score, terms.board.policy);
    if (reached !== value) throw new Error(`the plan's ${tier} is ${reached}, but ${value} was proven`);
  }
  return wiring;
}

/** The wiring of feeds, not audited. */
export function measured({ board, catalogue, aim, today }: Terms, feeds: readonly Feed[]): Wiring {
  const wiring = wiringOf(board, catalogue, feeds);
  return aim === 'moves' ? withMoves(wiring, today) : wiring;
}

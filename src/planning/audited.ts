import { audit, isSound } from '../audit/audit.js';
import { soundPlan } from '../audit/audit-wiring.js';
import { tierValue, type Aim } from '../domain/aim.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import type { Kit } from '../domain/kit.js';
import type { Feed } from '../domain/plan.js';
import type { Outcome } from '../formulation/optimiser.js';
import type { Today } from '../loadout/today.js';

/** What a plan is made for, and by what it is measured. */
export type Terms = {
  readonly kit: Kit;
  readonly aim: Aim;
  readonly partial: boolean;
  /** How the board is plugged now, for the aim `moves`. */
  readonly today: Today;
};

/** What a plan is judged by. */
export type Judging = Pick<Terms, 'kit' | 'partial'> & Partial<Pick<Terms, 'aim'>>;

/**
 * The plan of feeds that the audit finds nothing wrong with, with all that it has measured.
 * @throws Error when it does: a defect of boardfeed, never of the input.
 */
export const audited = (judging: Judging, feeds: readonly Feed[]): JudgedPlan => soundPlan(reportOn(judging, feeds));

/** The same, but null where the audit finds something wrong: of feeds that were made without regard to all rules. */
export function auditedIfSound(judging: Judging, feeds: readonly Feed[]): JudgedPlan | null {
  const report = reportOn(judging, feeds);
  return isSound(report) ? report.wiring : null;
}

const reportOn = ({ kit: { board, catalogue }, partial, aim }: Judging, feeds: readonly Feed[]) =>
  audit(board, catalogue, feeds, { partial, moves: aim === 'moves' });

/**
 * A proven plan, audited.
 * @throws Error when it fails its audit, or is not worth what was proven of it.
 */
export function provenWiring(terms: Judging, { feeds, values }: Extract<Outcome, { kind: 'proven' }>): JudgedPlan {
  const plan = audited(terms, feeds);
  for (const [tier, value] of values) {
    const reached = tierValue(tier, plan.score, terms.kit.board.policy);
    if (reached !== value) throw new Error(`the plan's ${tier} is ${reached}, but ${value} was proven`);
  }
  return plan;
}

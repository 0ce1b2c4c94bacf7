import { audit, isSound } from '../../audit/audit.js';
import { soundPlan } from '../../audit/audit-wiring.js';
import type { Criterion } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import { criterionValue, type JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';

/** What a plan is judged by. */
export type Judging = {
  readonly kit: Kit;
  readonly partial: boolean;
  /** Whether it is measured against how the board is plugged today, too; not so when left out. */
  readonly moves?: boolean;
};

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

const reportOn = ({ kit: { board, catalogue }, partial, moves = false }: Judging, feeds: readonly Feed[]) =>
  audit(board, catalogue, feeds, { partial, moves });

/** The plan itself. @throws Error when it is not worth what was proven of it. */
export function checkedAgainst(proven: ReadonlyMap<Criterion, number>, plan: JudgedPlan, policy: Policy): JudgedPlan {
  for (const [criterion, value] of proven) {
    const reached = criterionValue(criterion, plan, policy);
    if (reached !== value) throw new Error(`the plan's ${criterion} is ${reached}, but ${value} was proven`);
  }
  return plan;
}

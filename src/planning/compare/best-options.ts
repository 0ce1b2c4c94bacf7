import { compareScores, rankedTiersOf, type ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../answer.js';
import type { ChooseJob } from '../choose/answer-to.js';
import type { CompareStage, Comparison } from './comparison.js';
import { rankedOption, type OptionDraft } from './option-drafts.js';
import { ask } from '../asking/ask.js';
import { bestPurchases, type BestWithin, type BoughtUnits, type PurchaseCaps } from './purchase-tree.js';

type BestJob = {
  /** With the budget, which `job` may go without. */
  readonly kit: Kit;
  readonly job: ChooseJob & { readonly aim: ChoosingAim };
  readonly wanted: number;
  readonly onStage: (stage: CompareStage) => void;
};

export type BestOptions = { readonly drafts: readonly OptionDraft[]; readonly end: Comparison['best']['end'] };

/** The best different purchases, of which the first one is known. */
export async function bestOptions(answer: Answer, { kit, job, wanted, onStage }: BestJob): Promise<BestOptions> {
  if (answer.kind === 'impossible') return { drafts: [], end: 'all' };
  if (answer.kind === 'stopped') return { drafts: [], end: 'stopped' };
  if (answer.gap !== null) return { drafts: [rankedOption(answer.wiring, 1, answer.gap, { kit })], end: 'stopped' };
  const solve = async (caps: PurchaseCaps): Promise<BestWithin<JudgedPlan>> => {
    if (caps.size === 0) return solved(answer.wiring);
    const proven = await ask(job.kit, { tiers: rankedTiersOf(job.aim, job.kit.board.policy), caps }, job.effort);
    if (proven.kind === 'stopped') return { kind: 'stopped' };
    return proven.kind === 'plan' ? solved(proven.wiring) : { kind: 'none' };
  };
  const compare = (first: JudgedPlan, second: JudgedPlan): number =>
    compareScores(first.score, second.score, job.aim, job.kit.board.policy);
  const drafts: OptionDraft[] = [];
  const plans = bestPurchases({ solve, compare });
  for (;;) {
    const next = await plans.next();
    if (next.done === true) return { drafts, end: next.value };
    drafts.push(rankedOption(next.value.plan, drafts.length + 1, null, { kit }));
    onStage({ kind: 'best', found: drafts.length, wanted });
    if (drafts.length === wanted) return { drafts, end: 'enough' };
  }
}

const solved = (wiring: JudgedPlan): BestWithin<JudgedPlan> => ({
  kind: 'plan',
  plan: wiring,
  bought: boughtBy(wiring),
});

const boughtBy = ({ buy }: JudgedPlan): BoughtUnits => new Map(buy.supplies.map(({ id, units }) => [id, units]));

import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import { nothingToday } from '../../loadout/today.js';
import { answerTo } from '../choose/answer-to.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { planForPurchase, purchaseOf } from './asked-purchase.js';
import { bestOptions, type BestJob } from './best-options.js';
import type { CompareStage, Comparison } from './comparison.js';
import { askedOption, isSettled, withAsked } from './option-drafts.js';
import { finishedOptions } from './preference.js';
import type { BoughtUnits } from './purchase-tree.js';
import { tradeOffs } from './trade-off.js';

export type { BoughtUnits } from './purchase-tree.js';

/** How many best purchases are sought unless it is said. */
export const usualBest = 3;

export type CompareOptions = Omit<SearchOptions, 'onProgress'> & {
  /** What is best; `cost` when left out. */
  readonly aim?: ChoosingAim;
  /** How many best purchases are sought, at least 1; 3 when left out. */
  readonly best?: number;
  /** Purchases to set beside them: units of supplies that the catalogue sells. None when left out. */
  readonly asked?: readonly BoughtUnits[];
  /** Called whenever a stage is reached. */
  readonly onStage?: (stage: CompareStage) => void;
};

/**
 * Purchases side by side: the best different ones under the aim, each with its best wiring, beside those that are asked for,
 * and what money buys in quiet and in fewer supplies. Every wiring has passed the audit. A purchase is told from another by
 * its supplies; one that contains a better one is no other option, for it only adds what is not needed.
 * @throws RangeError when fewer than one best purchase is sought, or the catalogue does not sell what is asked for.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function compare(kit: Kit, options: CompareOptions = {}): Promise<Comparison> {
  const { aim = 'cost', best = usualBest, asked = [] } = options;
  if (!Number.isSafeInteger(best) || best < 1) throw new RangeError(`${best} best purchases cannot be sought`);
  for (const bought of asked) purchaseOf(bought, kit);
  const effort = { ...effortOf(options), onProgress: undefined };
  const job = { kit, aim, partial: false, today: nothingToday, effort };
  return sideBySide({ job, wanted: best, asked, onStage: options.onStage ?? ((): void => undefined) });
}

type Wanted = BestJob & { readonly asked: readonly BoughtUnits[] };

async function sideBySide({ job, wanted, asked, onStage }: Wanted): Promise<Comparison> {
  const { kit, aim, effort } = job;
  onStage({ kind: 'best', found: 0, wanted });
  const answer = await answerTo(job);
  const best = await bestOptions(answer, { job, wanted, onStage });
  let drafts = best.drafts;
  for (const [done, bought] of asked.entries()) {
    onStage({ kind: 'asked', done, wanted: asked.length });
    drafts = withAsked(drafts, bought) ?? [...drafts, askedOption(bought, await planForPurchase(bought, job), job)];
  }
  onStage({ kind: 'trade-offs' });
  const bought = answer.kind === 'plan' ? await tradeOffs(answer.wiring, kit, effort) : [];
  return {
    aim,
    options: finishedOptions(drafts, bought, { aim, policy: kit.board.policy }),
    best: { wanted, end: best.end },
    isProven: best.end !== 'stopped' && drafts.every(isSettled) && bought.every(({ complete }) => complete),
    tradeOffs: bought,
    reasons: answer.kind === 'impossible' ? answer.reasons : [],
  };
}

import { unsold, withBoard, withPolicy, withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Board } from '../../domain/board.js';
import { priceText } from '../../domain/money.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Purchase } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type SupplyId } from '../../domain/quantities.js';
import { ask } from '../asking/ask.js';
import type { Effort } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import type { Answer, Reason } from '../answer.js';
import { answerTo } from '../choose/answer-to.js';
import type { Failure } from './comparison.js';
import type { BoughtUnits } from './purchase-tree.js';

/** What a purchase that someone has in mind can do for a board. */
export type PurchaseAnswer =
  /** The best wiring with all that is bought at hand, whether it takes all of it or not. */
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan; readonly gap: Extract<Answer, { kind: 'plan' }>['gap'] }
  | { readonly kind: 'fails'; readonly reasons: readonly Failure[] }
  | { readonly kind: 'stopped' };

export type PurchaseJob = {
  readonly kit: Kit;
  readonly aim: ChoosingAim;
  readonly effort: Effort;
};

/**
 * The best wiring with just these supplies and what is owned; leads are bought as they are needed. The supplies are paid for
 * in any case, so they count as owned while the wiring is sought, and what they cost comes off the budget.
 * @throws RangeError when the catalogue does not sell one of the supplies.
 */
export async function planForPurchase(bought: BoughtUnits, job: PurchaseJob): Promise<PurchaseAnswer> {
  const { kit, aim, effort } = job;
  const { board } = kit;
  const purchase = purchaseOf(bought, kit);
  const missing = stockFailures(purchase, kit);
  if (missing.length > 0) return { kind: 'fails', reasons: missing };
  const paid = priceOf(purchase);
  const { budget } = board.policy;
  const after = afterwards(bought, kit);
  if (budget !== null && paid > budget) return beyondBudget(paid, budget, job, after);
  const left = budget === null ? null : minorUnits(budget - paid);
  const terms = { kit: withPolicy(after, { budget: left }), aim, partial: false, today: nothingToday };
  const answer = await answerTo({ ...terms, effort });
  switch (answer.kind) {
    case 'plan':
      return { kind: 'plan', wiring: answer.wiring, gap: answer.gap };
    case 'impossible':
      return { kind: 'fails', reasons: answer.reasons.map((reason) => withPaid(reason, paid, board)) };
    case 'stopped':
      return { kind: 'stopped' };
  }
}

/** The supplies as lines of a bill, in the order of the catalogue. */
export function purchaseOf(bought: BoughtUnits, { supplies }: Kit): readonly Purchase<SupplyId>[] {
  const lines = [...supplies.values()].flatMap(({ id, price }) => {
    const units = bought.get(id) ?? 0;
    return units > 0 && price !== null ? [{ id, units, price }] : [];
  });
  if (lines.length < [...bought.values()].filter((units) => units > 0).length)
    throw new RangeError(`the catalogue does not sell all of ${[...bought.keys()].join(', ')}`);
  return lines;
}

export const priceOf = (purchase: readonly Purchase<unknown>[]): MinorUnits =>
  minorUnits(purchase.reduce((sum, { units, price }) => sum + units * price, 0));

function stockFailures(purchase: readonly Purchase<SupplyId>[], { supplies }: Kit): readonly Failure[] {
  return purchase.flatMap(({ id, units }): readonly Failure[] => {
    const supply = supplies.get(id);
    const inStock = supply?.stock ?? Infinity;
    if (supply === undefined || units <= inStock) return [];
    const message = `this takes ${units} × ${supply.name}, and the shop has ${inStock === 0 ? 'none' : inStock}`;
    return [{ kind: 'stock', supply: id, units, inStock, message }];
  });
}

/** The kit when the supplies have been bought, and of a shop that sells leads alone and lists nothing that is not at hand. */
function afterwards(bought: BoughtUnits, kit: Kit): Kit {
  const supplies = new Map(kit.board.owned.supplies);
  for (const [id, units] of bought) supplies.set(id, (supplies.get(id) ?? 0) + units);
  const owning = withBoard(kit, { ...kit.board, owned: { ...kit.board.owned, supplies } });
  return withThings(owning, (supply) => ((supplies.get(supply.id) ?? 0) > 0 ? unsold(supply) : null));
}

/** More than may be spent is paid already: how much a plan takes, or why there is none however much is spent. */
async function beyondBudget(
  paid: MinorUnits,
  allowed: MinorUnits,
  { kit, aim, effort }: PurchaseJob,
  after: Kit,
): Promise<PurchaseAnswer> {
  const free = withPolicy(after, { budget: null });
  const { board } = kit;
  const outcome = await ask(free, { tiers: ['money'] }, effort);
  if (outcome.kind === 'stopped') return { kind: 'stopped' };
  if (outcome.kind === 'plan') {
    const needed = minorUnits(paid + (outcome.values.get('money') ?? 0));
    return { kind: 'fails', reasons: [budgetReason(allowed, needed, board)] };
  }
  const answer = await answerTo({ kit: free, aim, partial: false, today: nothingToday, effort });
  if (answer.kind !== 'impossible') return { kind: 'stopped' };
  return { kind: 'fails', reasons: [budgetReason(allowed, paid, board), ...answer.reasons] };
}

/** A reason that speaks of what is left to spend, as one that speaks of all of it. */
function withPaid(reason: Reason, paid: MinorUnits, board: Board): Reason {
  if (reason.kind !== 'limit' || reason.limit !== 'budget') return reason;
  return budgetReason(minorUnits(reason.allowed + paid), minorUnits(reason.needed + paid), board);
}

function budgetReason(allowed: MinorUnits, needed: MinorUnits, board: Board): Reason {
  const message = `the budget is ${priceText(allowed, board)}; this purchase takes at least ${priceText(needed, board)}`;
  return { kind: 'limit', limit: 'budget', allowed, needed, message };
}

import type { ChoosingAim } from '../../domain/aim.js';
import type { Board, Catalogue } from '../../domain/board.js';
import { moneyText } from '../../domain/money.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Purchase } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type SupplyId } from '../../domain/quantities.js';
import { optimise } from '../../formulation/optimise.js';
import type { Effort } from '../../formulation/optimiser.js';
import { questionOf } from '../../formulation/question.js';
import { nothingToday } from '../../loadout/today.js';
import type { Answer, Reason } from '../answer.js';
import { answerTo } from '../choose/answer-to.js';
import type { Failure } from './comparison.js';
import type { Bought } from './purchase-tree.js';

/** What a purchase that someone has in mind can do for a board. */
export type PurchaseAnswer =
  /** The best wiring with all that is bought at hand, whether it takes all of it or not. */
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan; readonly gap: Extract<Answer, { kind: 'plan' }>['gap'] }
  | { readonly kind: 'fails'; readonly reasons: readonly Failure[] }
  | { readonly kind: 'stopped' };

export type PurchaseJob = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly aim: ChoosingAim;
  readonly effort: Effort;
};

/**
 * The best wiring with just these supplies and what is owned; leads are bought as they are needed. The supplies are paid for
 * in any case, so they count as owned while the wiring is sought, and what they cost comes off the budget.
 * @throws RangeError when the catalogue does not sell one of the supplies.
 */
export async function planForPurchase(bought: Bought, job: PurchaseJob): Promise<PurchaseAnswer> {
  const { board, catalogue, aim, effort } = job;
  const purchase = purchaseOf(bought, catalogue);
  const missing = stockFailures(purchase, catalogue);
  if (missing.length > 0) return { kind: 'fails', reasons: missing };
  const paid = priceOf(purchase);
  const { budget } = board.policy;
  const terms = { ...afterwards(bought, board, catalogue), aim, partial: false, today: nothingToday };
  if (budget !== null && paid > budget) return beyondBudget(paid, budget, job, terms);
  const answer = await answerTo({ ...withBudget(terms, budget === null ? null : minorUnits(budget - paid)), effort });
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
export function purchaseOf(bought: Bought, { supplies }: Catalogue): readonly Purchase<SupplyId>[] {
  const lines = supplies.flatMap(({ id, price }) => {
    const units = bought.get(id) ?? 0;
    return units > 0 && price !== null ? [{ id, units, price }] : [];
  });
  if (lines.length < [...bought.values()].filter((units) => units > 0).length)
    throw new RangeError(`the catalogue does not sell all of ${[...bought.keys()].join(', ')}`);
  return lines;
}

export const priceOf = (purchase: readonly Purchase<unknown>[]): MinorUnits =>
  minorUnits(purchase.reduce((sum, { units, price }) => sum + units * price, 0));

function stockFailures(purchase: readonly Purchase<SupplyId>[], { supplies }: Catalogue): readonly Failure[] {
  return purchase.flatMap(({ id, units }): readonly Failure[] => {
    const supply = supplies.find((each) => each.id === id);
    const inStock = supply?.stock ?? Infinity;
    if (supply === undefined || units <= inStock) return [];
    const message = `this takes ${units} × ${supply.name}, and the shop has ${inStock === 0 ? 'none' : inStock}`;
    return [{ kind: 'stock', supply: id, units, inStock, message }];
  });
}

type Afterwards = { readonly board: Board; readonly catalogue: Catalogue };

/** The board when the supplies have been bought, and a shop that sells leads alone and lists nothing that is not at hand. */
function afterwards(bought: Bought, board: Board, catalogue: Catalogue): Afterwards {
  const supplies = new Map(board.owned.supplies);
  for (const [id, units] of bought) supplies.set(id, (supplies.get(id) ?? 0) + units);
  const atHand = catalogue.supplies.filter(({ id }) => (supplies.get(id) ?? 0) > 0);
  return {
    board: { ...board, owned: { ...board.owned, supplies } },
    catalogue: { ...catalogue, supplies: atHand.map((supply) => ({ ...supply, price: null, stock: 0 })) },
  };
}

const withBudget = <Terms extends Afterwards>(terms: Terms, budget: MinorUnits | null): Terms => ({
  ...terms,
  board: { ...terms.board, policy: { ...terms.board.policy, budget } },
});

/** More than may be spent is paid already: how much a plan takes, or why there is none however much is spent. */
async function beyondBudget(
  paid: MinorUnits,
  allowed: MinorUnits,
  { board, effort }: PurchaseJob,
  terms: Afterwards & { readonly aim: ChoosingAim; readonly partial: boolean; readonly today: typeof nothingToday },
): Promise<PurchaseAnswer> {
  const free = withBudget(terms, null);
  const question = questionOf(free.board, free.catalogue, { tiers: ['money'], partial: false });
  const outcome = await optimise(question, effort);
  if (outcome.kind === 'stopped') return { kind: 'stopped' };
  if (outcome.kind === 'proven') {
    const needed = minorUnits(paid + (outcome.values.get('money') ?? 0));
    return { kind: 'fails', reasons: [budgetReason(allowed, needed, board)] };
  }
  const answer = await answerTo({ ...free, effort });
  if (answer.kind !== 'impossible') return { kind: 'stopped' };
  return { kind: 'fails', reasons: [budgetReason(allowed, paid, board), ...answer.reasons] };
}

/** A reason that speaks of what is left to spend, as one that speaks of all of it. */
function withPaid(reason: Reason, paid: MinorUnits, board: Board): Reason {
  if (reason.kind !== 'limit' || reason.limit !== 'budget') return reason;
  return budgetReason(minorUnits(reason.allowed + paid), minorUnits(reason.needed + paid), board);
}

function budgetReason(allowed: MinorUnits, needed: MinorUnits, { currency }: Board): Reason {
  const money = (amount: MinorUnits): string => `${moneyText(amount, currency)} ${currency.code}`;
  const message = `the budget is ${money(allowed)}; this purchase takes at least ${money(needed)}`;
  return { kind: 'limit', limit: 'budget', allowed, needed, message };
}

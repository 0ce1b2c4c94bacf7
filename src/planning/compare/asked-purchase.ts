import { unsold, withBoard, withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Purchase } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type SupplyId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import type { Answer } from '../answer.js';
import { answerTo } from '../choose/answer-to.js';
import type { Beside, Failure } from './comparison.js';
import type { BoughtUnits } from './purchase-tree.js';

/** What a purchase that someone has in mind can do for a board. */
export type PurchaseAnswer =
  /** The best wiring with all that is bought at hand, whether it takes all of it or not. */
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan; readonly gap: Extract<Answer, { kind: 'plan' }>['gap'] }
  | { readonly kind: 'fails'; readonly reasons: readonly Failure[] }
  | { readonly kind: 'stopped' };

type PurchaseJob = {
  readonly kit: Kit;
  readonly aim: ChoosingAim;
  readonly effort: Effort;
};

/**
 * The best wiring with just these supplies and what is owned; leads are bought as they are needed, whatever the budget. The
 * supplies are paid for in any case, so they count as owned while the wiring is sought.
 * @throws RangeError when the catalogue does not sell one of the supplies.
 */
export async function planForPurchase(bought: BoughtUnits, job: PurchaseJob): Promise<PurchaseAnswer> {
  const { kit, aim, effort } = job;
  const purchase = purchaseOf(bought, kit);
  const missing = stockFailures(purchase, kit);
  if (missing.length > 0) return { kind: 'fails', reasons: missing };
  const answer = await answerTo({ kit: afterwards(bought, kit), aim, partial: false, today: nothingToday, effort });
  switch (answer.kind) {
    case 'plan':
      return { kind: 'plan', wiring: answer.wiring, gap: answer.gap };
    case 'impossible':
      return { kind: 'fails', reasons: answer.reasons };
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

/**
 * What is bought beside these supplies for the board to have power, by the best plan that was found; null where none was.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function besidePurchase(bought: BoughtUnits, { kit, aim, effort }: PurchaseJob): Promise<Beside | null> {
  const owning = owningAsked(bought, kit);
  const left = withThings(owning, (supply) => ({
    ...supply,
    stock: supply.stock === null ? null : Math.max(0, supply.stock - (bought.get(supply.id) ?? 0)),
  }));
  const answer = await answerTo({ kit: left, aim, partial: false, today: nothingToday, effort });
  if (answer.kind !== 'plan') return null;
  const { buy, score } = answer.wiring;
  const price = minorUnits(priceOf(purchaseOf(bought, kit)) + score.money);
  return { ...buy, price, isProven: answer.gap === null };
}

/** The kit when the supplies have been bought, and of a shop that sells leads alone and lists nothing that is not at hand. */
function afterwards(bought: BoughtUnits, kit: Kit): Kit {
  const owning = owningAsked(bought, kit);
  const { supplies } = owning.board.owned;
  return withThings(owning, (supply) => ((supplies.get(supply.id) ?? 0) > 0 ? unsold(supply) : null));
}

/** The kit when the supplies have been bought; what is spent has no limit. */
function owningAsked(bought: BoughtUnits, kit: Kit): Kit {
  const supplies = new Map(kit.board.owned.supplies);
  for (const [id, units] of bought) supplies.set(id, (supplies.get(id) ?? 0) + units);
  const { policy, owned } = kit.board;
  return withBoard(kit, {
    ...kit.board,
    policy: { ...policy, budget: null },
    owned: { ...owned, supplies },
  });
}

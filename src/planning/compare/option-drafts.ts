import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Purchase } from '../../domain/plan.js';
import { minorUnits, type SupplyId } from '../../domain/quantities.js';
import type { Gap } from '../answer.js';
import { priceOf, purchaseOf, type PurchaseAnswer } from './asked-purchase.js';
import type { FailedOption, PlannedOption } from './comparison.js';
import { figuresOf } from './figures.js';
import type { BoughtUnits } from './purchase-tree.js';
import { audited } from '../asking/audited.js';

/** An option before it is set beside the others. */
export type OptionDraft = Omit<PlannedOption, 'preference' | 'unbeaten' | 'merits'> | FailedOption;

/** Whether more time could not change what is said of it. */
export const isSettled = (draft: OptionDraft): boolean =>
  draft.kind === 'plan' ? draft.gap === null : draft.reasons.length > 0;

type Inputs = { readonly kit: Kit };

/** One that is listed without being asked for: it is in use altogether. */
export const rankedOption = (wiring: JudgedPlan, rank: number, gap: Gap | null, { kit }: Inputs): OptionDraft => ({
  kind: 'plan',
  rank,
  asked: false,
  supplies: wiring.buy.supplies,
  wiring,
  gap,
  score: wiring.score,
  ...pricesOf(wiring.buy.supplies, wiring, kit),
  idle: [],
  figures: figuresOf(kit, wiring, []),
});

/** What all of it is made up of, and how far that is over the budget. */
function pricesOf(
  bought: readonly Purchase<SupplyId>[],
  { buy }: JudgedPlan,
  { board: { policy } }: Kit,
): Pick<PlannedOption, 'prices' | 'overBudget'> {
  const prices = { supplies: priceOf(bought), leads: priceOf(buy.parts) };
  const over = prices.supplies + prices.leads - (policy.budget ?? Infinity);
  return { prices, overBudget: minorUnits(Math.max(0, over)) };
}

/** A purchase that was asked for, with what came of it. */
export function askedOption(bought: BoughtUnits, answer: PurchaseAnswer, { kit }: Inputs): OptionDraft {
  const supplies = purchaseOf(bought, kit);
  const bundle = { supplies, rank: null, asked: true } as const;
  if (answer.kind !== 'plan') {
    const reasons = answer.kind === 'fails' ? answer.reasons : [];
    return { ...bundle, kind: 'fails', price: priceOf(supplies), reasons, beside: null };
  }
  const wiring = boughtWiring(answer.wiring, kit);
  const idle = supplies.flatMap(({ id, units, price }) => {
    const used = wiring.buy.supplies.find((line) => line.id === id)?.units ?? 0;
    return units > used ? [{ id, units: units - used, price }] : [];
  });
  const paid = pricesOf(supplies, wiring, kit);
  const money = minorUnits(paid.prices.supplies + paid.prices.leads);
  return {
    ...bundle,
    kind: 'plan',
    wiring,
    gap: answer.gap,
    score: { ...wiring.score, money },
    ...paid,
    idle,
    figures: figuresOf(kit, wiring, idle),
  };
}

/**
 * The wiring of a purchase that was counted as owned, measured by what is owned indeed.
 * @throws Error when it fails its audit: a defect of boardfeed, never of the input.
 */
function boughtWiring(wiring: JudgedPlan, kit: Kit): JudgedPlan {
  return audited({ kit: withPolicy(kit, { budget: null }), partial: false }, everyFeed(wiring));
}

/** The options when one of them is asked for; null when none of them is that purchase. */
export function withAsked(drafts: readonly OptionDraft[], bought: BoughtUnits): readonly OptionDraft[] | null {
  const same = drafts.find(({ supplies }) => isPurchase(supplies, bought));
  return same === undefined ? null : drafts.map((draft) => (draft === same ? { ...draft, asked: true } : draft));
}

const isPurchase = (supplies: readonly Purchase<SupplyId>[], bought: BoughtUnits): boolean => {
  const wanted = [...bought].filter(([, units]) => units > 0);
  return (
    supplies.length === wanted.length &&
    wanted.every(([id, units]) => supplies.some((line) => line.id === id && line.units === units))
  );
};

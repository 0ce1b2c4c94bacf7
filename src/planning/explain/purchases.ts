import { rankedTiersOf, type ChoosingAim, type Tier } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { minorUnits, type PartId, type PedalId, type SupplyId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withPolicy, withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Part } from '../../domain/part.js';
import type { Supply } from '../../domain/supply.js';
import { ask } from '../asking/ask.js';
import { conflictOf } from '../conflict/conflict.js';
import { differencesOf, type TierDifference } from './difference.js';
import { within } from '../asking/within.js';

/** Something that a plan buys. */
export type Bought =
  | { readonly of: 'supply'; readonly id: SupplyId; readonly units: number }
  | { readonly of: 'part'; readonly id: PartId; readonly units: number };

/** Why something is bought. */
export type Forced = {
  readonly bought: Bought;
  /** How the best plan without buying any of it differs; null when there is none, `unknown` when the time ran out. */
  readonly without: readonly TierDifference[] | null | 'unknown';
  /**
   * A smallest set of pedals that cannot all be powered for no more money without it: if one of these were left out, it would
   * not be needed. None where it is not forced by power at all but by what the aim counts besides money, or where it was not
   * settled.
   */
  readonly pedals: readonly PedalId[];
};

/** The best that less money can do. */
export type Cheaper =
  /** Every pedal has power all the same, and yet it is the worse plan. */
  | { readonly kind: 'worse'; readonly wiring: JudgedPlan; readonly differences: readonly TierDifference[] }
  /** Not every pedal has power. */
  | {
      readonly kind: 'too little';
      readonly wiring: JudgedPlan;
      /** A smallest set of pedals that less money cannot power all of; none where it was not settled. */
      readonly pedals: readonly PedalId[];
    };

export type Explained<Value> = { readonly value: Value; readonly whole: boolean };

/** Everything that the plan buys, with what makes it do so. */
export async function forcedPurchases(
  wiring: JudgedPlan,
  aim: ChoosingAim,
  kit: Kit,
  effort: Effort,
): Promise<Explained<readonly Forced[]>> {
  const drafts: Draft[] = [];
  for (const bought of boughtIn(wiring)) drafts.push(await withoutBuying(bought, wiring, aim, kit, effort));
  // What each comes to without one thing says more than who is behind it, which takes longer.
  const forced: Forced[] = [];
  for (const { isByPower, unsold, ...draft } of drafts)
    forced.push({ ...draft, pedals: isByPower ? await pedalsBehind(unsold, effort) : [] });
  return {
    value: forced,
    whole: forced.every(({ without, pedals }) => without !== 'unknown' && (without !== null || pedals.length > 0)),
  };
}

const boughtIn = ({ buy }: JudgedPlan): readonly Bought[] => [
  ...buy.supplies.map(({ id, units }) => ({ of: 'supply', id, units }) as const),
  ...buy.parts.map(({ id, units }) => ({ of: 'part', id, units }) as const),
];

/** What is known without the pedals: whether these are to be sought, and in which kit. */
type Draft = Omit<Forced, 'pedals'> & { readonly isByPower: boolean; readonly unsold: Kit };

async function withoutBuying(
  bought: Bought,
  { score }: JudgedPlan,
  aim: ChoosingAim,
  kit: Kit,
  effort: Effort,
): Promise<Draft> {
  const { policy } = kit.board;
  const without = withoutSale(bought, kit);
  const solved = await ask(without, { tiers: rankedTiersOf(aim, policy) }, effort);
  const unsold = withPolicy(without, { budget: score.money });
  if (solved.kind === 'stopped') return { bought, without: 'unknown', isByPower: false, unsold };
  if (solved.kind === 'impossible') return { bought, without: null, isByPower: true, unsold };
  const differences = differencesOf(score, solved.wiring.score, aim, policy);
  return { bought, without: differences, isByPower: solved.wiring.score.money > score.money, unsold };
}

/** How long a smallest set of pedals is sought, in milliseconds: with many pedals it can take very long. */
const patienceMs = 1_500;

/** A smallest set of pedals that cannot all be powered; none where it was not found in time. */
async function pedalsBehind(kit: Kit, effort: Effort): Promise<readonly PedalId[]> {
  const conflict = await within(patienceMs, effort, (limited) => conflictOf(kit, limited, { factsStand: true }));
  return conflict === null || conflict.size === 'open' ? [] : conflict.pedals;
}

/** The shop without one thing; what is owned of it stays. */
function withoutSale({ of, id }: Bought, kit: Kit): Kit {
  const unstocked = <Thing extends Supply | Part>(thing: Thing): Thing =>
    thing.id === id ? { ...thing, stock: 0 } : thing;
  return of === 'supply' ? withThings(kit, unstocked) : withThings(kit, (supply) => supply, unstocked);
}

/** The best plan that costs less money; null when the plan costs nothing, or when the time runs out. */
export async function cheaperPlan(
  { score }: JudgedPlan,
  aim: ChoosingAim,
  kit: Kit,
  effort: Effort,
): Promise<Explained<Cheaper | null>> {
  if (score.money === 0) return { value: null, whole: true };
  const less = withPolicy(kit, { budget: minorUnits(score.money - 1) });
  const solved = await ask(less, { tiers: rankedTiersOf(aim, kit.board.policy) }, effort);
  if (solved.kind === 'stopped') return { value: null, whole: false };
  if (solved.kind === 'plan') {
    const differences = differencesOf(score, solved.wiring.score, aim, kit.board.policy);
    return { value: { kind: 'worse', wiring: solved.wiring, differences }, whole: true };
  }
  const tiers: readonly Tier[] = ['unpowered', ...rankedTiersOf(aim, kit.board.policy)];
  const partial = await ask(less, { tiers, required: new Set() }, effort);
  if (partial.kind !== 'plan') return { value: null, whole: false };
  const pedals = await pedalsBehind(less, effort);
  return { value: { kind: 'too little', wiring: partial.wiring, pedals }, whole: pedals.length > 0 };
}

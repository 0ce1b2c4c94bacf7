import type { Part, PartRole } from '../../domain/part.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Factor, MinorUnits, PartId, PedalId, SupplyId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Kit } from '../../domain/kit.js';
import type { Effort } from '../../formulation/optimiser.js';
import { ask, type SolverAnswer } from '../asking/ask.js';

/** A number of the policy, as it is and as it would have to be. */
export type Raised<Value> = { readonly from: Value; readonly to: Value };

export type FactorName = 'alone' | 'chained' | 'supply' | 'guess';

/** What has to last so many hours: power banks, or a set of batteries. */
export type LastingName = 'bank' | 'battery';

/** What would have to be otherwise; each is the least change of its kind with which a plan exists. */
export type Change =
  /** The least money, in minor units, that powers every pedal. */
  | ({ readonly kind: 'budget' } & Raised<MinorUnits>)
  /** The fewest supplies in use, or mains sockets. */
  | ({ readonly kind: 'bricks' | 'sockets' } & Raised<number>)
  /** Where no limit by itself is to blame: the least money, and then the fewest supplies at that. Null is as it is. */
  | {
      readonly kind: 'limits';
      readonly budget: Raised<MinorUnits> | null;
      readonly bricks: Raised<number> | null;
      readonly sockets: Raised<number> | null;
    }
  /** The largest factor, in the thousandths that a board file can say, with which a plan exists. */
  | ({ readonly kind: 'factor'; readonly factor: FactorName } & Raised<Factor>)
  /** The most hours, in the thousandths that a board file can say, with which a plan exists. */
  | ({ readonly kind: 'hours'; readonly of: LastingName } & Raised<Factor>)
  /** Chains, which the board rules out. */
  | { readonly kind: 'chains' }
  /** The fewest units beyond what is in stock, at the price of those. */
  | { readonly kind: 'stock'; readonly of: 'supply'; readonly id: SupplyId; readonly units: number }
  | { readonly kind: 'stock'; readonly of: 'part'; readonly id: PartId; readonly units: number }
  /** As many of these leads are owned as are plugged today. */
  | { readonly kind: 'unowned'; readonly parts: readonly UnownedPart[] }
  /** One more lead that nobody sells, or of which none is left: given for nothing. */
  | { readonly kind: 'lead'; readonly lead: Part }
  /** One more supply with a single output that is just enough for a pedal: given for nothing. */
  | { readonly kind: 'supply'; readonly supply: Supply; readonly pedal: PedalId }
  /** As much, for the inlet of a fed supply that then feeds pedals. */
  | { readonly kind: 'inlet'; readonly of: SupplyId; readonly supply: Supply }
  /** Batteries for a pedal that just last as long as is asked, as many as are paid for: given for nothing. */
  | { readonly kind: 'battery'; readonly pedal: PedalId; readonly battery: Battery; readonly count: number }
  /** Any one of these pedals, which need the same, is left out. */
  | { readonly kind: 'pedal'; readonly pedals: readonly PedalId[] }
  /** Where to leave out one pedal is not enough: the fewest that have to be left out. */
  | { readonly kind: 'pedals'; readonly pedals: readonly PedalId[] };

/** A lead, and how many of it are plugged today. */
export type UnownedPart = { readonly id: PartId; readonly units: number };

/** A battery that is sought. */
export type Battery = Part & { readonly role: Extract<PartRole, { readonly kind: 'battery' }> };

/** A change, the board and shop with it, and a plan for them, audited. */
export type WayOut = {
  readonly change: Change;
  readonly kit: Kit;
  readonly wiring: JudgedPlan;
  /** True when it is proven that no plan with this change costs less money. */
  readonly cheapest?: boolean;
};

/** What was looked for and found; not whole when the time ran out before it was settled. */
export type Ways = { readonly ways: readonly WayOut[]; readonly whole: boolean };

export const noWays: Ways = { ways: [], whole: true };

/** Nothing was found: there is no plan even so, or the time ran out. */
export const notFound = ({ kind }: SolverAnswer): Ways => ({ ways: [], whole: kind === 'impossible' });

export const together = (all: readonly Ways[]): Ways => ({
  ways: all.flatMap(({ ways }) => ways),
  whole: all.every(({ whole }) => whole),
});

/** What is found for each of these, one after the other. */
export async function waysFor<Thing>(things: readonly Thing[], look: (thing: Thing) => Promise<Ways>): Promise<Ways> {
  const all: Ways[] = [];
  for (const thing of things) all.push(await look(thing));
  return together(all);
}

/** The change, if it is enough: a plan for the kit with it. */
export async function wayWith(change: Change, kit: Kit, effort: Effort): Promise<Ways> {
  const solved = await ask(kit, { tiers: [] }, effort);
  return solved.kind === 'plan' ? { ways: [{ change, kit, wiring: solved.wiring }], whole: true } : notFound(solved);
}

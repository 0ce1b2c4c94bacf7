import type { Aim, Tier } from '../domain/aim.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import type { Proof } from '../domain/proof.js';
import type { MinorUnits, PartId, PedalId, SupplyId } from '../domain/quantities.js';
import type { Rule } from '../domain/rules.js';
import type { Violation } from '../domain/violation.js';
import type { Changes } from './rewire/changes.js';

/** Why one kind of output cannot feed a pedal. */
export type Refusal = {
  readonly rule: Rule;
  /** Where the nearest miss stands: the outputs that are alike in this; null when there is no supply at all. */
  readonly at: { readonly supply: SupplyId; readonly outputs: readonly number[] } | null;
  /** A sentence with the numbers: "needs 300 mA × 1.2 = 360 mA; the strongest 9 V output gives 250 mA (Quay 6)". */
  readonly message: string;
};

/** Why no plan exists. */
export type Reason =
  /** No output can feed this pedal, even with the whole catalogue to itself. Nearest miss first. */
  | { readonly kind: 'pedal'; readonly pedal: PedalId; readonly refusals: readonly Refusal[] }
  /** Each of these pedals can be fed, and all of them but any one; never all of them at once. */
  | {
      readonly kind: 'together';
      readonly pedals: readonly PedalId[];
      /** True when it is shown that no set of fewer pedals fails. */
      readonly smallest: boolean;
      readonly message: string;
    }
  /** A plan exists, but only beyond a limit of the policy; in minor units for the budget, else a count. */
  | {
      readonly kind: 'limit';
      readonly limit: 'budget' | 'bricks' | 'sockets';
      readonly allowed: number;
      /** The least that a plan needs when this limit is lifted. */
      readonly needed: number;
      readonly message: string;
      /** Of the budget, where with more of it alone there is a plan: the one of the least money. */
      readonly cheapest?: JudgedPlan;
    }
  /** A plan exists, but not with what was asked for beside the board: without all of these requests together there is one. */
  | {
      readonly kind: 'request';
      /** At least one. */
      readonly requests: readonly RewireRequest[];
      /** The least money that a plan then takes; null where money was not asked about, or it is not known. */
      readonly needed: MinorUnits | null;
      readonly message: string;
    }
  /** A plan exists with the leads of today's wiring, but of these fewer are owned and can be bought than are in use. */
  | { readonly kind: 'unowned'; readonly parts: readonly PartId[]; readonly message: string };

/** Something that was asked for when a board is to be re-plugged, and that a plan may have to do without. */
export type RewireRequest =
  | {
      readonly kind: 'keep';
      readonly pedal: PedalId;
      /** What is wrong with the pedal's place as it is, whatever else is plugged; null when nothing is. */
      readonly why: Violation | null;
    }
  | { readonly kind: 'buy never' }
  | { readonly kind: 'budget'; readonly allowed: MinorUnits };

/** How far a plan that is not proven may be from the best: the first tier that is still open. */
export type Gap = {
  readonly tier: Tier;
  /** What the plan reaches. */
  readonly value: number;
  /** No plan does better than this; null when nothing is known. */
  readonly bound: number | null;
};

/**
 * What shows that no plan is better: price tags on pedals, of which no supply can carry more than it costs, in so many cases
 * that were told apart; with `limits`, units, leads or money that are limited save something, which is taken off the tags.
 */
export type Evidence = { readonly kind: 'tags'; readonly cases: number; readonly limits: boolean };

/** The answer to "what should I buy to power these pedals?", or to "how do I re-plug what I own?". */
export type Answer =
  | {
      readonly kind: 'plan';
      readonly aim: Aim;
      /** Audited: it breaks no hard rule. */
      readonly wiring: JudgedPlan;
      /** Null when it is proven that no plan is better in any tier of the aim. */
      readonly gap: Gap | null;
      /** Of a partial plan: why the pedals left out cannot be fed at all, where that is so. */
      readonly reasons: readonly Reason[];
      /** What the proof of a proven plan rests on. */
      readonly evidence?: Evidence;
      /** The proof for others to check: there only when it is asked for and can be written down. */
      readonly proof?: Proof;
      /** What it changes of how the board is plugged today: there only when the aim is `moves`. */
      readonly changes?: Changes;
    }
  | {
      readonly kind: 'impossible';
      readonly aim: Aim;
      readonly reasons: readonly Reason[];
      /** As for a plan. */
      readonly proof?: Proof;
    }
  /** The time ran out, or the search was cancelled, with no plan in hand. */
  | { readonly kind: 'stopped'; readonly aim: Aim };

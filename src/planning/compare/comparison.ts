import type { ChoosingAim, Tier } from '../../domain/aim.js';
import type { LoadNumbers } from '../../domain/load-numbers.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Place, Purchase, Score } from '../../domain/plan.js';
import type { MinorUnits, SupplyId } from '../../domain/quantities.js';
import type { Gap, Reason } from '../answer.js';

/** Purchases side by side. */
export type Comparison = {
  readonly aim: ChoosingAim;
  /** What is listed without being asked for by name: choices that differ in kind, or the best purchases one after the other. */
  readonly listing: 'kinds' | 'best';
  /** The best first; those without a plan come last, in the order in which they were asked for. */
  readonly options: readonly Option[];
  readonly best: {
    /** How many are listed at the most. */
    readonly wanted: number;
    /** `enough`: as many were found; `all`: there are no others; `stopped`: the time ran out first. */
    readonly end: 'enough' | 'all' | 'stopped';
  };
  /** Whether everything that is said here is proven: nothing was cut short. */
  readonly isProven: boolean;
  /** The plans that no other beats on money, exposed pedals and supplies in use at once. */
  readonly unbeaten: Unbeaten;
  /** What money buys, by one of the other two figures alone; empty when no plan exists. */
  readonly tradeOffs: readonly TradeOff[];
  /** Why no plan exists, whatever is bought; empty where one does. */
  readonly reasons: readonly Reason[];
};

/** One purchase, and what comes of it. */
export type Option = PlannedOption | FailedOption;

type Bundle = {
  /** What is bought: a purchase is told from another by its supplies, and the leads follow from the wiring. */
  readonly supplies: readonly Purchase<SupplyId>[];
  /** Its place among those that are listed, from 1; null when it was only asked for. */
  readonly rank: number | null;
  readonly asked: boolean;
};

export type PlannedOption = Bundle & {
  readonly kind: 'plan';
  /** The best wiring with just these supplies and what is owned for what it is best at, else under the aim; audited. */
  readonly wiring: JudgedPlan;
  /** Null when no wiring of this purchase is better. */
  readonly gap: Gap | null;
  /** What nothing that could be bought is better at, the most telling first; empty where that is nothing, or not known. */
  readonly merits: readonly Merit[];
  /** As of the wiring, but money counts all that is bought, in use or not. */
  readonly score: Score;
  /** What its money is made up of. */
  readonly prices: { readonly supplies: MinorUnits; readonly leads: MinorUnits };
  /** By so much its money is over the policy's budget; 0 where it is not, or there is none. */
  readonly overBudget: MinorUnits;
  /** What is bought, and not needed by the wiring. */
  readonly idle: readonly Purchase<SupplyId>[];
  readonly figures: Figures;
  readonly preference: Preference;
  /** Whether nothing that could be bought beats it on money and the other figure at once; null while that is not known. */
  readonly unbeaten: { readonly exposed: boolean | null; readonly bricks: boolean | null };
};

export type FailedOption = Bundle & {
  readonly kind: 'fails';
  /** What the supplies cost, without leads. */
  readonly price: MinorUnits;
  /** Empty when the time ran out before a plan was found. */
  readonly reasons: readonly Failure[];
  /** What would do beside it; null where nothing was found, or was sought. */
  readonly beside: Beside | null;
};

/** What is bought beside what was asked for. */
export type Beside = JudgedPlan['buy'] & {
  /** Of all of it, with what was asked for. */
  readonly price: MinorUnits;
  /** Whether nothing better could be bought beside it. */
  readonly isProven: boolean;
};

/** What nothing that could be bought is better at. */
export type Merit =
  /** The best under the aim, whatever it costs. */
  | 'aim'
  /** The cheapest of those with the fewest exposed pedals. */
  | 'quiet'
  /** The cheapest of those with the fewest supplies in use. */
  | 'bricks'
  | 'money'
  /** The best under the aim of those within the budget. */
  | 'budget'
  /** The cheapest of those with no more exposed pedals and no more supplies in use. */
  | 'between';

/** Plans that no other one beats on money, exposed pedals and supplies in use at once; one stands for all alike in the three. */
export type Unbeaten = {
  /** The cheapest first. */
  readonly points: readonly UnbeatenPoint[];
  /** True when none is missing, and each is proven. */
  readonly complete: boolean;
};

/** What money counts is all that is bought, leads included. */
export type UnbeatenPoint = Pick<Score, 'money' | 'exposed' | 'bricks'> & {
  /** As good as any with these figures in leads and preferred volts, too, where it is proven. */
  readonly wiring: JudgedPlan;
  /** False where it is the best found: what beats it was not ruled out in time. */
  readonly isProven: boolean;
};

/** Why a purchase cannot power the board. */
export type Failure =
  | Reason
  /** The shop has fewer units than the purchase takes. */
  | {
      readonly kind: 'stock';
      readonly supply: SupplyId;
      readonly units: number;
      readonly inStock: number;
      readonly message: string;
    };

/** What a purchase amounts to, besides its score. */
export type Figures = {
  /** On the mains, that the supplies in use take. */
  readonly sockets: number;
  /** Outputs that nothing hangs on, of all supplies that are in use or bought. */
  readonly spareOutputs: number;
  /** Null where no output has a limit: every pedal runs on the adapter that it came with, or on batteries. */
  readonly tightest: Tightest | null;
};

/** The output that is nearest to what it can give, at work or at the moment of switching on. */
export type Tightest = {
  readonly place: Place;
  readonly moment: 'load' | 'startup';
  readonly numbers: LoadNumbers;
};

/** What it would take for an option to be the best under the aim, everything else staying as it is. */
export type Preference =
  | { readonly kind: 'best' }
  /** It is as good as the best in every respect that the aim knows. */
  | { readonly kind: 'as good' }
  /** At this price for all of it, or less, which is so much below its own. */
  | { readonly kind: 'price'; readonly at: MinorUnits; readonly below: MinorUnits }
  /** Not even for nothing: even then the best would be ahead in this. */
  | { readonly kind: 'never'; readonly tier: Tier; readonly behind: number }
  /** What is best, or what this option is worth, was not proven in time. */
  | { readonly kind: 'unknown' };

/** What money buys: the plans that no other plan beats on money and something else at once. */
export type TradeOff = {
  readonly against: 'exposed' | 'bricks';
  /** The cheapest first. One plan stands for all that are alike in both. */
  readonly points: readonly TradeOffPoint[];
  /** True when none is missing: each has been proven to be unbeaten, and what lies between them to be beaten. */
  readonly complete: boolean;
};

export type TradeOffPoint = { readonly money: MinorUnits; readonly amount: number; readonly wiring: JudgedPlan };

/** What a comparison is busy with. */
export type CompareStage =
  | { readonly kind: 'best'; readonly found: number; readonly wanted: number }
  /** Choices that are known by now, the best under the aim first; all of them are proven. */
  | { readonly kind: 'choices'; readonly known: readonly UnbeatenPoint[] }
  | { readonly kind: 'asked'; readonly done: number; readonly wanted: number }
  | { readonly kind: 'trade-offs' };

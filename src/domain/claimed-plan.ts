import type { Aim } from './aim.js';
import type { Currency } from './money.js';
import type { Kept } from './pedal.js';
import type { Wiring } from './plan.js';
import type { PartId, PedalId, SupplyId } from './quantities.js';
import type { FeedSource } from './source.js';

/** What a result that was written down says; whether any of it is true is another matter. */
export type ClaimedPlan = {
  /** The board's name. */
  readonly board: string;
  readonly aim: Aim;
  readonly status: 'proven' | 'best found' | 'impossible';
  readonly currency: Currency;
  /** With the score, purchases and lists that it states. */
  readonly wiring: ClaimedWiring;
};

export type ClaimedWiring = Wiring & { readonly told?: ToldSources };

/** What is said of where the power comes from and of kept places, all of which follows from the feeds and the board. Hours are thousandths, a whole tenth. */
export type ToldSources = {
  readonly sources: readonly { readonly pedal: PedalId; readonly source: FeedSource }[];
  readonly kept: readonly { readonly pedal: PedalId; readonly kept: Kept | null }[];
  readonly batteries: readonly ToldBattery[];
  /** Null where nothing is said of any power bank. */
  readonly runtimes: readonly { readonly supply: SupplyId; readonly unit: number; readonly hours: number }[] | null;
};

/** Of a pedal on batteries: so many make a set, which lasts so long; null where nothing is drawn. */
type ToldBattery = {
  readonly pedal: PedalId;
  readonly id: PartId;
  readonly count: number;
  readonly hours: number | null;
};

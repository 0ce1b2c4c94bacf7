import type { Aim } from './aim.js';
import type { Currency } from './money.js';
import type { Wiring } from './plan.js';

/** What a result that was written down says; whether any of it is true is another matter. */
export type ClaimedPlan = {
  /** The board's name. */
  readonly board: string;
  readonly aim: Aim;
  readonly status: 'proven' | 'best found' | 'impossible';
  readonly currency: Currency;
  /** With the score, purchases and lists that it states. */
  readonly wiring: Wiring;
};

import type { Settled } from './fold.js';
import type { Question } from './question.js';

/** The numbers of the features: pedal classes first, then lead kinds, then these. */
export type Features = {
  readonly leads: number;
  readonly unit: number;
  readonly money: number;
  readonly earlier: number;
  readonly count: number;
};

export function featuresOf({ bench }: Question, earlier: readonly Settled[]): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  return { leads, unit, money: unit + 1, earlier: unit + 2, count: unit + 2 + earlier.length };
}

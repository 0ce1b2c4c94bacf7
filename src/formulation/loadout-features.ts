import type { SettledStep } from './scalar-objective.js';
import type { Question } from './question.js';

/** The numbers of the features: pedal classes first, then lead kinds, then these. */
export type Features = {
  readonly leads: number;
  readonly unit: number;
  readonly bricks: number;
  readonly sockets: number;
  readonly money: number;
  readonly earlier: number;
  readonly count: number;
};

export function featuresOf({ bench }: Question, earlier: readonly SettledStep[]): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  const [bricks, sockets, money, steps] = [unit + 1, unit + 2, unit + 3, unit + 4];
  return { leads, unit, bricks, sockets, money, earlier: steps, count: steps + earlier.length };
}

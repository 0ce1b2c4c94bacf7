import { inletSorts } from '../loadout/inlet-classes.js';
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
  /** From here on one for each sort of inlets: the units in use that have such an inlet. */
  readonly fed: number;
  readonly count: number;
};

export function featuresOf({ bench }: Question, earlier: readonly SettledStep[]): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  const [bricks, sockets, money, steps] = [unit + 1, unit + 2, unit + 3, unit + 4];
  const fed = steps + earlier.length;
  return { leads, unit, bricks, sockets, money, earlier: steps, fed, count: fed + inletSorts(bench).length };
}

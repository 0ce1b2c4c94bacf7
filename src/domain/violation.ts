import type { LoadNumbers } from './load-numbers.js';
import { highestMillivolts, lowestMillivolts, type AcceptedVolts } from './pedal.js';
import type { Place } from './plan.js';
import type { Millivolts, MinorUnits, PedalId } from './quantities.js';
import type { Rule } from './rules.js';

/** What a rule compared, for those that compare numbers. */
export type Numbers =
  | (LoadNumbers & { readonly kind: 'load' })
  | {
      readonly kind: 'volts';
      /** What reaches the pedal, the sum of a series join. */
      readonly given: Millivolts;
      /** What an unregulated output rises to without a load; null where all of them are regulated. */
      readonly openCircuit: Millivolts | null;
      readonly accepted: AcceptedVolts;
      readonly survives: Millivolts | null;
    }
  | {
      readonly kind: 'mains';
      readonly venue: Millivolts;
      /** Null when the supply does not state what it accepts. */
      readonly accepted: { readonly from: Millivolts; readonly to: Millivolts } | null;
    }
  /** Pieces, pedals, adapters, supplies or sockets. */
  | { readonly kind: 'count'; readonly used: number; readonly allowed: number }
  | { readonly kind: 'money'; readonly needed: MinorUnits; readonly allowed: MinorUnits };

/** A hard rule that a wiring breaks, with the place and the numbers. */
export type Violation = {
  readonly rule: Rule;
  /** Empty for what concerns the wiring as a whole. */
  readonly pedals: readonly PedalId[];
  /** Null for what concerns several units or the wiring as a whole. */
  readonly place: Place | null;
  /** One sentence with the numbers; names as they stand in the files. */
  readonly message: string;
  /** Null where the rule compares no numbers. */
  readonly numbers: Numbers | null;
};

/** Whether a pedal gets less than the least that it accepts, and nothing on the way can rise above the most. */
export function hasTooFewVolts({ numbers }: Violation): boolean {
  if (numbers?.kind !== 'volts') return false;
  const { given, openCircuit, accepted, survives } = numbers;
  const most = Math.max(highestMillivolts(accepted), survives ?? 0);
  return given < lowestMillivolts(accepted) && (openCircuit ?? given) <= most;
}

import type { Pedal } from '../domain/pedal.js';
import type { Place } from '../domain/plan.js';
import { isInlet } from './inlets.js';
import type { Rule } from '../domain/rules.js';
import type { Numbers, Violation } from '../domain/violation.js';
import type { Line, UnitInUse } from './line.js';

type Details = { readonly place?: Place; readonly numbers?: Numbers };

/** What an inlet may break on the output that it hangs on, all of it by the name of one rule. */
const ofInlets: ReadonlySet<Rule> = new Set<Rule>(['power', 'voltage', 'current', 'polarity', 'plug', 'chain', 'join']);

/** A violation of the pedals named, each of them once; an inlet is none. */
export function violation(rule: Rule, pedals: readonly Pedal[], message: string, details: Details = {}): Violation {
  const { place = null, numbers = null } = details;
  const own = ofInlets.has(rule) && pedals.some(isInlet) ? 'inlet' : rule;
  const named = pedals.filter((pedal) => !isInlet(pedal)).map(({ id }) => id);
  return { rule: own, pedals: [...new Set(named)], place, message, numbers };
}

/** The outputs that a line draws from. */
export const placeOfLine = ({ feed }: Line): Place => ({
  supply: feed.supply,
  unit: feed.unit,
  outputs: feed.outputs,
});

/** The unit, or some of its outputs in rising order. */
export const placeInUnit = ({ supply, unit }: UnitInUse, outputs: Iterable<number> = []): Place => ({
  supply: supply.id,
  unit,
  outputs: [...outputs].sort((first, second) => first - second),
});

/** So many against the most that are allowed. */
export const counted = (used: number, allowed: number): Numbers => ({ kind: 'count', used, allowed });

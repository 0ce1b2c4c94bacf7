import type { Violation } from '../domain/plan.js';
import type { Total } from '../domain/supply.js';
import { isAtMost, ratioOf, sum, times, whole, type Ratio } from './exact.js';
import { joinOf, pedalsOf, type Layout, type Line, type Tap, type UnitInUse } from './line.js';
import { factor, milliamps, outputPlace, unitPlace, violation, watts } from './words.js';

/** Load × supply factor ≤ the total of every bank and of every supply, in mA or in W. */
export function totalViolations(layout: Layout): readonly Violation[] {
  return layout.units.flatMap((unit) => [
    ...unit.supply.banks.flatMap((bank) => {
      const numbers = Array.from({ length: bank.outputs }, (_, index) => bank.firstOutput + index);
      const place = `the bank of ${outputPlace(unit.supply, unit.unit, numbers)}`;
      return exceeded(layout, unit, bank.total, place, (tap) => tap.bank === bank);
    }),
    ...exceeded(layout, unit, unit.supply.total, unitPlace(unit.supply, unit.unit), () => true),
  ]);
}

function exceeded(
  layout: Layout,
  unit: UnitInUse,
  total: Total | null,
  place: string,
  counts: (tap: Tap) => boolean,
): readonly Violation[] {
  if (total === null) return [];
  const lines = unit.lines.filter((line) => line.taps.some(counts));
  const load = sum(lines.map((line) => burden(line, total.kind, counts)));
  const planned = times(load, ratioOf(layout.policy.headroom.supply));
  const limit = limitOf(total);
  if (isAtMost(planned, limit)) return [];
  const text = total.kind === 'current' ? milliamps : watts;
  const sumText = `${text(load)} × ${factor(layout.policy.headroom.supply)} = ${text(planned)}`;
  const message = `the load on ${place} is ${sumText}; it gives ${text(limit)} in total`;
  return [violation('total', pedalsOf(lines), message)];
}

/** In microamps, or nanowatts. */
const limitOf = (total: Total): Ratio =>
  total.kind === 'current' ? whole(total.microamps) : times(whole(total.milliwatts), whole(1_000_000));

/** What a line takes of a total, in microamps or, for a total in watts, nanowatts (millivolts × microamps). */
function burden(line: Line, kind: Total['kind'], counts: (tap: Tap) => boolean): Ratio {
  const taps = line.taps.filter(counts);
  const shares = taps.map((tap) => (kind === 'current' ? line.load : times(line.load, whole(tap.millivolts))));
  // Parallel outputs may split the load in any way, so that all of it may fall on one of them, but only once on both.
  return joinOf(line) === 'parallel' ? greatest(shares) : sum(shares);
}

const greatest = (values: readonly Ratio[]): Ratio =>
  values.reduce((largest, value) => (isAtMost(value, largest) ? largest : value), whole(0));

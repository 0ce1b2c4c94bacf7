import type { LoadNumbers, TotalLoad } from '../domain/load-numbers.js';
import type { Policy } from '../domain/board.js';
import type { Bank, Total } from '../domain/supply.js';
import type { Violation } from '../domain/violation.js';
import { isAtMost, over, ratioOf, sum, times, whole, type Ratio } from './exact.js';
import { joinOf, pedalsOf, type Layout, type Line, type Tap, type UnitInUse } from './line.js';
import { isWithin } from './load.js';
import { placeInUnit, violation } from './violation.js';
import { factor, milliamps, outputPlace, unitPlace, watts } from './words.js';

/** Load × supply factor ≤ the total of every bank and of every supply, in mA or in W. */
export function totalViolations(layout: Layout): readonly Violation[] {
  return layout.units.flatMap((unit) =>
    countedTotals(unit, layout.policy).flatMap(({ lines, load }) => {
      const { numbers, place, of } = load;
      if (isWithin(numbers)) return [];
      const text = numbers.unit === 'mA' ? milliamps : watts;
      const where =
        of === 'bank'
          ? `the bank of ${outputPlace(unit.supply, unit.unit, place.outputs)}`
          : unitPlace(unit.supply, unit.unit);
      const sumText = `${text(numbers.load)} × ${factor(numbers.factor)} = ${text(numbers.planned)}`;
      const message = `the load on ${where} is ${sumText}; it gives ${text(whole(numbers.limit))} in total`;
      return [violation('total', pedalsOf(lines), message, { place, numbers: { kind: 'load', ...numbers } })];
    }),
  );
}

/** Every stated total that something counts towards, in the order of the units. */
export const totalLoads = ({ units, policy }: Layout): readonly TotalLoad[] =>
  units.flatMap((unit) => countedTotals(unit, policy).map(({ load }) => load));

type Counted = { readonly lines: readonly Line[]; readonly load: TotalLoad };

function countedTotals(unit: UnitInUse, policy: Policy): readonly Counted[] {
  const counted = (total: Total, bank: Bank | null): Counted => {
    const counts = (tap: Tap): boolean => bank === null || tap.bank === bank;
    const lines = unit.lines.filter((line) => line.taps.some(counts));
    const numbers = numbersOf(total, sum(lines.map((line) => burden(line, total.kind, counts))), policy);
    const pedals = [...new Set(pedalsOf(lines).map(({ id }) => id))];
    const place = placeInUnit(unit, bank === null ? [] : outputsOf(bank));
    return { lines, load: { of: bank === null ? 'supply' : 'bank', place, pedals, numbers } };
  };
  const { banks, total } = unit.supply;
  return [
    ...banks.flatMap((bank) => (bank.total === null ? [] : [counted(bank.total, bank)])),
    ...(total === null ? [] : [counted(total, null)]),
  ].filter(({ lines }) => lines.length > 0);
}

const outputsOf = ({ firstOutput, outputs }: Bank): readonly number[] =>
  Array.from({ length: outputs }, (_, index) => firstOutput + index);

/** The load is in microamps or, for a total in watts, in nanowatts. */
function numbersOf(total: Total, sumOfLoads: Ratio, { headroom }: Policy): LoadNumbers {
  const inWatts = total.kind === 'power';
  const load = inWatts ? over(sumOfLoads, 1_000_000) : sumOfLoads;
  return {
    unit: inWatts ? 'W' : 'mA',
    load,
    factor: headroom.supply,
    planned: times(load, ratioOf(headroom.supply)),
    limit: inWatts ? total.milliwatts : total.microamps,
  };
}

/** What a line takes of a total, in microamps or, for a total in watts, nanowatts (millivolts × microamps). */
function burden(line: Line, kind: Total['kind'], counts: (tap: Tap) => boolean): Ratio {
  const taps = line.taps.filter(counts);
  const shares = taps.map((tap) => (kind === 'current' ? line.load : times(line.load, whole(tap.millivolts))));
  // Parallel outputs may split the load in any way, so that all of it may fall on one of them, but only once on both.
  return joinOf(line) === 'parallel' ? greatest(shares) : sum(shares);
}

const greatest = (values: readonly Ratio[]): Ratio =>
  values.reduce((largest, value) => (isAtMost(value, largest) ? largest : value), whole(0));

import type { BankRuntime } from '../domain/judged-plan.js';
import { decimalOfThousandths } from '../domain/quantities.js';
import type { Violation } from '../domain/violation.js';
import { decimalText, isAtMost, over, ratioOf, sum, times, whole, type Ratio } from './exact.js';
import { joinOf, pedalsOf, type Layout, type Line, type UnitInUse } from './line.js';
import { placeInUnit, violation } from './violation.js';
import { factor, unitPlace, watts } from './words.js';

/**
 * A power bank lasts: hours × Σ (volts × load) ≤ usable × watt-hours. Without a policy that says how long it has to last it is
 * not used at all.
 */
export const runtimeViolations = (layout: Layout): readonly Violation[] =>
  layout.units.flatMap((unit) => {
    const { source } = unit.supply;
    if (source.kind !== 'charge') return [];
    const { runtime } = layout.policy;
    const place = placeInUnit(unit);
    const where = unitPlace(unit.supply, unit.unit);
    if (runtime === null) {
      const message = `${where} is a power bank, and nobody has said how long it has to last`;
      return [violation('runtime', pedalsOf(unit.lines), message, { place })];
    }
    const taken = times(drawnFrom(unit), ratioOf(runtime.hours));
    const there = times(whole(source.milliwattHours), ratioOf(runtime.usable));
    if (isAtMost(taken, there)) return [];
    const message =
      `${where} has ${decimalOfThousandths(source.milliwattHours)} Wh × ${factor(runtime.usable)} = ${decimalText(there, 3)} Wh; ` +
      `${watts(drawnFrom(unit))} for ${factor(runtime.hours)} h take ${decimalText(taken, 3)} Wh`;
    return [violation('runtime', pedalsOf(unit.lines), message, { place })];
  });

/** Every power bank in use, in the order of the units. */
export const runtimesOf = ({ units, policy: { runtime } }: Layout): readonly BankRuntime[] =>
  units.flatMap(({ supply, unit, lines }) => {
    const { source } = supply;
    if (source.kind !== 'charge' || runtime === null) return [];
    const there = times(whole(source.milliwattHours), ratioOf(runtime.usable));
    const drawn = drawnFrom({ supply, unit, lines });
    // What draws nothing empties no bank.
    const hours = drawn.numerator === 0n ? there : quotient(there, drawn);
    const pedals = [...new Set(pedalsOf(lines).map(({ id }) => id))];
    return [{ supply: supply.id, unit, pedals, milliwattHours: source.milliwattHours, asked: runtime, hours }];
  });

const quotient = (one: Ratio, other: Ratio): Ratio => ({
  numerator: one.numerator * other.denominator,
  denominator: one.denominator * other.numerator,
});

const nanowattsInMilliwatt = 1_000_000;

/** Milliwatts of all that hangs on the unit. */
const drawnFrom = ({ lines }: UnitInUse): Ratio => sum(lines.map(milliwattsOf));

/** A series join draws on both of its outputs. */
const milliwattsOf = (line: Line): Ratio => {
  const millivolts =
    joinOf(line) === 'parallel'
      ? line.taps[0].millivolts
      : line.taps.reduce((all, tap) => all + Number(tap.millivolts), 0);
  return over(times(line.load, whole(millivolts)), nanowattsInMilliwatt);
};

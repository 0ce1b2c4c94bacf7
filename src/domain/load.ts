import type { Pedal } from './pedal.js';
import type { Factor, Microamps, Millivolts } from './quantities.js';

/** An exact nonnegative rational quantity, in the unit that its maker states. The denominator is at least 1. */
export type Exact = { readonly numerator: bigint; readonly denominator: bigint };

/** The pedal's draw at these volts. @throws RangeError when its figures leave these volts out. */
export function drawAt(pedal: Pedal, at: Millivolts): Microamps {
  if (pedal.draw.kind === 'flat') return pedal.draw.microamps;
  const drawn = pedal.draw.microamps.get(at);
  if (drawn === undefined) throw new RangeError(`${pedal.id} has no figure for its draw at ${at} mV`);
  return drawn;
}

/** The load in microamps that a plan counts for a pedal at these volts: its draw, × `guess` when the figure is a guess. */
export function loadAt(pedal: Pedal, at: Millivolts, guess: Factor): Exact {
  const draw = exactly(drawAt(pedal, at));
  return pedal.figure === 'guess' ? scaled(draw, guess) : draw;
}

/** An integer as an exact quantity. */
export const exactly = (value: number): Exact => ({ numerator: BigInt(value), denominator: 1n });

export const scaled = (value: Exact, factor: Factor): Exact => ({
  numerator: value.numerator * BigInt(factor.numerator),
  denominator: value.denominator * BigInt(factor.denominator),
});

/** The sum; zero for none. */
export const sum = (values: readonly Exact[]): Exact =>
  values.reduce(
    (total, value) => ({
      numerator: total.numerator * value.denominator + value.numerator * total.denominator,
      denominator: total.denominator * value.denominator,
    }),
    exactly(0),
  );

/** Below zero when the first is the smaller, zero when they are equal, else above zero. */
export function compareExact(first: Exact, second: Exact): number {
  const difference = first.numerator * second.denominator - second.numerator * first.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The quantity in thousandths, rounded down to a whole tenth; it never promises too much. */
export const tenthsDown = ({ numerator, denominator }: Exact): number => Number((numerator * 10n) / denominator) * 100;

/** The quantity in steps of `step`, rounded up to a whole number of steps; it never understates. */
export function stepsUp(value: Exact, step: number): number {
  const divisor = value.denominator * BigInt(step);
  return Number((value.numerator + divisor - 1n) / divisor);
}

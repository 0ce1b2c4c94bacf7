import type { Factor } from '../domain/quantities.js';

/** An exact rational number; the denominator is positive, the fraction need not be in lowest terms. */
export type Ratio = { readonly numerator: bigint; readonly denominator: bigint };

export const zero: Ratio = { numerator: 0n, denominator: 1n };

/** @throws RangeError when the value is not an integer. */
export const whole = (value: number): Ratio => ({ numerator: BigInt(value), denominator: 1n });

export const ratioOf = (factor: Factor): Ratio => ({
  numerator: BigInt(factor.numerator),
  denominator: BigInt(factor.denominator),
});

export function plus(first: Ratio, second: Ratio): Ratio {
  return {
    numerator: first.numerator * second.denominator + second.numerator * first.denominator,
    denominator: first.denominator * second.denominator,
  };
}

export function times(first: Ratio, second: Ratio): Ratio {
  return {
    numerator: first.numerator * second.numerator,
    denominator: first.denominator * second.denominator,
  };
}

/** The value ÷ a positive integer. */
export const over = ({ numerator, denominator }: Ratio, divisor: number): Ratio => ({
  numerator,
  denominator: denominator * BigInt(divisor),
});

export const sum = (values: readonly Ratio[]): Ratio => values.reduce(plus, zero);

/** Whether first ≤ second, without a tolerance. */
export const isAtMost = (first: Ratio, second: Ratio): boolean =>
  first.numerator * second.denominator <= second.numerator * first.denominator;

/**
 * The decimal text of a nonnegative value ÷ 10^shift, with at least `leastDecimals` decimals and exact whenever it has at
 * most 18 of them. A longer one is rounded up at the sixth decimal and marked with ≈.
 */
export function decimalText(value: Ratio, shift: number, leastDecimals = 0): string {
  const divisor = value.denominator * 10n ** BigInt(shift);
  for (let decimals = leastDecimals; decimals <= 18; decimals += 1) {
    const scaled = value.numerator * 10n ** BigInt(decimals);
    if (scaled % divisor === 0n) return withPoint(scaled / divisor, decimals);
  }
  const roundedUp = (value.numerator * 10n ** 6n + divisor - 1n) / divisor;
  return `≈ ${withPoint(roundedUp, 6)}`;
}

function withPoint(scaled: bigint, decimals: number): string {
  if (decimals === 0) return String(scaled);
  const digits = String(scaled).padStart(decimals + 1, '0');
  return `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

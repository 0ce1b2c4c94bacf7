/** Sums of so many numbers below this stay safe integers. */
const LARGEST = 2n ** 44n;

/**
 * Big integers as plain numbers that stand in the same relation: over their greatest common divisor, and where they are
 * still too large rounded, weights down and capacities up, so that whatever fits still fits.
 */
export function wholeNumbers(
  weights: readonly bigint[],
  capacities: readonly bigint[],
): {
  readonly least: (weight: bigint) => number;
  readonly most: (capacity: bigint) => number;
  readonly exact: boolean;
} {
  const divisor = weights.reduce(greatestCommonDivisor, 0n) || 1n;
  const largest = [...weights, ...capacities].reduce(
    (most, each) => (each / divisor > most ? each / divisor : most),
    0n,
  );
  const shrink = largest / LARGEST + 1n;
  const unit = divisor * shrink;
  return {
    least: (weight) => Number(weight / unit),
    most: (capacity) => Number(shrink === 1n ? capacity / unit : capacity / unit + 1n),
    exact: shrink === 1n,
  };
}

const greatestCommonDivisor = (first: bigint, second: bigint): bigint =>
  second === 0n ? first : greatestCommonDivisor(second, first % second);

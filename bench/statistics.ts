/** One time: exact, or no more than a lower bound because the solve was given up then. */
export type Sample = { readonly ms: number; readonly atLeast: boolean };

export type Spread = { readonly median: Sample; readonly least: Sample; readonly most: Sample };

/**
 * Median and extremes. Of an even number of samples the median is the mean of the middle two, and a lower bound where one
 * of them is. @throws RangeError without samples.
 */
export function spreadOf(samples: readonly Sample[]): Spread {
  const sorted = samples.toSorted((a, b) => a.ms - b.ms || Number(a.atLeast) - Number(b.atLeast));
  const low = sorted[Math.floor((sorted.length - 1) / 2)];
  const high = sorted[Math.floor(sorted.length / 2)];
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (low === undefined || high === undefined || least === undefined || most === undefined) {
    throw new RangeError('no samples');
  }
  return { median: { ms: (low.ms + high.ms) / 2, atLeast: low.atLeast || high.atLeast }, least, most };
}

export const exactly = (ms: number): Sample => ({ ms, atLeast: false });

/** The median of exact numbers. @throws RangeError without any. */
export const medianOf = (values: readonly number[]): number => spreadOf(values.map(exactly)).median.ms;

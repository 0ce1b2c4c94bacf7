/** A logarithmic axis: `least` lies at pixel `from`, `most` at pixel `to`. */
export type LogAxis = {
  readonly least: number;
  readonly most: number;
  readonly from: number;
  readonly to: number;
};

/** Where a positive value lies, in pixels; values beyond the ends lie beyond them. */
export const positionOn = ({ least, most, from, to }: LogAxis, value: number): number =>
  from + ((to - from) * Math.log(value / least)) / Math.log(most / least);

/** The whole decades that hold every value: powers of ten, at least two. @throws RangeError without positive values. */
export function decadesAround(values: readonly number[]): readonly number[] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (values.length === 0 || !(least > 0 && most < Infinity))
    throw new RangeError('no decades without positive values');
  const first = Math.floor(Math.log10(least));
  const last = Math.max(first + 1, Math.ceil(Math.log10(most)));
  return Array.from({ length: last - first + 1 }, (_, index) => 10 ** (first + index));
}

/** Those of the ascending values whose labels keep so many pixels apart on the axis; the first one always. */
export function spacedApart(axis: LogAxis, values: readonly number[], pixels: number): readonly number[] {
  const kept: number[] = [];
  for (const value of values) {
    const before = kept.at(-1);
    const gap = before === undefined ? Infinity : Math.abs(positionOn(axis, value) - positionOn(axis, before));
    if (gap >= pixels) kept.push(value);
  }
  return kept;
}

/** A duration with its unit: "1 ms", "100 ms", "1 s". */
export const durationText = (ms: number): string =>
  ms < 1000 ? `${Number(ms.toPrecision(2))} ms` : `${Number((ms / 1000).toPrecision(2))} s`;

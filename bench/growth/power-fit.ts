import type { Sample } from '../statistics.js';

/** A time at a size. */
export type SizedSample = { readonly size: number; readonly sample: Sample };

/** time = factor · size ^ exponent. */
export type PowerFit = {
  readonly exponent: number;
  /** In milliseconds. */
  readonly factor: number;
  /**
   * Where times were cut off that the fit takes for whole. At large sizes only, that is at no less than the geometric mean
   * of all sizes, the exponent is a lower bound of the one that longer patience would show; else it bounds nothing.
   */
  readonly cutOff: 'nowhere' | 'at large sizes' | 'at small sizes too';
};

/**
 * The power law that lies nearest, by least squares on the logarithms:
 * exponent = Σ (ln size − mean) · ln ms ÷ Σ (ln size − mean)².
 * @throws RangeError where fewer than two sizes differ, or a size or a time is not positive.
 */
export function fitPower(points: readonly SizedSample[]): PowerFit {
  const logs = points.map(({ size, sample }) => ({ x: logOf(size), y: logOf(sample.ms), cut: sample.atLeast }));
  const meanX = meanOf(logs.map(({ x }) => x));
  const meanY = meanOf(logs.map(({ y }) => y));
  const spread = sumOf(logs.map(({ x }) => (x - meanX) ** 2));
  if (new Set(points.map(({ size }) => size)).size < 2) throw new RangeError('a fit needs two sizes that differ');
  const exponent = sumOf(logs.map(({ x, y }) => (x - meanX) * y)) / spread;
  const cut = logs.filter((log) => log.cut);
  const low = cut.some(({ x }) => x < meanX);
  return {
    exponent,
    factor: Math.exp(meanY - exponent * meanX),
    cutOff: cut.length === 0 ? 'nowhere' : low ? 'at small sizes too' : 'at large sizes',
  };
}

/** What the fit says of a size, in milliseconds. */
export const fittedMs = ({ factor, exponent }: PowerFit, size: number): number => factor * size ** exponent;

/** The exponent with two decimals, and what is to be held of it where times were cut off. */
export function exponentText({ exponent, cutOff }: PowerFit): string {
  const text = exponent.toFixed(2).replace('-', '−');
  switch (cutOff) {
    case 'nowhere':
      return text;
    case 'at large sizes':
      return `${text} or more`;
    case 'at small sizes too':
      return `${text} or so`;
  }
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const meanOf = (values: readonly number[]): number => sumOf(values) / values.length;

function logOf(value: number): number {
  if (value > 0) return Math.log(value);
  throw new RangeError(`${value} has no logarithm`);
}

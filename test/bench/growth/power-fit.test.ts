import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { exponentText, fitPower, fittedMs, type SizedSample } from '../../../bench/growth/power-fit.js';

const point = (size: number, ms: number, atLeast = false): SizedSample => ({ size, sample: { ms, atLeast } });

describe('fitPower', () => {
  it('finds every power law again that the points lie on', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 1000 }), { minLength: 2, maxLength: 8 });
    const exponents = fc.double({ min: -3, max: 3, noNaN: true });
    const factors = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(sizes, exponents, factors, (counts, exponent, factor) => {
        const fit = fitPower(counts.map((count) => point(count, factor * count ** exponent)));
        expect(fit.exponent).toBeCloseTo(exponent, 6);
        for (const count of counts) expect(fittedMs(fit, count) / (factor * count ** exponent)).toBeCloseTo(1, 6);
      }),
    );
  });

  it('balances points that lie on no law by the squares of their logarithms', () => {
    // Logarithms (0, 0), (1, 1), (2, 1), by hand: slope 1/2, intercept 1/6.
    const fit = fitPower([point(1, 1), point(Math.E, Math.E), point(Math.E ** 2, Math.E)]);
    expect(fit.exponent).toBeCloseTo(1 / 2, 12);
    expect(Math.log(fit.factor)).toBeCloseTo(1 / 6, 12);
  });

  it('says where times were cut off', () => {
    const cutOff = (...cuts: readonly boolean[]): string =>
      fitPower([1, 10, 100].map((size, index) => point(size, size, cuts[index]))).cutOff;
    expect(cutOff(false, false, false)).toBe('nowhere');
    expect(cutOff(false, false, true)).toBe('at large sizes');
    expect(cutOff(false, true, true)).toBe('at large sizes');
    expect(cutOff(true, false, true)).toBe('at small sizes too');
  });

  it('gives a lower bound where only large sizes were cut off', () => {
    const cut = fitPower([point(1, 1), point(10, 10), point(100, 50, true)]);
    const whole = fitPower([point(1, 1), point(10, 10), point(100, 100)]);
    expect(cut.exponent).toBeLessThan(whole.exponent);
  });

  it.each([
    ['one point', [point(5, 5)]],
    ['points of one size', [point(5, 5), point(5, 6)]],
    ['no points', []],
    ['a time of nothing', [point(5, 0), point(6, 6)]],
    ['a size of nothing', [point(0, 5), point(6, 6)]],
  ])('refuses %s', (_, points) => {
    expect(() => fitPower(points)).toThrow(RangeError);
  });
});

it('exponentText says what is to be held of an exponent', () => {
  const fit = { exponent: 1.234, factor: 1 };
  expect(exponentText({ ...fit, cutOff: 'nowhere' })).toBe('1.23');
  expect(exponentText({ ...fit, exponent: -0.5, cutOff: 'nowhere' })).toBe('−0.50');
  expect(exponentText({ ...fit, cutOff: 'at large sizes' })).toBe('1.23 or more');
  expect(exponentText({ ...fit, cutOff: 'at small sizes too' })).toBe('1.23 or so');
});

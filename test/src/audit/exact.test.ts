import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { decimalText, isAtMost, plus, sum, times, whole, type Ratio } from '../../../src/audit/exact.js';
import { trying } from '../../support/runs.js';

const over = (numerator: number, denominator: number): Ratio => ({
  numerator: BigInt(numerator),
  denominator: BigInt(denominator),
});

describe('exact arithmetic', () => {
  it('adds, multiplies and compares where floating point goes wrong', () => {
    const threeTenths = plus(over(1, 10), over(2, 10));
    expect(isAtMost(threeTenths, over(3, 10))).toBe(true);
    expect(isAtMost(over(3, 10), threeTenths)).toBe(true);
    const huge = times(whole(Number.MAX_SAFE_INTEGER), whole(Number.MAX_SAFE_INTEGER));
    expect(isAtMost(plus(huge, over(1, 1000)), huge)).toBe(false);
    expect(isAtMost(huge, plus(huge, over(1, 1000)))).toBe(true);
    expect(isAtMost(sum([]), whole(0))).toBe(true);
  });

  it('refuses what is no integer', () => {
    expect(() => whole(1.5)).toThrow(RangeError);
    expect(() => whole(NaN)).toThrow(RangeError);
  });
});

describe('decimal text', () => {
  it.each([
    [whole(216000), 3, '216'],
    [whole(9500), 3, '9.5'],
    [whole(1), 3, '0.001'],
    [whole(0), 3, '0'],
    [over(6, 5), 0, '1.2'],
    [over(1, 8), 3, '0.000125'],
    [over(4000, 3), 3, '≈ 1.333334'],
    [over(1, 3), 0, '≈ 0.333334'],
  ])('of %o ÷ 10^%d is %s', (value, shift, text) => {
    expect(decimalText(value, shift)).toBe(text);
  });

  it('has the decimals asked for', () => {
    expect(decimalText(whole(20000), 2, 2)).toBe('200.00');
    expect(decimalText(whole(5), 2, 2)).toBe('0.05');
    expect(decimalText(whole(500), 0, 0)).toBe('500');
    expect(decimalText(whole(1234), 3, 3)).toBe('1.234');
  });

  it('reads back as the same number', () => {
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 0, max: 9 }), (value, shift) => {
        const [integer = '', fraction = ''] = decimalText(whole(value), shift).split('.');
        const digits = BigInt(integer + fraction);
        expect(digits * 10n ** BigInt(shift)).toBe(BigInt(value) * 10n ** BigInt(fraction.length));
      }),
      trying(300),
    );
  });
});

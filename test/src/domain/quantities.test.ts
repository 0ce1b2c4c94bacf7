import { describe, expect, it } from 'vitest';

import {
  decimalOfThousandths,
  factorOfThousandths,
  factorText,
  greatestCommonDivisor,
  microamps,
  millivolts,
  milliwatts,
  minorUnits,
  numberOfThousandths,
  scaledDecimal,
  thousandths,
} from '../../../src/domain/quantities.js';

const most = Number.MAX_SAFE_INTEGER;

describe('a quantity in its smallest unit', () => {
  it.each([
    ['millivolts', millivolts],
    ['microamps', microamps],
    ['milliwatts', milliwatts],
    ['minor units', minorUnits],
  ] as const)('%s are whole, and no more than can be told apart', (name, quantity) => {
    expect(quantity(0)).toBe(0);
    expect(quantity(most)).toBe(most);
    expect(quantity(-most)).toBe(-most);
    for (const wrong of [0.5, most + 1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => quantity(wrong)).toThrow(`${name} must be a safe integer, not ${wrong}`);
  });
});

describe('a number in volts, milliamps or watts', () => {
  it.each([
    [9, 9000],
    [9.5, 9500],
    [0.001, 1],
    [1.005, 1005],
    [1.1, 1100],
    [0, 0],
    [-0, 0],
    [-2.7, -2700],
    [100_000, 100_000_000],
    [9_007_199_254_740.99, 9_007_199_254_740_990],
  ])('%d is exactly so many thousandths', (value, expected) => {
    expect(thousandths(value)).toBe(expected);
  });

  it.each([
    ['with a fourth decimal', 9.0001],
    ['with a fourth decimal, below zero', -9.0001],
    ['far below a thousandth', 1e-7],
    ['whose thousandths cannot be told apart', 9_007_199_254_740.992],
    ['with an exponent', 1e21],
    ['as large as there is', Number.MAX_VALUE],
    ['without an end', Number.POSITIVE_INFINITY],
    ['that is none', Number.NaN],
  ])('%s is refused', (_what, value) => {
    expect(thousandths(value)).toBeNull();
  });
});

describe('a decimal number', () => {
  it('is taken as it is spelled, however small', () => {
    expect(scaledDecimal(1e-7, 7)).toBe(1);
    expect(scaledDecimal(1e-7, 6)).toBeNull();
    expect(scaledDecimal(1.5e-7, 8)).toBe(15);
    expect(scaledDecimal(1.5e-7, 7)).toBeNull();
    expect(scaledDecimal(2.5e-10, 11)).toBe(25);
    expect(scaledDecimal(2.5e-10, 12)).toBe(250);
  });

  it('may have no decimals at all', () => {
    expect(scaledDecimal(119, 0)).toBe(119);
    expect(scaledDecimal(119.5, 0)).toBeNull();
    expect(scaledDecimal(most, 0)).toBe(most);
    expect(scaledDecimal(most + 1, 0)).toBeNull();
  });
});

describe('thousandths as text', () => {
  it.each([
    [9000, '9'],
    [2700, '2.7'],
    [12_345, '12.345'],
    [1, '0.001'],
    [10, '0.01'],
    [0, '0'],
    [-500, '-0.5'],
    [-9000, '-9'],
  ])('%d are %s, without needless zeros', (value, text) => {
    expect(decimalOfThousandths(value)).toBe(text);
    expect(numberOfThousandths(value)).toBe(Number(text));
  });
});

describe('a factor', () => {
  it('is in lowest terms', () => {
    expect(factorOfThousandths(1200)).toEqual({ numerator: 6, denominator: 5 });
    expect(factorOfThousandths(1000)).toEqual({ numerator: 1, denominator: 1 });
    expect(factorOfThousandths(1)).toEqual({ numerator: 1, denominator: 1000 });
    expect(factorOfThousandths(1001)).toEqual({ numerator: 1001, denominator: 1000 });
  });

  it('is above zero', () => {
    for (const wrong of [0, -1, 0.5, Number.NaN, most + 1])
      expect(() => factorOfThousandths(wrong)).toThrow(`a factor must be positive, not ${wrong} thousandths`);
  });

  it.each([
    [1200, '1.2'],
    [2000, '2'],
    [1125, '1.125'],
    [1, '0.001'],
  ])('of %d thousandths is shown as %s', (value, text) => {
    expect(factorText(factorOfThousandths(value))).toBe(text);
  });
});

it('the greatest common divisor of a number and zero is the number', () => {
  expect(greatestCommonDivisor(1200, 1000)).toBe(200);
  expect(greatestCommonDivisor(7, 1000)).toBe(1);
  expect(greatestCommonDivisor(0, 5)).toBe(5);
  expect(greatestCommonDivisor(5, 0)).toBe(5);
});

import currencyCodes from 'currency-codes';
import { describe, expect, it } from 'vitest';

import { amountInMinorUnits, currencyNames, currencyOf, moneyText } from '../../../src/domain/money.js';
import { minorUnits } from '../../../src/domain/quantities.js';

const euro = { code: 'EUR', decimals: 2 };
const yen = { code: 'JPY', decimals: 0 };
const dinar = { code: 'KWD', decimals: 3 };

describe('a currency', () => {
  it.each([euro, yen, dinar])('$code has decimals of its own', (currency) => {
    expect(currencyOf(currency.code)).toEqual(currency);
  });

  it.each(['eur', 'Eur', 'EURO', 'AEUR', 'EU', '', '978', 'QQQ', ' EUR'])('%j is none', (code) => {
    expect(currencyOf(code)).toBeNull();
  });

  it('can be looked up by every name that is suggested', () => {
    const names = currencyNames();
    expect(names.length).toBeGreaterThan(100);
    expect(names.filter((name) => currencyOf(name) === null)).toEqual([]);
  });
});

it('all currencies are those of the published list, with its decimals', () => {
  const published = currencyCodes.codes().map((code) => ({ code, decimals: currencyCodes.code(code)?.digits }));
  expect(currencyNames().map(currencyOf)).toEqual(published);
});

describe('an amount', () => {
  it('is exact in minor units, and null with a decimal too many', () => {
    expect(amountInMinorUnits(119.5, euro)).toBe(11_950);
    expect(amountInMinorUnits(1.005, euro)).toBeNull();
    expect(amountInMinorUnits(119, yen)).toBe(119);
    expect(amountInMinorUnits(119.5, yen)).toBeNull();
    expect(amountInMinorUnits(1.005, dinar)).toBe(1005);
  });

  it.each([
    [11_900, euro, '119.00'],
    [100, euro, '1.00'],
    [99, euro, '0.99'],
    [5, euro, '0.05'],
    [0, euro, '0.00'],
    [-5, euro, '-0.05'],
    [-12_345, euro, '-123.45'],
    [5, dinar, '0.005'],
    [1005, dinar, '1.005'],
    [0, yen, '0'],
    [1200, yen, '1200'],
    [-1200, yen, '-1200'],
  ])('of %d minor units is shown with the decimals of its currency: %o, %s', (amount, currency, text) => {
    expect(moneyText(minorUnits(amount), currency)).toBe(text);
  });
});

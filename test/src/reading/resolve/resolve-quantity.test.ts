import { describe, expect, it } from 'vitest';

import { findingAt, type Finding, type Report } from '../../../../src/domain/finding.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import {
  factorOf,
  microampsOf,
  millivoltsOf,
  milliwattsOf,
  mostMinorUnits,
  resolveMoney,
  roundedTo,
} from '../../../../src/reading/resolve/resolve-quantity.js';

describe('what its schema has let pass', () => {
  it('is exact', () => {
    expect(millivoltsOf(9.5)).toBe(9500);
    expect(microampsOf(0.001)).toBe(1);
    expect(milliwattsOf(1.005)).toBe(1005);
    expect(factorOf(1.2)).toEqual({ numerator: 6, denominator: 5 });
  });

  it('has no more than three decimals', () => {
    for (const convert of [millivoltsOf, microampsOf, milliwattsOf, factorOf])
      expect(() => convert(1.0001)).toThrow('1.0001 has more than three decimals; its schema should have refused it');
  });
});

describe('money', () => {
  /** What an amount comes to in a currency with so many decimals, and what is said of it. */
  function moneyOf(amount: number, decimals: number) {
    const findings: Finding[] = [];
    const report: Report = (...found) => void findings.push(findingAt(...found));
    const spot = { source: 'board', path: ['policy', 'budget'] } as const;
    const money = resolveMoney(amount, { code: 'XTS', decimals }, spot, report);
    return { money, words: findings.map(({ words }) => words(() => 'line 1')) };
  }

  it('has as many decimals as its currency', () => {
    expect(moneyOf(5, 0)).toEqual({ money: 5, words: [] });
    expect(moneyOf(5.5, 1)).toEqual({ money: 55, words: [] });
    expect(moneyOf(5.55, 2)).toEqual({ money: 555, words: [] });
  });

  it.each([
    [5.5, 0, 'no decimals', '6'],
    [5.55, 1, 'at most one decimal', '5.6'],
    [5.555, 2, 'at most 2 decimals', '5.56'],
    [5.5555, 3, 'at most 3 decimals', '5.556'],
  ])('%d is too exact for %d decimals', (amount, decimals, allowed, rounded) => {
    const message = `found ${amount}; an amount in XTS has ${allowed}.`;
    const remedy = `Round it, for example to ${rounded}.`;
    expect(moneyOf(amount, decimals)).toEqual({ money: null, words: [{ message, remedy }] });
  });

  it('is at most a million million minor units', () => {
    expect(moneyOf(1e12, 0).money).toBe(mostMinorUnits);
    expect(moneyOf(1e10, 2).money).toBe(mostMinorUnits);
    expect(moneyOf(1e12 + 1, 0).words[0]?.message).toContain('the most is 1000000000000 XTS');
    expect(moneyOf(1e10 + 0.01, 2).words[0]?.message).toContain('the most is 10000000000.00 XTS');
  });

  it('is not judged while its currency is not known', () => {
    const fail = () => {
      throw new Error('something was reported');
    };
    expect(resolveMoney(1.23456, null, { source: 'board', path: [] }, fail)).toBeNull();
  });

  it('is zero for nothing', () => {
    expect(moneyOf(0, 2).money).toBe(minorUnits(0));
  });
});

describe('a rounded number', () => {
  it.each([
    [2, 1.005, 1.01],
    [2, 1.004, 1],
    [0, 0.5, 1],
    [3, 12.3456, 12.346],
    [2, 7, 7],
    [2, 1e21, 1e21],
  ])('to %d decimals, %d is %d', (decimals, value, rounded) => {
    expect(roundedTo(decimals, value)).toBe(rounded);
  });
});

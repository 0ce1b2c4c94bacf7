import { describe, expect, it } from 'vitest';

import { plainNumber, plainRange } from '../../../../src/reading/typed/plain-number.js';

describe('plainNumber', () => {
  it.each([
    ['9V', 'V', '9'],
    ['9 volts', 'V', '9'],
    ['9500mV', 'V', '9.5'],
    ['300 mA', 'mA', '300'],
    ['0.3A', 'mA', '300'],
    ['.3 A', 'mA', null],
    ['1.5 Amps', 'mA', '1500'],
    ['250 µA', 'mA', '0.25'],
    ['-5 mA', 'mA', '-5'],
    ['18 W', 'W', '18'],
    ['500 mW', 'W', '0.5'],
    ['120 %', 'factor', '1.2'],
    ['1.2x', 'factor', '1.2'],
    ['€119.00', 'money', '119'],
    ['119,50 €', 'money', '119.5'],
    ['EUR 119.5', 'money', '119.5'],
    ['3', 'count', '3'],
    ['12,5', 'mA', '12.5'],
    ['1,800', 'mA', null],
    ['0,015 A', 'mA', '15'],
    ['1.0001 mA', 'mA', null],
    ['9 V DC', 'V', null],
    ['300 V', 'mA', null],
    ['about 9', 'V', null],
    ['', 'V', null],
    ['9'.repeat(40), 'V', null],
  ] as const)('%s in %s is %s', (text, unit, number) => {
    expect(plainNumber(text, unit)).toBe(number);
  });
});

describe('plainRange', () => {
  it.each([
    ['9-18', '{from: 9, to: 18}'],
    ['100 - 240 V', '{from: 100, to: 240}'],
    ['9V to 12.5V', '{from: 9, to: 12.5}'],
    ['9–18', '{from: 9, to: 18}'],
    ['9', null],
    ['9-12-18', null],
  ])('%s is %s', (text, range) => {
    expect(plainRange(text)).toBe(range);
  });
});

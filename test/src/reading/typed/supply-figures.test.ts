import { describe, expect, it } from 'vitest';

import { typedInput, typedMains, typedSetting, typedTotal } from '../../../../src/reading/typed/supply-figures.js';

describe('the mains that a supply takes', () => {
  it.each([
    ['230 V', 230],
    ['AC 100-240V ~ 50/60 Hz', { from: 100, to: 240 }],
    ['230V~50Hz', 230],
  ])('%s', (text, value) => {
    expect(typedMains(text)).toEqual({ kind: 'said', value });
  });

  it('may be unknown', () => {
    expect(typedMains('?')).toEqual({ kind: 'unknown' });
  });

  it.each(['~', '50 Hz', '120/230 V', 'the usual'])('%s is not clear', (text) => {
    expect(typedMains(text)).toMatchObject({ kind: 'unclear' });
  });
});

describe('what a supply stands on', () => {
  it.each([
    ['100-240 V', { mains: { from: 100, to: 240 } }],
    ['74 Wh', { wattHours: 74 }],
    ['19.5Wh', { wattHours: 19.5 }],
    ['12 V DC 600 mA', { inlet: { volts: 12, milliamps: 600, power: 'DC' } }],
    ['5V 0.9A', { inlet: { volts: 5, milliamps: 900, power: null } }],
    ['AC 100-240 V', { mains: { from: 100, to: 240 } }],
    ['120 V', { mains: 120 }],
  ])('%s', (text, value) => {
    expect(typedInput(text)).toEqual({ kind: 'said', value });
  });

  it.each(['0 Wh', 'many Wh', '20000 mAh', '50 Hz', '12 V', '9-12 V 500 mA'])('%s is not clear', (text) => {
    expect(typedInput(text)).toMatchObject({ kind: 'unclear' });
  });

  it('may be unknown', () => {
    expect(typedInput('?')).toEqual({ kind: 'unknown' });
  });
});

describe('what an output gives at most', () => {
  it.each([
    ['9 V 400 mA', { volts: 9, milliamps: 400, power: null }],
    ['9V ⎓ 0.4 A', { volts: 9, milliamps: 400, power: 'DC' }],
    ['12V AC 12 W', { volts: 12, milliamps: 1000, power: 'AC' }],
  ])('%s', (text, value) => {
    expect(typedSetting(text)).toEqual({ kind: 'said', value });
  });

  it.each(['?', '', '9 V', '400 mA', '9-12 V 400 mA', '9/12 V 400 mA', '9 V 0 mA'])('%j is not clear', (text) => {
    expect(typedSetting(text)).toMatchObject({ kind: 'unclear' });
  });
});

describe('what all outputs give together', () => {
  it.each([
    ['1800 mA', { milliamps: 1800 }],
    ['1.8 A', { milliamps: 1800 }],
    ['18 W', { watts: 18 }],
  ])('%s', (text, value) => {
    expect(typedTotal(text)).toEqual({ kind: 'said', value });
  });

  it.each(['none', 'No', '?', ''])('%j says that nothing is stated', (text) => {
    expect(typedTotal(text)).toEqual({ kind: 'unknown' });
  });

  it.each(['1800', '0 W', '18 VA', 'plenty'])('%s is not clear', (text) => {
    expect(typedTotal(text)).toMatchObject({ kind: 'unclear' });
  });
});

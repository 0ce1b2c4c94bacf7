import { describe, expect, it } from 'vitest';

import { headingOf, mayBeLimit, tableKindOf } from '../../../../src/reading/csv/headings.js';

describe('a heading', () => {
  it.each([
    ['SKU', 'id'],
    ['Article', 'name'],
    ['In stock', 'stock'],
    ['Price (EUR)', 'price'],
    ['Price €', 'price'],
    ['Voltage (V)', 'volts'],
    ['Output current', 'milliamps'],
    ['Output mA', 'milliamps'],
    ['Total mA', 'totalMilliamps'],
    ['Total W', 'totalWatts'],
    ['TOTAL_MILLIAMPS', 'totalMilliamps'],
    ['Plug', 'plug'],
    ['No-load volts', 'openCircuitVolts'],
    ['Notes', 'remark'],
  ])('of a shop: %s is %s', (text, key) => {
    expect(headingOf('supplies', text)?.key).toBe(key);
  });

  it.each([
    ['Pedal', 'name'],
    ['V', 'volts'],
    ['Current draw', 'milliamps'],
    ['mA', 'milliamps'],
    ['Plug', 'inlet'],
    ['DC jack', 'inlet'],
  ])('of pedals: %s is %s', (text, key) => {
    expect(headingOf('pedals', text)?.key).toBe(key);
  });

  it.each(['Colour', 'Current', 'Amps', 'Max current', 'Power (W)', 'Price each way', 'Stock (V)'])(
    'of a shop that is not plain is not taken: %s',
    (text) => {
      expect(headingOf('supplies', text)).toBeNull();
    },
  );

  it('says of figures without a unit that they are amps, or leaves it open', () => {
    expect(headingOf('pedals', 'Current (A)')).toEqual({ key: 'milliamps', unit: 'A', isVague: false });
    expect(headingOf('pedals', 'Amps')).toEqual({ key: 'milliamps', unit: 'A', isVague: false });
    expect(headingOf('pedals', 'Current (mA)')).toEqual({ key: 'milliamps', unit: null, isVague: false });
    expect(headingOf('pedals', 'Milliamps')).toEqual({ key: 'milliamps', unit: null, isVague: false });
    expect(headingOf('pedals', 'Current')).toEqual({ key: 'milliamps', unit: null, isVague: true });
  });

  it('that speaks of electricity may be a limit', () => {
    for (const text of ['Max A', 'Peak amps', 'Load', 'Sum of outputs', 'VA']) expect(mayBeLimit(text)).toBe(true);
    for (const text of ['Colour', 'Shelf', 'EAN', 'Brand', 'Remark']) expect(mayBeLimit(text)).toBe(false);
  });
});

describe('a table', () => {
  it('is of the kind whose headings it has', () => {
    expect(tableKindOf(['SKU', 'Article', 'Price', 'Outputs', 'Voltage', 'Output current'])).toBe('supplies');
    expect(tableKindOf(['Pedal', 'V', 'mA', 'Digital'])).toBe('pedals');
    expect(tableKindOf(['name', 'volts', 'milliamps'])).toBe('pedals');
  });
});

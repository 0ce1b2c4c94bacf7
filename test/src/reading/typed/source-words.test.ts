import { expect, test } from 'vitest';

import { batterySet, voltsOfBattery } from '../../../../src/reading/typed/source-words.js';

test.each([
  ['block', { type: '9V-block', count: 1 }],
  ['2 × PP3', { type: '9V-block', count: 2 }],
  ['9 V battery x 2', { type: '9V-block', count: 2 }],
  ['6AA', { type: 'AA', count: 6 }],
  ['AAA x4', { type: 'AAA', count: 4 }],
])('%s', (text, set) => {
  expect(batterySet(text)).toEqual(set);
});

test.each(['AA', '0xAA', '2xAA x3', 'battery', ''])('%j is no set', (text) => {
  expect(batterySet(text)).toBeNull();
});

test('a block has nine volts, a cell one and a half', () => {
  expect([voltsOfBattery('9V-block'), voltsOfBattery('AA'), voltsOfBattery('AAA')]).toEqual([9, 1.5, 1.5]);
});

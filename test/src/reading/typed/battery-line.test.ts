import { expect, test } from 'vitest';

import { typedBattery } from '../../../../src/reading/typed/battery-line.js';

test.each<[string, object]>([
  ['9v block', { type: '9V-block', count: 1, volts: 9, milliampHours: 500, isUsual: true }],
  ['2 x 9v block', { type: '9V-block', count: 2, volts: 9, milliampHours: 500, isUsual: true }],
  ['9v block x3 550 mAh', { type: '9V-block', count: 3, volts: 9, milliampHours: 550, isUsual: false }],
  ['12xAA', { type: 'AA', count: 12, volts: 1.5, milliampHours: 2000, isUsual: true }],
  ['12 x AA 1.2V 2.1Ah', { type: 'AA', count: 12, volts: 1.2, milliampHours: 2100, isUsual: false }],
  ['4xAAA batteries', { type: 'AAA', count: 4, volts: 1.5, milliampHours: 1000, isUsual: true }],
])('%s', (text, value) => {
  expect(typedBattery(text)).toEqual({ kind: 'said', value });
});

test('nothing at all is none', () => {
  expect(typedBattery(' ')).toEqual({ kind: 'unknown' });
});

test.each(['AA', 'two of them', '6xAA 9v block', '6xAA 1.5v 1.2v', '6xAA 300mA', '6xAA 0 mAh', '0xAA'])(
  '%s is not clear',
  (text) => {
    expect(typedBattery(text)).toMatchObject({ kind: 'unclear' });
  },
);

import { expect, test } from 'vitest';

import { figuresOf } from '../../../../src/web/board/figures.js';

const figures = (stated: Readonly<Record<string, unknown>>): readonly string[] =>
  figuresOf({ index: 0, id: '', name: String(stated['name']), open: [], stated });

test('what a pedal takes when it starts stands beside what it draws', () => {
  expect(figures({ name: 'Plover', milliamps: 280, startup: 410 })).toEqual(['280 mA', '410 mA when it starts']);
});

test('the volts that a pedal prefers stand beside those that it takes', () => {
  expect(figures({ name: 'Plover', volts: { from: 9, to: 12 }, prefers: 12 })).toEqual(['9 to 12 V', 'prefers 12 V']);
});

test('a draw that is a guess says so', () => {
  expect(figures({ name: 'Gorse', milliamps: 90, figure: 'guess' })).toEqual(['90 mA, a guess']);
  expect(figures({ name: 'Gorse', milliamps: { 9: 90 }, figure: 'guess' })).toEqual(['90 mA at 9 V, a guess']);
  expect(figures({ name: 'Gorse', milliamps: 90, figure: 'label' })).toEqual(['90 mA']);
});

test('what a pedal is like says whether its name tells it, so that a slip is seen', () => {
  expect(figures({ name: 'Wigeon octave', volts: 9, digital: true })).toEqual(['9 V', 'digital, as its name says']);
  expect(figures({ name: 'Gorse drive', highGain: true })).toEqual(['high gain, as its name says']);
  expect(figures({ name: 'Gorse', highGain: true, digital: true })).toEqual(['digital', 'high gain']);
  expect(figures({ name: 'Wigeon octave', digital: false })).toEqual([]);
});

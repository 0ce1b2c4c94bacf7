import { expect, test } from 'vitest';

import { figuresOf } from '../../../../src/web/board/figures.js';

const figures = (stated: Readonly<Record<string, unknown>>): readonly string[] =>
  figuresOf({ index: 0, id: '', name: String(stated['name']), open: [], stated });

test('what a pedal is like says whether its name tells it, so that a slip is seen', () => {
  expect(figures({ name: 'Wigeon octave', volts: 9, digital: true })).toEqual(['9 V', 'digital, as its name says']);
  expect(figures({ name: 'Gorse drive', highGain: true })).toEqual(['high gain, as its name says']);
  expect(figures({ name: 'Gorse', highGain: true, digital: true })).toEqual(['digital', 'high gain']);
  expect(figures({ name: 'Wigeon octave', digital: false })).toEqual([]);
});

import { describe, expect, it, test } from 'vitest';

import {
  flagSaid,
  mainsVolts,
  plainWord,
  polarityWord,
  saysUnknown,
  voltsAndPower,
} from '../../../../src/reading/csv/cell-words.js';

test('yes and no in the ways in which tables have them; all else is neither', () => {
  for (const text of ['yes', 'Y', 'ja', 'X', '1', 'TRUE', '✓']) expect(flagSaid(text)).toBe(true);
  for (const text of ['no', 'N', 'Nein', '0', 'false']) expect(flagSaid(text)).toBe(false);
  for (const text of ['perhaps', '-', '2', 'yes, but', '']) expect(flagSaid(text)).toBeNull();
});

test('a word of a few, whatever its capitals', () => {
  expect(['Negative', 'dc', 'AC', 'High Gain'].map(plainWord)).toEqual(['negative', 'DC', 'AC', 'high-gain']);
});

test('a polarity in other words; what is none stays what it is', () => {
  for (const text of ['centre negative', 'Center-Negative', 'tip negative', 'negative centre'])
    expect(polarityWord(text)).toBe('centre-negative');
  expect(polarityWord('Center positive')).toBe('centre-positive');
  expect(polarityWord('Either')).toBe('either');
  for (const text of ['negative', '-', 'sleeve negative', 'centre']) expect(polarityWord(text)).toBe(text);
});

test('not knowing is said, not left out, and a dash may be a minus', () => {
  for (const text of ['?', 'unknown', 'Not sure', 'n/a']) expect(saysUnknown(text)).toBe(true);
  for (const text of ['', '-', '--', '9', 'none']) expect(saysUnknown(text)).toBe(false);
});

describe('volts and what stands beside them', () => {
  it.each([
    ['9 V DC', '9 V', 0, 'DC'],
    ['9VDC', '9V', 0, 'DC'],
    ['DC 9/12 V', '9/12 V', 3, 'DC'],
    ['9V ⎓', '9V', 0, 'DC'],
    ['9 V~', '9 V', 0, 'AC'],
    ['9 V', '9 V', 0, null],
    ['DC', 'DC', 0, 'DC'],
  ])('%s', (text, volts, shift, power) => {
    expect(voltsAndPower({ text, offset: 10 })).toEqual({ cell: { text: volts, offset: 10 + shift }, power });
  });

  it.each([
    ['AC 100-240 V ~ 50/60 Hz', '100-240 V', 3],
    ['100–240V, 50 Hz', '100–240V', 0],
    ['230', '230', 0],
  ])('of the mains: %s', (text, volts, shift) => {
    expect(mainsVolts({ text, offset: 10 })).toEqual({ text: volts, offset: 10 + shift });
  });
});

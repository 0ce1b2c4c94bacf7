import { describe, expect, it } from 'vitest';

import { didYouMean, nearSpelling } from '../../../src/domain/near-spelling.js';

const words = ['volts', 'milliamps', 'startup', 'name', 'DC', 'AC'];

describe('nearSpelling', () => {
  it.each([
    ['volt', 'volts'],
    ['vlots', 'volts'],
    ['Volts', 'volts'],
    ['miliamp', 'milliamps'],
    ['nmae', 'name'],
    ['dc', 'DC'],
    ['xy', null],
    ['polarity', null],
    ['', null],
    ['x'.repeat(10_000), null],
  ])('%s is near %s', (word, near) => {
    expect(nearSpelling(word, words)).toBe(near);
  });

  it('takes the nearest, and the first of equally near ones', () => {
    expect(nearSpelling('quay-7', ['quay-67', 'quay-6', 'quay-8'])).toBe('quay-67');
    expect(nearSpelling('quay-7', ['quay-6', 'quay-8'])).toBe('quay-6');
  });
});

describe('didYouMean', () => {
  it('is nothing without a near spelling', () => {
    expect(didYouMean('volt', words)).toBe('Did you mean volts?');
    expect(didYouMean('zzz', words)).toBeNull();
  });
});

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

describe('a near spelling', () => {
  it('differs in one letter of up to three, in two of up to eight, in a third of more', () => {
    expect(nearSpelling('fan', ['fin'])).toBe('fin');
    expect(nearSpelling('fan', ['fig'])).toBeNull();
    expect(nearSpelling('fuzz', ['fuss'])).toBe('fuss');
    expect(nearSpelling('fuzz', ['foss'])).toBeNull();
    expect(nearSpelling('estuaryy', ['estuarxx'])).toBe('estuarxx');
    expect(nearSpelling('estuaryy', ['estuaxxx'])).toBeNull();
    expect(nearSpelling('estuaryyy', ['estuaryxx'])).toBe('estuaryxx');
    expect(nearSpelling('estuaryyy', ['estuarxxx'])).toBe('estuarxxx');
    expect(nearSpelling('estuaryyy', ['estuaxxxx'])).toBeNull();
  });

  it('keeps a letter at least', () => {
    expect(nearSpelling('a', ['b'])).toBeNull();
    expect(nearSpelling('a', ['A'])).toBe('A');
    expect(nearSpelling('a', ['ab'])).toBe('ab');
    expect(nearSpelling('ab', ['b'])).toBeNull();
  });

  it('is not looked for where a word has more than a hundred letters', () => {
    expect(nearSpelling('x'.repeat(100), ['x'.repeat(99)])).toBe('x'.repeat(99));
    expect(nearSpelling('x'.repeat(101), ['x'.repeat(100)])).toBeNull();
  });
});

describe('didYouMean', () => {
  it('is nothing without a near spelling', () => {
    expect(didYouMean('volt', words)).toBe('Did you mean volts?');
    expect(didYouMean('zzz', words)).toBeNull();
  });
});

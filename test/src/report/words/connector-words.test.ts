import { expect, test } from 'vitest';

import { connectorText, inTrade } from '../../../../src/report/words/connector-words.js';

test.each([
  ['barrel-2.1', '2.1 mm barrel'],
  ['barrel-2.5', '2.5 mm barrel'],
  ['jack-3.5', '3.5 mm jack'],
  ['usb-a', 'USB-A'],
  ['usb-micro', 'micro USB'],
  ['din-5', 'din-5'],
  ['barrel-of-mine', 'barrel-of-mine'],
  ['odd\u202Eplug', 'odd\\u{202e}plug'],
])('%s is a %s', (name, words) => {
  expect(connectorText(name)).toBe(words);
});

test('a sentence that speaks of them has the same words, and all else as it is', () => {
  expect(inTrade('flip fits barrel-2.1; box output 1 offers jack-3.5.')).toBe(
    'flip fits 2.1 mm barrel; box output 1 offers 3.5 mm jack.',
  );
  expect(inTrade('2 × 9V-block, fan-5 and old-barrel-2.1-box')).toBe('2 × 9 V block, fan-5 and old-barrel-2.1-box');
});

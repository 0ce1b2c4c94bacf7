import { expect, test } from 'vitest';

import { connectorText } from '../../../../src/report/words/connector-words.js';

test.each([
  ['barrel-2.1', '2.1 mm barrel'],
  ['barrel-2.5', '2.5 mm barrel'],
  ['jack-3.5', '3.5 mm jack'],
  ['usb-a', 'USB-A'],
  ['din-5', 'din-5'],
  ['barrel-of-mine', 'barrel-of-mine'],
  ['odd\u202Eplug', 'odd\\u{202e}plug'],
])('%s is a %s', (name, words) => {
  expect(connectorText(name)).toBe(words);
});

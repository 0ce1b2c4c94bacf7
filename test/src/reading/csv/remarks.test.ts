import { expect, test } from 'vitest';

import { remarkOf } from '../../../../src/reading/csv/remarks.js';

test('a remark is read when it says one thing and nothing else', () => {
  expect(remarkOf('5 tails')).toEqual({ tails: 5 });
  expect(remarkOf('Switch on each')).toEqual({ switch: 'each' });
  expect(remarkOf('one switch for all')).toEqual({ switch: 'together' });
  expect(remarkOf('Reverses')).toEqual({ reverses: true });
  expect(remarkOf('series lead')).toEqual({ joins: 'series' });
});

test('half of a sentence is never read', () => {
  for (const text of ['the 5-way box', 'does not reverse', 'switch on each but the last', '5 tails, 2 broken', ''])
    expect(remarkOf(text)).toBeNull();
});

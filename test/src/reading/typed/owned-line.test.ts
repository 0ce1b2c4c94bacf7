import { expect, test } from 'vitest';

import { ownedLine } from '../../../../src/reading/typed/owned-line.js';

test.each([
  ['old box 6 isolated 9v 150', 'supply'],
  ['9v block', 'battery'],
  ['12 x AA 2000 mAh', 'battery'],
  ['chain of two', 'lead'],
  ['reversing lead', 'lead'],
  ['wall adapter 9v 500 2.1 mm barrel', 'supply'],
  ['something', 'unclear'],
])('%s is a %s', (text, kind) => {
  expect(ownedLine(text)).toMatchObject({ kind });
});

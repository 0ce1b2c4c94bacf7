import { expect, it } from 'vitest';

import { rangeEnds } from '../../../../src/reading/typed/range-ends.js';

it.each([
  ['9-18', '9', '18', 2],
  ['9 V – 18 V', '9 V', '18 V', 6],
  ['100 to 240', '100', '240', 7],
  ['1.5..2.5', '1.5', '2.5', 5],
  ['9...18', '9', '18', 4],
  ['9…18', '9', '18', 2],
  ['9-12-18', '9', '12-18', 2],
])('%s', (text, from, to, toOffset) => {
  expect(rangeEnds(text)).toEqual({ from, to, toOffset });
});

it.each(['', '9', '9.6', '-9', '9-', '9/18', 'from 9', '9 - V'])('%j is no range', (text) => {
  expect(rangeEnds(text)).toBeNull();
});

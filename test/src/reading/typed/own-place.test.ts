import { expect, it } from 'vitest';

import { typedOwnPlace } from '../../../../src/reading/typed/own-place.js';

it.each([
  ['own', 'adapter'],
  [' Own adapter ', 'adapter'],
  ['its own adaptor', 'adapter'],
  ['adapter', 'adapter'],
  ['battery', 'battery'],
  ['its batteries', 'battery'],
  ['on a battery', 'battery'],
  ['Block', 'battery'],
  ['', null],
  ['3', null],
  ['a3', null],
  ['own 3', null],
  ['owner', null],
] as const)('%j is %j', (text, place) => {
  expect(typedOwnPlace(text)).toBe(place);
});

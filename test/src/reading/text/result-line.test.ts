import { expect, it } from 'vitest';

import { isTornResult, resultIn } from '../../../../src/reading/text/result-line.js';

const line = { file: 'a.yaml', hash: 'f00', status: 'proven' };

it.each<[string, object | null]>([
  [JSON.stringify(line), line],
  [JSON.stringify({ ...line, hash: null, comparison: {} }), { ...line, hash: null }],
  [JSON.stringify({ ...line, hash: 1 }), null],
  [JSON.stringify({ file: 'a.yaml', hash: null }), null],
  [JSON.stringify([line]), null],
  ['null', null],
  ['{"file":"a.ya', null],
])('%s', (text, expected) => {
  expect(resultIn(text)).toEqual(expected);
});

it.each([
  ['', true],
  ['{"fi', true],
  ['{"file":"a.ya', true],
  ['{"file" :', false],
  ['notes', false],
])('whether %j may be the beginning of one: %s', (text, expected) => {
  expect(isTornResult(text)).toBe(expected);
});

import { expect, test } from 'vitest';

import { remembering } from '../../../../src/web/document/remembering.js';

test('what was asked lately is not worked out again, and what was asked long ago is forgotten', () => {
  const worked: string[] = [];
  const upper = remembering((text) => {
    worked.push(text);
    return text.toUpperCase();
  }, 2);
  expect(['a', 'b', 'a', 'b', 'c', 'b', 'a'].map(upper)).toEqual(['A', 'B', 'A', 'B', 'C', 'B', 'A']);
  expect(worked).toEqual(['a', 'b', 'c', 'a']);
});

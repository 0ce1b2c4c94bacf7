import { expect, it } from 'vitest';

import { contentHash } from '../../../../../src/node/cli/folder/content-hash.js';

it('a hash tells texts apart, and where one ends and the next begins', () => {
  expect(contentHash('a', 'bc')).toBe(contentHash('a', 'bc'));
  expect(contentHash('a', 'bc')).not.toBe(contentHash('ab', 'c'));
});

import { expect, test } from 'vitest';

import { ownedLine } from '../../../../src/reading/typed/owned-line.js';
import { ownedWords } from '../../../../src/web/supplies/owned-words.js';

test.each(ownedWords.flatMap(({ examples }) => examples))('%s is understood', (example) => {
  expect(ownedLine(example).kind).not.toBe('unclear');
});

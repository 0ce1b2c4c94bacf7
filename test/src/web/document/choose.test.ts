import { expect, test } from 'vitest';

import { besideOthers, choosing } from '../../../../src/web/document/choose.js';
import { begunWith, changedTo } from '../../../../src/web/document/history.js';
import { emptyDocument } from '../../../../src/web/document/page-document.js';

test('choices are pinned beside others and taken off again, in the order in which they were', () => {
  const two = besideOthers('b')(besideOthers('a')(emptyDocument));
  expect(two.beside).toEqual(['a', 'b']);
  expect(besideOthers('a')(two).beside).toEqual(['b']);
});

test('what is looked at is no step to take back', () => {
  const looked = changedTo(begunWith(emptyDocument), choosing('a')(emptyDocument));
  expect(looked.past).toEqual([]);
  expect(looked.present.chosen).toBe('a');
});

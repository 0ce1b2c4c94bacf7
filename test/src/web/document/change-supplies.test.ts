import { expect, test } from 'vitest';

import { boardData } from '../../../../src/web/document/board-data.js';
import {
  meaningOf,
  owningAnother,
  owningOneLess,
  settingIn,
  withSetting,
} from '../../../../src/web/document/change-supplies.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';

const says = ({ board }: PageDocument, ...path: [string] | [string, string]): unknown =>
  settingIn(boardData(board.text), path);

test('a setting is said by the file, and goes from it again', () => {
  const set = withSetting(['policy', 'budget'], 120)(emptyDocument);
  expect(says(set, 'policy', 'budget')).toBe(120);
  expect(says(withSetting(['policy', 'budget'], undefined)(set), 'policy', 'budget')).toBeUndefined();
});

test('what is owned is counted up and down, by id or by name', () => {
  const two = owningAnother('supply', 'quay-6')(owningAnother('supply', 'quay-6')(emptyDocument));
  expect(says(two, 'owned', 'supplies')).toEqual(['quay-6', 'quay-6']);
  expect(says(owningOneLess('supply', 'quay-6')(two), 'owned', 'supplies')).toEqual(['quay-6']);
  const named = withSetting(['owned'], { parts: { 'Reversing lead': 1 } })(emptyDocument);
  const more = owningAnother('part', 'reversing-lead')(named);
  expect(says(more, 'owned', 'parts')).toEqual({ 'Reversing lead': 2 });
  expect(says(owningOneLess('part', 'reversing-lead')(more), 'owned', 'parts')).toEqual({ 'Reversing lead': 1 });
});

test('batteries are counted in a list of their own', () => {
  const two = owningAnother('battery', 'block')(owningAnother('battery', 'block')(emptyDocument));
  expect(says(two, 'owned')).toEqual({ ...(says(emptyDocument, 'owned') as object), batteries: { block: 2 } });
  expect(says(owningOneLess('battery', 'block')(two), 'owned', 'batteries')).toEqual({ block: 1 });
});

test('what a column holds is remembered until it is taken back', () => {
  const said = meaningOf('Preis', 'price')(emptyDocument);
  expect(said.meanings).toEqual({ Preis: 'price' });
  expect(meaningOf('Preis', '')(said).meanings).toEqual({});
});

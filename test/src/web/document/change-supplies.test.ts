import { expect, test } from 'vitest';

import { supplyLine } from '../../../../src/reading/typed/supply-line.js';
import { boardData } from '../../../../src/web/document/board-data.js';
import {
  labelAgrees,
  meaningOf,
  owningAnother,
  owningOneLess,
  owningTyped,
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

test('a typed supply is described by the board and owned', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const owned = owningTyped(read.draft, read.taken)(emptyDocument);
  expect(says(owned, 'owned', 'supplies')).toEqual(['old-box']);
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ name: 'Old box', total: { milliamps: 1500 } }]);
});

test('what was taken of a typed supply stands in the file beside it until its label is read, and all else stays', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const text = `# mine\n${emptyDocument.board.text}gear:\n  supplies:\n    # kept apart\n    - {name: Other, assumed: [plug]}\n`;
  const owned = owningTyped(read.draft, read.taken)({ ...emptyDocument, board: { file: 'b.yaml', text } });
  const taken = ['polarity', 'plug', 'regulated'];
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', assumed: taken }]);
  const agreed = labelAgrees('old-box')(owned);
  expect(agreed.board.text).toContain('    # kept apart\n');
  expect(says(agreed, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', total: {} }]);
  expect(agreed.board.text.match(/assumed/g)).toHaveLength(1);
  const plain = supplyLine('Box 9v 500 neg regulated barrel-2.1');
  if (plain.kind === 'unclear') throw new Error(plain.faults.join(' '));
  expect(owningTyped(plain.draft, plain.taken)(emptyDocument).board.text).not.toContain('assumed');
});

test('what a column holds is remembered until it is taken back', () => {
  const said = meaningOf('Preis', 'price')(emptyDocument);
  expect(said.meanings).toEqual({ Preis: 'price' });
  expect(meaningOf('Preis', '')(said).meanings).toEqual({});
});

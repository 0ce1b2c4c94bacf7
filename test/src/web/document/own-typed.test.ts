import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { ownedLine } from '../../../../src/reading/typed/owned-line.js';
import { supplyLine } from '../../../../src/reading/typed/supply-line.js';
import { boardData } from '../../../../src/web/document/board-data.js';
import { labelAgrees, settingIn } from '../../../../src/web/document/change-supplies.js';
import { idTyped, owningTyped } from '../../../../src/web/document/own-typed.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { withLineEntered } from '../../../../src/web/document/type-pedal.js';

const says = ({ board }: PageDocument, ...path: [string] | [string, string]): unknown =>
  settingIn(boardData(board.text), path);

const told = (text: string) => {
  const read = ownedLine(text);
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  return read;
};

test('a typed supply is described by the board and owned', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const owned = owningTyped(read)(emptyDocument);
  expect(says(owned, 'owned', 'supplies')).toEqual(['old-box']);
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ name: 'Old box', total: { milliamps: 1500 } }]);
});

test('what was taken of a typed supply stands in the file beside it until its label is read, and all else stays', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const text = `# mine\n${emptyDocument.board.text}gear:\n  supplies:\n    # kept apart\n    - {name: Other, assumed: [plug]}\n`;
  const owned = owningTyped(read)({ ...emptyDocument, board: { file: 'b.yaml', text } });
  const taken = ['polarity', 'plug', 'regulated'];
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', assumed: taken }]);
  const agreed = labelAgrees('old-box')(owned);
  expect(agreed.board.text).toContain('    # kept apart\n');
  expect(says(agreed, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', total: {} }]);
  expect(agreed.board.text.match(/assumed/g)).toHaveLength(1);
  const plain = supplyLine('Box 9v 500 neg regulated barrel-2.1');
  if (plain.kind === 'unclear') throw new Error(plain.faults.join(' '));
  expect(owningTyped(plain)(emptyDocument).board.text).not.toContain('assumed');
});

test.each([
  ['2 x chain of two', 'parts', { 'chain-of-two': 2 }, { name: 'chain of two', tails: 2, fits: 'barrel-2.1' }],
  ['reversing lead', 'parts', { 'reversing-lead': 1 }, { name: 'reversing lead', reverses: true }],
  ['12 x AA 2000 mAh', 'batteries', { 'aa-2000-mah': 12 }, { name: 'AA 2000 mAh', type: 'AA', volts: 1.5 }],
] as const)('%s is described, counted and read again', (line, list, counts, entry) => {
  const { board } = owningTyped(told(line))(withLineEntered({ ...emptyDocument, line: 'Wren drive 9v 10' }));
  const { gear, owned } = boardData(board.text);
  expect(gear).toMatchObject({ [list]: [entry] });
  expect(owned).toMatchObject({ [list]: counts });
  expect(Object.keys(counts)).toEqual([idTyped(told(line))]);
  const read = inputsFromText(board, null);
  expect(read.kind === 'faulty' ? read.faults : []).toEqual([]);
});

test('a supply that hangs on another one is described with its inlet', () => {
  const owned = owningTyped(told('step 9v 300, fed from 5 V 900 mA pos usb-a'))(emptyDocument);
  expect(says(owned, 'gear', 'supplies')).toMatchObject([
    { name: 'step', inlet: { power: 'DC', plug: 'usb-a', polarity: 'centre-positive', volts: 5, milliamps: 900 } },
  ]);
});

test('a text without room stays as it is', () => {
  const closed = { ...emptyDocument, board: { file: 'b.yaml', text: 'gear: none\n' } };
  expect(owningTyped(told('chain of 5'))(closed)).toBe(closed);
});

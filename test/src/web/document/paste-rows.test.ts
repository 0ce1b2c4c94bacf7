import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { boardData, statedPedals } from '../../../../src/web/document/board-data.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { withRows } from '../../../../src/web/document/paste-rows.js';

const pedalsOf = ({ board }: PageDocument) => statedPedals(boardData(board.text)).map(({ stated }) => stated);
const isRight = ({ board }: PageDocument): boolean => inputsFromText(board, null).kind === 'read';

test('rows without headings read like typed lines; what is none is told and the rest taken', () => {
  const { document, refused } = withRows(
    emptyDocument,
    'Moth delay\t9 V\t300 mA\r\n\r\nRuff tuner\t9V DC\t30 mA\nMoth delay\t9V\n',
  );
  expect(pedalsOf(document)).toMatchObject([
    { name: 'Moth delay', volts: 9, milliamps: 300, digital: true },
    { name: 'Ruff tuner', power: 'DC', volts: 9, milliamps: 30 },
  ]);
  expect(refused).toEqual(['Moth delay, 9V: That name is there already: add a word that tells them apart.']);
  expect(isRight(document)).toBe(true);
});

test('rows below headings are read as a table is; what they leave out is not known', () => {
  const rows = [
    'Name\tVoltage\tCurrent (mA)\tPolarity',
    'Moth delay\t9\t300\tcentre negative',
    'Wick drive\t9/18\t12\t',
    'Bad\tnine\t1\t',
  ];
  const { document, refused } = withRows({ ...emptyDocument, line: 'half a li' }, rows.join('\n'));
  expect(pedalsOf(document)).toMatchObject([
    { name: 'Moth delay', volts: 9, milliamps: 300, polarity: 'centre-negative' },
    { name: 'Wick drive', volts: [9, 18], milliamps: 12, polarity: 'unknown' },
  ]);
  expect(refused.join()).toContain('left out "Bad"');
  expect(document.line).toBe('half a li');
  expect(isRight(document)).toBe(true);
});

test('pasting twice adds nothing and says so', () => {
  const rows = 'Name\tVoltage\tCurrent (mA)\nMoth delay\t9\t300';
  const once = withRows(emptyDocument, rows).document;
  const twice = withRows(once, rows);
  expect(twice.document.board.text).toBe(once.board.text);
  expect(twice.refused).toEqual(['Moth delay: that name is there already.']);
});

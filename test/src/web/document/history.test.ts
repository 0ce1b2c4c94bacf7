import { expect, test } from 'vitest';

import { begunWith, changedTo, redone, undone, type History } from '../../../../src/web/document/history.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';

const named = (text: string): PageDocument => ({ ...emptyDocument, board: { file: 'a.yaml', text } });
const typing = (line: string, document: PageDocument): PageDocument => ({ ...document, line });
const texts = ({ past, present, future }: History): readonly (readonly string[])[] =>
  [past, [present], future].map((documents) => documents.map(({ board }) => board.text));

const three = ['two', 'three'].reduce((history, text) => changedTo(history, named(text)), begunWith(named('one')));

test('each change can be taken back, and back again', () => {
  expect(texts(three)).toEqual([['one', 'two'], ['three'], []]);
  expect(texts(undone(undone(three)))).toEqual([[], ['one'], ['two', 'three']]);
  expect(texts(redone(undone(undone(three))))).toEqual([['one'], ['two'], ['three']]);
  expect(redone(redone(undone(undone(three))))).toEqual(three);
});

test('where there is nothing before or behind, nothing happens', () => {
  expect(undone(begunWith(named('one')))).toEqual(begunWith(named('one')));
  expect(redone(three)).toEqual(three);
});

test('a change after taking back leaves what was taken back behind', () => {
  expect(texts(changedTo(undone(three), named('other')))).toEqual([['one', 'two'], ['other'], []]);
});

test('keys on the line are no steps of their own, and what was taken back stays', () => {
  const { present } = undone(three);
  const lines = ['m', 'mo'].reduce((history, line) => changedTo(history, typing(line, present)), undone(three));
  expect(lines.present.line).toBe('mo');
  expect(texts(lines)).toEqual([['one'], ['two'], ['three']]);
  expect(texts(changedTo(lines, { ...lines.present, ownedLine: 'old box' }))).toEqual([['one'], ['two'], ['three']]);
});

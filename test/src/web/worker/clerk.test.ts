import { readFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';

import { expect, test } from 'vitest';

import { emptyDocument, type HeldFile } from '../../../../src/web/document/page-document.js';
import { createClerk } from '../../../../src/web/worker/clerk.js';
import type { News, Question } from '../../../../src/web/worker/messages.js';

const fixtures = resolve(import.meta.dirname, '../../../../fixtures');
const held = async (path: string): Promise<HeldFile> => ({
  file: basename(path),
  text: await readFile(resolve(fixtures, path), 'utf8'),
});
const gigBoard = await held('boards/gig-board.yaml');
const marramStreet = await held('shops/marram-street.yaml');

/** A clerk whose news are sent as to another thread: what cannot be sent fails. */
function listening() {
  const news: News[] = [];
  let now = 0;
  const take = createClerk({ post: (one) => news.push(structuredClone(one)), now: () => (now += 1) });
  const ask = async (question: Partial<Question>): Promise<void> =>
    take({ kind: 'ask', question: { ...emptyDocument, about: 1, ...question } });
  return { news, ask, stop: async () => take({ kind: 'stop' }) };
}

test('a board is answered to its proof, with the words and the drawings of the reports', async () => {
  const { news, ask } = listening();
  await ask({ about: 7, board: gigBoard, shop: marramStreet });
  expect(news.every(({ about }) => about === 7)).toBe(true);
  expect(news.map(({ kind }) => kind).filter((kind, at, all) => all[at - 1] !== kind)).toEqual([
    ...['begun', 'read', 'answer', 'done'],
  ]);
  const last = news.findLast((one) => one.kind === 'answer');
  expect(last?.answer).toMatchObject({ kind: 'plan', proven: true, figures: [{ size: 'wide' }, { size: 'narrow' }] });
  expect(last?.answer.kind === 'plan' && last.answer.headline.cost).toBe('Spend 36.50 EUR at Marram Street shop.');
});

test('without a shop it says what to look for', async () => {
  const { news, ask } = listening();
  await ask({ board: { file: 'b.yaml', text: `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9}\n` } });
  expect(news.find((one) => one.kind === 'faulty')).toMatchObject({ faults: [{ of: 'board' }] });
  const typed = `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9, polarity: unknown}\n`;
  await ask({ board: { file: 'b.yaml', text: typed } });
  expect(news.findLast((one) => one.kind === 'answer')?.answer).toMatchObject({ kind: 'none', proven: true });
});

test('files that cannot be read are told with what to do, each by whose it is', async () => {
  const { news, ask } = listening();
  await ask({ board: { file: 'x', text: 'pedals: 3' }, shop: { file: 'y', text: '[' } });
  const faulty = news.find((one) => one.kind === 'faulty');
  expect(new Set(faulty?.faults.map((fault) => fault.of))).toEqual(new Set(['board', 'shop']));
  expect(news.at(-1)).toEqual({ about: 1, kind: 'done' });
});

test('rows of a table that nobody could use are told, and the rest is used', async () => {
  const { news, ask } = listening();
  const text = 'name,price,outputs,isolated,volts,milliamps,power,plug,polarity,regulated\n';
  const good = 'Good,9 €,1,yes,9,500,DC,barrel-2.1,centre-negative,yes\n';
  const board = {
    file: 'b.yaml',
    text: `${emptyDocument.board.text}  - {name: A, volts: 9, milliamps: 9, polarity: unknown}\n`,
  };
  await ask({ board, shop: { file: 's.csv', text: `${text}${good}Bad,9 €,1,yes,nine,500,DC,x,y,yes\n` } });
  const read = news.find((one) => one.kind === 'read');
  expect(read?.notes.join()).toContain('left out "Bad"');
});

test('a newer question ends the older one, of which nothing is said any more', async () => {
  const { news, ask } = listening();
  const older = ask({ about: 1, board: gigBoard, shop: marramStreet });
  await ask({ about: 2, board: { file: 'x', text: '' } });
  await older;
  expect(news.filter(({ about }) => about === 1)).toEqual([{ about: 1, kind: 'begun' }]);
  expect(news.at(-1)).toEqual({ about: 2, kind: 'done' });
});

test('who is told to stop says nothing more', async () => {
  const { news, ask, stop } = listening();
  const asked = ask({ board: gigBoard, shop: marramStreet });
  await stop();
  await asked;
  expect(news).toEqual([{ about: 1, kind: 'begun' }]);
});

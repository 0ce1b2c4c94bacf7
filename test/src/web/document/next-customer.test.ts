import { parse } from 'yaml';
import { expect, test } from 'vitest';

import { forNextCustomer, isBlank } from '../../../../src/web/document/next-customer.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';

const text = `board: Saltings
currency: CHF
assume: {power: DC}
policy: {headroom: {alone: 1.5, chained: 2, supply: 1.2}, guess: 2, chains: never, mains: 120, sockets: 4, budget: 90, bricks: 2}
pedals:
  - {name: Ouzel delay, volts: 9, milliamps: 250}
owned: {supplies: [quay-6]}
`;
const before: PageDocument = {
  ...emptyDocument,
  board: { file: 'saltings.yaml', text },
  shop: { file: 'quay.csv', text: 'a;b' },
  line: 'Gorse dr',
  aim: 'quiet',
  meanings: { Preis: 'price' },
  notOnLabel: ['ouzel-delay polarity'],
};

test('the next customer has an empty board in the same shop, with what is set for the shop alone', () => {
  const next = forNextCustomer(before);
  expect(parse(next.board.text)).toEqual({
    board: 'My board',
    currency: 'CHF',
    assume: { power: 'DC' },
    policy: { headroom: { alone: 1.5, chained: 2, supply: 1.2 }, guess: 2, chains: 'never', mains: 120 },
    pedals: null,
  });
  expect(next).toEqual({ ...emptyDocument, board: next.board, shop: before.shop, meanings: before.meanings });
  expect(next.board.file).toBe(emptyDocument.board.file);
});

test('of a board that cannot be read nothing is set', () => {
  expect(forNextCustomer({ ...before, board: { file: 'x', text: '[' } }).board).toEqual(emptyDocument.board);
});

test('a board is blank while nothing was made on it, or all was taken out again', () => {
  expect(isBlank(emptyDocument)).toBe(true);
  expect(isBlank(forNextCustomer(before))).toBe(true);
  const withText = (more: string) => isBlank({ ...emptyDocument, board: { file: 'x', text: `board: A\n${more}` } });
  expect(withText('pedals: []\nowned: {supplies: [], parts: {}}\n')).toBe(true);
  expect(withText('pedals:\n  - {name: A}\n')).toBe(false);
  expect(withText('owned: {supplies: [quay-6]}\n')).toBe(false);
  expect(isBlank({ ...emptyDocument, line: 'Gorse' })).toBe(false);
  expect(isBlank({ ...emptyDocument, ownedLine: 'old box' })).toBe(false);
});

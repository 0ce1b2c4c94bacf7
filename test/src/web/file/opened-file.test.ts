import { expect, test } from 'vitest';

import type { PedalId, SupplyId, Millivolts } from '../../../../src/domain/quantities.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { boardData } from '../../../../src/web/document/board-data.js';
import { openedFile } from '../../../../src/web/file/opened-file.js';
import { documentOf, emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';

const before: PageDocument = {
  ...emptyDocument,
  shop: { file: 'shop.csv', text: 'Name;Price' },
  line: 'moth delay',
  meanings: { Preis: 'price' },
  pins: [
    {
      ...{ pedal: 'moth' as PedalId, supply: 'quay-6' as SupplyId },
      ...{ unit: 1, outputs: [1], millivolts: 9000 as Millivolts },
    },
  ],
  chosen: 'quay-6',
  notOnLabel: ['moth polarity'],
};

test.each([
  ['saltings.yaml', 'board: Saltings\npedals: []\n'],
  ['saltings.csv', 'Name;Volts;Milliamps;Polarity\nMoth;9;30;centre-negative\n'],
])(
  'of a board that is opened nothing has been made yet; the shop stays, as it is understood: %s',
  async (name, text) => {
    const bytes = new TextEncoder().encode(text);
    const read = await openedFile({ name, size: bytes.length, bytes: async () => Promise.resolve(bytes) });
    if (read.kind === 'refused') throw new Error(read.why);
    const opened = read.edit(before);
    expect(opened.board.file).toBe('saltings.yaml');
    expect(opened).toEqual({ ...documentOf({ board: opened.board, shop: before.shop }), meanings: before.meanings });
  },
);

test('a row of pedals that nobody could use is told, and the rest is opened', async () => {
  const bytes = new TextEncoder().encode(
    'Name;Volts;Milliamps;Polarity\nMoth;9;30;centre-negative\nOwl;9;30;sideways\n',
  );
  const read = await openedFile({ name: 'night.csv', size: bytes.length, bytes: async () => Promise.resolve(bytes) });
  if (read.kind === 'refused') throw new Error(read.why);
  expect(read.edit(before).board.text).toContain('Moth');
  expect(read.leftOut).toEqual([expect.stringContaining('sideways')]);
});

const boardOf = async (text: string): Promise<unknown> => {
  const bytes = new TextEncoder().encode(text);
  const read = await openedFile({ name: 'night.csv', size: bytes.length, bytes: async () => Promise.resolve(bytes) });
  if (read.kind === 'refused') throw new Error(read.why);
  expect(read.leftOut).toEqual([]);
  const { board } = read.edit(emptyDocument);
  expect(inputsFromText(board, null).kind).toBe('read');
  return boardData(board.text);
};

test('what a table of pedals leaves open is not known, as of rows that are pasted', async () => {
  expect(await boardOf('Name,Volts,Milliamps\nMoth delay,9 V DC,300\nWick amp,12 V AC,500\n')).toMatchObject({
    assume: { power: 'DC', inlet: 'barrel-2.1', ground: 'negative' },
    pedals: [
      { name: 'Moth delay', volts: 9, milliamps: 300, polarity: 'unknown' },
      { name: 'Wick amp', power: 'AC', volts: 12, milliamps: 500 },
    ],
  });
});

test('what a table states above its rows holds for all that they leave open', async () => {
  const stated = '# currency: GBP\n# assume: {polarity: centre-positive, inlet: barrel-2.5}\n';
  expect(await boardOf(`${stated}Name,Volts,Milliamps,Polarity\nMoth,9,300,\nOwl,9,30,?\n`)).toMatchObject({
    currency: 'GBP',
    assume: { power: 'DC', polarity: 'centre-positive', inlet: 'barrel-2.5', ground: 'negative' },
    pedals: [{ name: 'Moth' }, { name: 'Owl', polarity: 'unknown' }],
  });
});

import { expect, test } from 'vitest';

import { packingBoard, readPackings } from '../../bench/packings.js';

const text = ' 2 \n one \n 150 3 2\n100\n50\n20\n two\n 10 2 1\n4\n6\n';

test('problems are read one after the other', () => {
  expect(readPackings(text)).toEqual([
    { name: 'one', capacity: 150, bestKnown: 2, sizes: [100, 50, 20] },
    { name: 'two', capacity: 10, bestKnown: 1, sizes: [4, 6] },
  ]);
});

test('a file that ends early or has a word for a number is refused', () => {
  expect(() => readPackings('2 one 150 3 2 100 50')).toThrow(/ends after 7 words/);
  expect(() => readPackings('1 one 150 two 2')).toThrow(/word 4 should be a number, not "two"/);
});

test('an item is a pedal, a bin an output', () => {
  const [packing] = readPackings(text);
  if (packing === undefined) throw new Error('no packing');
  const { board, catalogue } = packingBoard(packing);
  expect(board.pedals.map(({ draw }) => draw)).toEqual(
    [100_000, 50_000, 20_000].map((microamps) => ({ kind: 'flat', microamps })),
  );
  expect(
    catalogue.supplies.map(({ banks }) => banks.map(({ outputs, settings }) => [outputs, settings[0]?.rating])),
  ).toEqual([[[1, 150_000]]]);
});

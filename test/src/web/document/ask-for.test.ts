import { expect, test } from 'vitest';

import { askingFor, askingNoMoreFor, readAsked } from '../../../../src/web/document/ask-for.js';
import { emptyDocument } from '../../../../src/web/document/page-document.js';

const things = [
  { id: 'rowan-six', name: 'Rowan six', outputs: 6, remark: 'best seller' },
  { id: 'rowan-ten', name: 'Rowan ten', outputs: 10, remark: 'the twelve-way box' },
  { id: 'rowan-ten-b', name: 'Rowan ten broad', outputs: 10, remark: '' },
  { id: 'alder', name: 'Alder nine', outputs: 1, remark: '' },
];

test('a purchase is read by words of its names, each with its number', () => {
  expect(readAsked('2 x alder, ROWAN TEN', things)).toEqual({
    kind: 'purchase',
    purchase: [
      { id: 'alder', units: 2 },
      { id: 'rowan-ten', units: 1 },
    ],
  });
  expect(readAsked('  ', things)).toEqual({ kind: 'empty' });
});

test('a box is meant by its number of outputs, too', () => {
  for (const words of ['six-way', 'the 6-way box', '6 way supply', 'Six way'])
    expect(readAsked(words, things), words).toEqual({ kind: 'purchase', purchase: [{ id: 'rowan-six', units: 1 }] });
  expect(readAsked('2 x ten-way box', things)).toMatchObject({ kind: 'several', found: [{}, {}] });
  expect(readAsked('nine-way box', things)).toMatchObject({ kind: 'unclear' });
  expect(readAsked('none-way', things)).toMatchObject({ kind: 'unclear' });
});

test('a box is meant by what the shop remarks on it, too', () => {
  for (const words of ['the twelve-way box', 'Twelve-way'])
    expect(readAsked(words, things), words).toEqual({ kind: 'purchase', purchase: [{ id: 'rowan-ten', units: 1 }] });
  expect(readAsked('best seller', things)).toEqual({ kind: 'purchase', purchase: [{ id: 'rowan-six', units: 1 }] });
});

test('where several may be meant, which one is to be chosen', () => {
  const read = readAsked('alder, 3x rowan', things);
  if (read.kind !== 'several') throw new Error(read.kind);
  expect(read.found.map(({ id }) => id)).toEqual(['rowan-six', 'rowan-ten', 'rowan-ten-b']);
  expect(read.choose(things[0] ?? { id: '', name: '', outputs: 0, remark: '' })).toEqual([
    { id: 'alder', units: 1 },
    { id: 'rowan-six', units: 3 },
  ]);
});

test('what the shop does not sell, or is no purchase, gets a sentence', () => {
  expect(readAsked('birch', things)).toEqual({ kind: 'unclear', fault: 'The shop sells no supply called “birch”.' });
  expect(readAsked('alder,', things)).toMatchObject({ kind: 'unclear' });
});

test('the same is asked for once, until it is asked for no more', () => {
  const alder = [{ id: 'alder', units: 1 }];
  const once = askingFor(alder)(emptyDocument);
  expect(once.asked).toEqual([alder]);
  expect(askingFor([{ id: 'alder', units: 1 }])(once)).toBe(once);
  expect(askingNoMoreFor(once.asked[0] ?? [])(once).asked).toEqual([]);
});

import { expect, test } from 'vitest';

import { idsMeant, severalFault } from '../../../src/domain/names.js';

const things = [
  { id: 'quay', name: 'Dory' },
  { id: 'dory', name: 'Barge' },
  { id: 'a', name: 'Twin' },
  { id: 'b', name: 'TWIN ' },
];

test('an id means its own thing, even where another has it for a name', () => {
  expect(idsMeant('dory', things)).toEqual(['dory']);
});

test('a name means all that have it, whatever its capitals', () => {
  expect(idsMeant('Dory', things)).toEqual(['quay']);
  expect(idsMeant(' barge', things)).toEqual(['dory']);
  expect(idsMeant('Twin', things)).toEqual(['a', 'b']);
  expect(idsMeant('Tw', things)).toEqual([]);
});

test('a name that several have is told with their ids', () => {
  expect(severalFault('Twin', ['a', 'b'])).toBe(
    '"Twin" is the name of 2 things. Write the id of the one that is meant: a or b.',
  );
});

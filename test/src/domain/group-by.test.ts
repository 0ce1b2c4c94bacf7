import fc from 'fast-check';
import { expect, test } from 'vitest';

import { groupBy, runsOf } from '../../../src/domain/group-by.js';

test('what has the same key is together, in the order of the first of each', () => {
  const words = ['oak', 'beech', 'ash', 'birch', 'elm'];
  expect(groupBy(words, (word) => String(word.length))).toEqual([
    ['oak', 'ash', 'elm'],
    ['beech', 'birch'],
  ]);
});

test('nothing gets lost, and no two groups share a key', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(9)), (all) => {
      const groups = groupBy(all, (one) => String(one % 3));
      expect(groups.flat().sort()).toEqual([...all].sort());
      expect(new Set(groups.map(([first]) => first % 3)).size).toBe(groups.length);
      for (const [first, ...others] of groups) expect(others.every((one) => one % 3 === first % 3)).toBe(true);
    }),
  );
});

test('the key may hang on the place', () => {
  expect(groupBy(['a', 'a'], (_, at) => String(at))).toEqual([['a'], ['a']]);
});

test('neighbours that go on with a run are in it, in their order', () => {
  expect(runsOf([1, 2, 3, 5, 6, 2], (run, next) => next === (run.at(-1) ?? 0) + 1)).toEqual([[1, 2, 3], [5, 6], [2]]);
  expect(runsOf([], () => true)).toEqual([]);
});

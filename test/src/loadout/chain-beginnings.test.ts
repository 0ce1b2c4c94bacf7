import fc from 'fast-check';
import { expect, it } from 'vitest';

import { Beginnings, type Sums } from '../../../src/loadout/chain-beginnings.js';
import { trying } from '../../support/runs.js';

const sums: fc.Arbitrary<Sums> = fc.record({
  value: fc.integer({ min: -3, max: 6 }),
  load: fc.nat({ max: 5 }),
  surge: fc.nat({ max: 5 }),
  soles: fc.constantFrom(0, 0, 1),
});

const replaces = (one: Sums, other: Sums): boolean =>
  one.value >= other.value && one.load <= other.load && one.surge <= other.surge && one.soles <= other.soles;

const inOrder = (all: readonly Sums[]): readonly Sums[] =>
  [...all].sort((one, other) => one.load - other.load || other.value - one.value);

it('merges lists into one in which nothing that counts is lost, and nothing stands that another one replaces at less load', () => {
  fc.assert(
    fc.property(fc.array(sums, { maxLength: 9 }), fc.array(sums, { maxLength: 9 }), (one, other) => {
      const beginnings = new Beginnings();
      const added = (all: readonly Sums[]) => inOrder(all).map((each) => beginnings.add(each, 0, 0));
      const numbers = beginnings.merged(added(one), added(other));
      const kept = numbers.map((at): Sums => ({
        value: beginnings.value(at),
        load: beginnings.load(at),
        surge: beginnings.surge(at),
        soles: beginnings.soles(at),
      }));
      expect(kept).toEqual(inOrder(kept));
      for (const each of [...one, ...other]) expect(kept.some((stays) => replaces(stays, each))).toBe(true);
      kept.forEach((each, at) => {
        expect(kept.slice(0, at).some((earlier) => replaces(earlier, each))).toBe(false);
      });
    }),
    trying(400),
  );
});

it('tells the items of a beginning in their order, and forgets them for the next search', () => {
  const beginnings = new Beginnings();
  const nothing: Sums = { value: 0, load: 0, surge: 0, soles: 0 };
  let last = 0;
  for (let item = 0; item < 1000; item += 1) last = beginnings.add({ ...nothing, value: item }, item, last);
  expect(beginnings.items(last)).toEqual(Array.from({ length: 1000 }, (_, item) => item));
  expect(beginnings.value(last)).toBe(999);
  beginnings.clear();
  expect(beginnings.add(nothing, 7, 0)).toBe(1);
  expect(beginnings.items(1)).toEqual([7]);
});

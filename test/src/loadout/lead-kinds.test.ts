import { describe, expect, it } from 'vitest';

import type { Part, PartRole } from '../../../src/domain/part.js';
import { piecesOf } from '../../../src/loadout/lead-kinds.js';
import { kindsOf } from '../../support/bench.js';
import { partOf } from '../../support/builders.js';

const adapter: PartRole = { kind: 'adapter' };
const mini = partOf('mini', 5, adapter, { gives: 'jack-3.5' });

describe('kinds of leads', () => {
  it('are one for leads that differ in price, stock and name only', () => {
    const kinds = kindsOf([mini, partOf('other', 3, adapter, { gives: 'jack-3.5', stock: 2 })]);
    expect(kinds).toMatchObject([{ index: 0, fits: 'barrel-2.1', gives: 'jack-3.5', reverses: false, role: adapter }]);
  });

  it.each<[string, Part]>([
    ['what they fit', partOf('other', 5, adapter, { gives: 'jack-3.5', fits: 'barrel-2.5' })],
    ['what they give', partOf('other', 5, adapter, { gives: 'snap-clip' })],
    ['reversing', partOf('other', 5, adapter, { gives: 'jack-3.5', reverses: true })],
    ['their role', partOf('other', 5, { kind: 'chain', tails: 2 }, { gives: 'jack-3.5' })],
  ])('are two for leads that differ in %s', (_, other) => {
    expect(kindsOf([mini, other]).map(({ index }) => index)).toEqual([0, 1]);
  });

  it('tell tails and ways of joining apart', () => {
    const roles: readonly PartRole[] = [
      { kind: 'chain', tails: 2 },
      { kind: 'chain', tails: 3 },
      { kind: 'join', mode: 'series' },
      { kind: 'join', mode: 'parallel' },
    ];
    expect(kindsOf(roles.map((role, index) => partOf(`lead-${index}`, 5, role))).map(({ role }) => role)).toEqual(
      roles,
    );
  });
});

describe('the pieces of a kind', () => {
  it('are taken owned ones first, then the cheapest, then by id', () => {
    const parts = [
      partOf('dear', 9, adapter),
      partOf('later', 3, adapter, { stock: 2 }),
      partOf('early', 3, adapter),
      { ...partOf('gear', 1, adapter), price: null, stock: 0 },
    ];
    const [kind] = kindsOf(parts, { dear: 2, gear: 1 });
    expect(kind?.supplyOf).toEqual([
      { part: 'dear', price: 0, owned: true, pieces: 2 },
      { part: 'gear', price: 0, owned: true, pieces: 1 },
      { part: 'early', price: 300, owned: false, pieces: Infinity },
      { part: 'later', price: 300, owned: false, pieces: 2 },
      { part: 'dear', price: 900, owned: false, pieces: Infinity },
    ]);
  });

  it('come owned before those that cost nothing', () => {
    const [kind] = kindsOf([partOf('free', 0, adapter), partOf('owned', 5, adapter)], { owned: 1 });
    expect(kind?.supplyOf.map(({ part }) => part)).toEqual(['owned', 'free', 'owned']);
  });

  it.each<[string, number | null, number, number]>([
    ['those owned and in stock', 3, 2, 5],
    ['the owned ones where none is for sale', 0, 2, 2],
    ['without end where stock is not limited', null, 1, Infinity],
  ])('are %s', (_, stock, owned, expected) => {
    const kinds = kindsOf([{ ...mini, stock }], { mini: owned });
    expect(kinds.map(piecesOf)).toEqual([expected]);
  });
});

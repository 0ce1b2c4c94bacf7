import { describe, expect, it } from 'vitest';

import {
  withBoard,
  withGear,
  withNothingForSale,
  withoutPedals,
  withPolicy,
  withThings,
} from '../../../src/domain/changed-kit.js';
import { forSaleOf, kitOf, ownedOf } from '../../../src/domain/kit.js';
import { pedalId } from '../../../src/domain/quantities.js';
import { bankOf, boardOf, catalogueOf, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const banks = [bankOf(1, [settingOf(9, 100)])];
const own = { ...supplyOf('own', 0, banks), price: null, stock: 0 };
const shop = supplyOf('shop', 50, banks);
const lead = partOf('lead', 3, { kind: 'adapter' });
const board = boardOf([pedalOf('one', 10), pedalOf('two', 10)], { gear: { supplies: [own], parts: [] } });
const kit = kitOf(board, catalogueOf([shop], [lead]));

describe('a changed kit', () => {
  it('keeps the shop when the board is another', () => {
    const changed = withBoard(kit, { ...board, gear: { supplies: [], parts: [] } });
    expect([...changed.supplies.keys()]).toEqual(['shop']);
    expect(withPolicy(kit, { bricks: 1 }).board.policy).toEqual({ ...board.policy, bricks: 1 });
    expect(withoutPedals([pedalId('one')], kit).board.pedals.map(({ id }) => id)).toEqual(['two']);
  });

  it('changes things of the gear and of the shop alike, and leaves out those that are nothing afterwards', () => {
    const named = withThings(kit, (supply) => ({ ...supply, name: 'other' }));
    expect([...named.supplies.values()].map(({ name }) => name)).toEqual(['other', 'other']);
    const without = withThings(
      kit,
      (supply) => (supply.id === own.id ? null : supply),
      () => null,
    );
    expect([...without.supplies.keys(), ...without.parts.keys()]).toEqual(['shop']);
    expect(without.catalogue?.parts).toEqual([]);
  });

  it('has more gear, of which one each is owned', () => {
    const more = withGear(kit, { supplies: [{ ...own, id: shop.id }], parts: [] });
    expect(more.board.gear.supplies).toHaveLength(2);
    expect(ownedOf(more, shop)).toBe(1);
    expect(ownedOf(kit, shop)).toBe(0);
  });

  it('has nothing for sale, though it is described', () => {
    const bare = withNothingForSale(kit);
    expect([...bare.supplies.values(), ...bare.parts.values()].map(forSaleOf)).toEqual([0, 0, 0]);
  });
});

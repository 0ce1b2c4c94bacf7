import { describe, expect, it } from 'vitest';

import { bankOfOutput, banksOf, countOutputs, forSaleOf, kitOf, outputsOf, ownedOf } from '../../../src/domain/kit.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { bankOf, boardOf, catalogueOf, euros, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const setting = settingOf(9, 100);
const own = { ...supplyOf('own', 0, [bankOf(1, [setting])]), price: null, stock: 0 };
const shop = supplyOf('shop', 50, [bankOf(2, [setting]), bankOf(3, [setting])], { stock: 4 });
const lead = partOf('lead', 3, { kind: 'adapter' });
const board = boardOf([pedalOf('one', 10)], {
  gear: { supplies: [own], parts: [] },
  owned: { supplies: new Map([[own.id, 2]]), parts: new Map([[lead.id, 5]]) },
});
const kit = kitOf(board, catalogueOf([shop], [lead]));

describe('a kit', () => {
  it('has the gear first, then the catalogue', () => {
    expect([...kit.supplies.keys(), ...kit.parts.keys()]).toEqual(['own', 'shop', 'lead']);
    expect([...kitOf(board, null).supplies.keys()]).toEqual(['own']);
  });

  it('knows what is owned and what is for sale', () => {
    expect([own, shop, lead].map((thing) => ownedOf(kit, thing))).toEqual([2, 0, 5]);
    expect([own, shop, lead].map(forSaleOf)).toEqual([0, 4, Infinity]);
    expect(forSaleOf({ price: null, stock: 7 })).toBe(0);
    expect(forSaleOf({ price: euros(0), stock: null })).toBe(Infinity);
  });

  it('finds the bank of an output, and none where there is no such output', () => {
    const [first, second] = shop.banks;
    expect([1, 2, 3, 5].map((output) => bankOfOutput(shop, output))).toEqual([first, first, second, second]);
    expect([0, 6].map((output) => bankOfOutput(shop, output))).toEqual([undefined, undefined]);
    expect(banksOf(kit, { supply: shop.id, outputs: [5, 9, 1] })).toEqual([second, first]);
    expect(banksOf(kit, { supply: supplyId('nobody'), outputs: [1] })).toEqual([]);
  });

  it('numbers outputs through the banks', () => {
    expect(shop.banks.map(outputsOf)).toEqual([
      [1, 2],
      [3, 4, 5],
    ]);
    expect(countOutputs(shop)).toBe(5);
  });
});

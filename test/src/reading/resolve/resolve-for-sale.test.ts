import { describe, expect, it } from 'vitest';

import { supplyId } from '../../../../src/domain/quantities.js';
import { shelfOf } from '../../../../src/reading/resolve/resolve-for-sale.js';
import { catalogueText, catalogueWithSupplies, expectFault, expectRefused } from '../texts.js';

describe('all that the gear and the catalogue describe', () => {
  const quay = { id: supplyId('quay'), name: 'Quay 6', thing: 'first' };

  it('is found by id; the first of two counts', () => {
    const shelf = shelfOf([quay, { ...quay, thing: 'second' }], true);
    expect([...shelf.byId]).toEqual([['quay', 'first']]);
    expect(shelf.complete).toBe(true);
  });

  it('is known by its id, too, when something about it was reported', () => {
    const shelf = shelfOf([{ ...quay, thing: null }, quay], true);
    expect([...shelf.byId]).toEqual([['quay', null]]);
    expect(shelf.complete).toBe(true);
  });

  it('is not whole when an id is not known, or a list was reported', () => {
    const shelf = shelfOf([quay, { id: null, name: 'Dory', thing: null }], true);
    expect([...shelf.byId]).toEqual([['quay', 'first']]);
    expect(shelf.complete).toBe(false);
    expect(shelfOf([quay], false).complete).toBe(false);
    expect(shelfOf([], true).complete).toBe(true);
  });
});

describe('a price', () => {
  const bank =
    '{outputs: 1, isolated: true, power: DC, plug: x, polarity: either, settings: [{volts: 9, milliamps: 1}]}';
  const supply = (price: string) => catalogueWithSupplies(`{name: Quay, regulated: true, banks: [${bank}]${price}}`);
  const part = (price: string) => catalogueText({ parts: `parts:\n  - {name: Lead, fits: a, gives: b${price}}` });

  it.each([
    ['supplies[0].price', supply],
    ['parts[0].price', part],
  ] as const)('%s has no more decimals than the currency of the catalogue', (key, catalogue) => {
    const words = ['found 1.005', 'EUR has at most 2 decimals'];
    expectFault({ catalogue: catalogue(', price: ‸1.005') }, key, words, 'to 1.01.');
    expectRefused({ catalogue: catalogue(', price: 1.005') }, key);
  });

  it.each([
    ['supplies[0].price', supply],
    ['parts[0].price', part],
  ] as const)('%s must be there, and an amount', (key, catalogue) => {
    expectRefused({ catalogue: catalogue('') }, key);
    expectRefused({ catalogue: catalogue(', price: -1') }, key);
    expectRefused({ catalogue: catalogue(', price: cheap') }, key);
  });
});

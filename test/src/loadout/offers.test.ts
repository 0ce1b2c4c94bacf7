import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { partId, supplyId } from '../../../src/domain/quantities.js';
import { partOffers, supplyOffers } from '../../../src/loadout/offers.js';
import { bankOf, boardOf, catalogueOf, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const banks = [bankOf(1, [settingOf(9, 100)])];
const gearSupply = { ...supplyOf('gear', 0, banks), price: null, stock: 0 };
const gearLead = { ...partOf('gear-lead', 0, { kind: 'adapter' }), price: null, stock: 0 };
const board = boardOf([pedalOf('one', 10)], {
  gear: { supplies: [gearSupply], parts: [gearLead, { ...gearLead, id: partId('lost-lead') }] },
  owned: {
    supplies: new Map([
      [supplyId('gear'), 1],
      [supplyId('few'), 2],
    ]),
    parts: new Map([
      [partId('gear-lead'), 3],
      [partId('gone'), 1],
    ]),
  },
});
const catalogue = catalogueOf(
  [supplyOf('many', 10, banks), supplyOf('few', 10, banks, { stock: 4 })],
  [
    partOf('many-leads', 1, { kind: 'adapter' }),
    partOf('gone', 1, { kind: 'adapter' }, { stock: 0 }),
    partOf('never', 1, { kind: 'adapter' }, { stock: 0 }),
  ],
);

describe('what there is to be had', () => {
  it('is every supply, owned units and those for sale', () => {
    expect(
      supplyOffers(kitOf(board, catalogue)).map(({ supply, owned, forSale }) => [supply.id, owned, forSale]),
    ).toEqual([
      ['gear', 1, 0],
      ['many', 0, Infinity],
      ['few', 2, 4],
    ]);
  });

  it('is every lead of which there is one', () => {
    expect(partOffers(kitOf(board, catalogue)).map(({ part, owned, forSale }) => [part.id, owned, forSale])).toEqual([
      ['gear-lead', 3, 0],
      ['many-leads', 0, Infinity],
      ['gone', 1, 0],
    ]);
  });

  it('is the gear alone without a catalogue', () => {
    expect(supplyOffers(kitOf(board, null)).map(({ supply }) => supply.id)).toEqual(['gear']);
    expect(partOffers(kitOf(board, null)).map(({ part }) => part.id)).toEqual(['gear-lead']);
  });
});

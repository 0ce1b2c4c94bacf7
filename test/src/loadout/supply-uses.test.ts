import { describe, expect, it } from 'vitest';

import { feedable, supplyUses } from '../../../src/loadout/supply-uses.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, milliamps, partOf, pedalOf, policyOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const nine = [settingOf(9, 100)];
const supply = supplyOf('supply', 10, [bankOf(1, nine)]);
const bench = benchOf([pedalOf('one', 10)]);

describe('what a supply can do', () => {
  it('is nothing where none is to be had, the mains do not suit, or no pedal does', () => {
    expect(supplyUses({ supply, owned: 0, forSale: 0, unit: null }, bench)).toBeNull();
    expect(supplyUses({ supply, owned: 1, forSale: 0, unit: null }, bench)).not.toBeNull();
    const venue = benchOf([pedalOf('one', 10)], [], policyOf({ mains: [volts(230)] }));
    expect(supplyUses({ supply, owned: 1, forSale: 0, unit: null }, venue)).toBeNull();
    expect(supplyUses({ supply, owned: 1, forSale: 0, unit: null }, benchOf([pedalOf('one', 100.001)]))).toBeNull();
  });

  it('has modes where it has a common ground', () => {
    expect(usesOf(supply, bench).modes).toEqual([]);
    const common = supplyOf('common', 10, [bankOf(1, nine), bankOf(1, nine, { isolated: false })]);
    expect(usesOf(common, bench).modes).toEqual([{ ground: 'negative', noise: 'any' }]);
  });

  it('feeds pedals by themselves or in a chain', () => {
    // Alone they would need twice their load, but not in a chain.
    const policy = policyOf({ headroom: { ...policyOf().headroom, alone: { numerator: 2, denominator: 1 } } });
    const pedals = [pedalOf('one', 10), pedalOf('two', 60), pedalOf('three', 10, { startup: milliamps(100.001) })];
    const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
    expect([...feedable(usesOf(supply, benchOf(pedals, [], policy)))]).toEqual([0]);
    expect([...feedable(usesOf(supply, benchOf(pedals, [fan], policy)))].sort()).toEqual([0, 1]);
  });
});

import { describe, expect, it } from 'vitest';

import { feedable, mainsSuit, supplyUses } from '../../../src/loadout/supply-uses.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, milliamps, partOf, pedalOf, policyOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const nine = [settingOf(9, 100)];
const supply = supplyOf('supply', 10, [bankOf(1, nine)]);
const bench = benchOf([pedalOf('one', 10)]);

describe('mains', () => {
  const from100To240 = { from: volts(100), to: volts(240) };

  it.each([
    ['nothing is known of the venue', null, null, true],
    ['the venue has the least that it accepts', 100, from100To240, true],
    ['the venue has the most that it accepts', 240, from100To240, true],
    ['the venue has a millivolt less', 99.999, from100To240, false],
    ['the venue has a millivolt more', 240.001, from100To240, false],
    ['it does not say what it accepts', 230, null, false],
  ])('suit a supply, or not: %s', (_, venue, accepted, expected) => {
    const policy = policyOf({ mains: venue === null ? null : volts(venue) });
    expect(mainsSuit({ ...supply, mains: accepted }, policy)).toBe(expected);
  });
});

describe('what a supply can do', () => {
  it('is nothing where none is to be had, the mains do not suit, or no pedal does', () => {
    expect(supplyUses({ supply, owned: 0, forSale: 0, unit: null }, bench)).toBeNull();
    expect(supplyUses({ supply, owned: 1, forSale: 0, unit: null }, bench)).not.toBeNull();
    const venue = benchOf([pedalOf('one', 10)], [], policyOf({ mains: volts(230) }));
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

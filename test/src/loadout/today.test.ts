import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { WiredFeed } from '../../../src/domain/board.js';
import { pedalId, supplyId } from '../../../src/domain/quantities.js';
import { matchesBerth } from '../../../src/loadout/berth-match.js';
import { supplyOffers } from '../../../src/loadout/offers.js';
import { pedalClasses } from '../../../src/loadout/pedal-class.js';
import { berthsOf, unitsInUse, type Today } from '../../../src/loadout/today.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf, volts } from '../../support/builders.js';
import { wiredOn } from '../../support/wired.js';

const plugged = (pedal: string, unit: number, outputs: readonly number[], more: Partial<WiredFeed> = {}) =>
  wiredOn('quay', pedal, outputs, { unit, ...more });
const todayOf = (wiring: readonly WiredFeed[], more: Partial<Today> = {}): Today => ({
  berths: berthsOf(wiring),
  exposed: new Set(),
  pinned: new Set(),
  ...more,
});

const settings = [settingOf(9, 100), settingOf(18, 50)];
const quay = supplyOf('quay', 50, [bankOf(2, settings), bankOf(2, settings)]);

describe('the units of today', () => {
  it('are told apart where something is plugged in, and the others are not', () => {
    const board = boardOf([], { owned: { supplies: new Map([[supplyId('quay'), 4]]), parts: new Map() } });
    const today = todayOf([plugged('a', 2, [1]), plugged('b', 2, [3]), plugged('c', 4, [1])]);
    expect(unitsInUse(quay, today)).toEqual([2, 4]);
    const offers = supplyOffers(kitOf(board, catalogueOf([quay])), today);
    expect(offers.map(({ owned, forSale, unit }) => [owned, forSale, unit])).toEqual([
      [1, 0, 2],
      [1, 0, 4],
      [2, Infinity, null],
    ]);
  });

  it('are none of another supply’s', () => {
    expect(unitsInUse(supplyOf('jetty', 50, []), todayOf([plugged('a', 1, [1])]))).toEqual([]);
  });
});

describe('pedals that are alike', () => {
  const pedals = ['a', 'b', 'c'].map((id) => pedalOf(id, 10));
  const classes = (today: Today) => pedalClasses(pedals, today).map(({ members }) => members.map(({ id }) => id));

  it('are alike no more on different outputs, volts or units', () => {
    expect(classes(todayOf([]))).toEqual([['a', 'b', 'c']]);
    expect(classes(todayOf([plugged('a', 1, [1]), plugged('b', 1, [1])]))).toEqual([['a', 'b'], ['c']]);
    expect(classes(todayOf([plugged('a', 1, [1]), plugged('b', 1, [2])]))).toEqual([['a'], ['b'], ['c']]);
    expect(classes(todayOf([plugged('a', 1, [1]), plugged('b', 2, [1])]))).toEqual([['a'], ['b'], ['c']]);
    const higher = plugged('b', 1, [1], { millivolts: volts(18) });
    expect(classes(todayOf([plugged('a', 1, [1]), higher]))).toEqual([['a'], ['b'], ['c']]);
  });

  it('are alike no more when one is exposed or must stay', () => {
    const wiring = [plugged('a', 1, [1]), plugged('b', 1, [1])];
    expect(classes(todayOf(wiring, { exposed: new Set([pedalId('a')]) }))).toEqual([['a'], ['b'], ['c']]);
    expect(classes(todayOf(wiring, { pinned: new Set([pedalId('b')]) }))).toEqual([['a'], ['b'], ['c']]);
  });
});

describe('an output that may be the one of today', () => {
  const berth = { supply: supplyId('quay'), unit: 1, outputs: [2], millivolts: volts(9) };
  const joined = { ...berth, outputs: [2, 3], millivolts: volts(18) };

  it('is of the same bank and gives the same volts', () => {
    expect(matchesBerth(berth, quay, [{ bank: 0, setting: 0 }], volts(9))).toBe(true);
    expect(matchesBerth(berth, quay, [{ bank: 1, setting: 0 }], volts(9))).toBe(false);
    expect(matchesBerth(berth, quay, [{ bank: 0, setting: 1 }], volts(18))).toBe(false);
    expect(matchesBerth(berth, supplyOf('jetty', 50, quay.banks), [{ bank: 0, setting: 0 }], volts(9))).toBe(false);
  });

  it('is joined when today’s is, whichever way it makes its volts', () => {
    const both = [0, 1].map((bank) => ({ bank, setting: 0 }));
    expect(matchesBerth(joined, quay, both, volts(18))).toBe(true);
    expect(matchesBerth(joined, quay, [...both].reverse(), volts(18))).toBe(true);
    expect(matchesBerth(joined, quay, [{ bank: 0, setting: 1 }], volts(18))).toBe(false);
    const within = [0, 0].map((bank) => ({ bank, setting: 0 }));
    expect(matchesBerth(joined, quay, within, volts(18))).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';

import type { Part } from '../../../src/domain/part.js';
import type { Supply } from '../../../src/domain/supply.js';
import { seatsOf } from '../../../src/loadout/seats.js';
import { kindsOf } from '../../support/bench.js';
import { bankOf, partOf, settingOf, supplyOf } from '../../support/builders.js';

const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
const twin = partOf('twin', 9, { kind: 'join', mode: 'parallel' }, { gives: 'jack-3.5', reverses: true });
const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
const settings = [settingOf(9, 100), settingOf(12, 80)];

/** Every seat as a line: its outputs' banks and settings, and what it offers. */
const seats = (supply: Supply, parts: readonly Part[] = []): readonly string[] =>
  seatsOf(supply, kindsOf(parts)).map(({ outputs, join, outlet, exit }) => {
    const places = outputs.map(({ bank, setting }) => `${bank}.${setting}`).join('+');
    const offer = `${outlet.millivolts / 1000} V ${outlet.rating / 1000} mA`;
    return `${places}${join === null ? '' : ` ${join.mode}`}: ${offer} at ${exit.plug} ${exit.polarities.join(' or ')}`;
  });

describe('the seats of a supply', () => {
  it('are its outputs at every setting, alike ones once', () => {
    const banks = [bankOf(3, settings), bankOf(1, [settingOf(18, 50)], { polarity: 'either', plug: 'jack-3.5' })];
    expect(seats(supplyOf('supply', 10, banks), [stack, fan])).toEqual([
      '0.0: 9 V 100 mA at barrel-2.1 centre-negative',
      '0.1: 12 V 80 mA at barrel-2.1 centre-negative',
      '1.0: 18 V 50 mA at jack-3.5 centre-negative or centre-positive',
    ]);
  });

  it('are also the joins that are allowed and for which there is a lead', () => {
    const supply = supplyOf('supply', 10, [bankOf(2, settings, { joins: ['series', 'parallel'] })]);
    expect(seats(supply, [fan])).toHaveLength(2);
    expect(seats(supply, [stack, twin]).slice(2)).toEqual([
      '0.0+0.0 series: 18 V 100 mA at barrel-2.1 centre-negative',
      '0.0+0.1 series: 21 V 80 mA at barrel-2.1 centre-negative',
      '0.1+0.1 series: 24 V 80 mA at barrel-2.1 centre-negative',
      '0.0+0.0 parallel: 9 V 200 mA at jack-3.5 centre-positive',
      '0.1+0.1 parallel: 12 V 160 mA at jack-3.5 centre-positive',
    ]);
  });

  it('are joins across banks with every pair of settings', () => {
    const bank = bankOf(1, settings, { joins: ['series'] });
    expect(seats(supplyOf('supply', 10, [bank, bank]), [stack]).slice(4)).toEqual([
      '0.0+1.0 series: 18 V 100 mA at barrel-2.1 centre-negative',
      '0.0+1.1 series: 21 V 80 mA at barrel-2.1 centre-negative',
      '0.1+1.0 series: 21 V 80 mA at barrel-2.1 centre-negative',
      '0.1+1.1 series: 24 V 80 mA at barrel-2.1 centre-negative',
    ]);
  });

  it('are joins of AC outputs, too, which have no polarity', () => {
    const banks = [bankOf(2, [settingOf(9, 100)], { power: 'AC', polarity: null, joins: ['series'] })];
    expect(seats(supplyOf('supply', 10, banks), [stack])).toEqual([
      '0.0: 9 V 100 mA at barrel-2.1 ',
      '0.0+0.0 series: 18 V 100 mA at barrel-2.1 ',
    ]);
  });

  it('take of their outputs as the rules say: of both in series, of the second once more in parallel', () => {
    const taken = { load: 7n, surge: 9n };
    const banks = [bankOf(1, settings.slice(0, 1), { joins: ['series'] }), bankOf(1, settings, { joins: ['series'] })];
    const all = seatsOf(supplyOf('supply', 10, banks), kindsOf([stack]));
    expect(all.at(-1)?.takes(taken)).toEqual([
      { bank: 0, millivolts: 9000, ...taken, repeats: false },
      { bank: 1, millivolts: 12000, ...taken, repeats: false },
    ]);
    const parallel = supplyOf('supply', 10, [bankOf(2, settings.slice(0, 1), { joins: ['parallel'] })]);
    expect(
      seatsOf(parallel, kindsOf([twin]))
        .at(-1)
        ?.takes(taken),
    ).toEqual([
      { bank: 0, millivolts: 9000, ...taken, repeats: false },
      { bank: 0, millivolts: 9000, ...taken, repeats: true },
    ]);
  });
});

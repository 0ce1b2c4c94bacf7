import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { microamps, millivolts, milliwatts, partId } from '../../../../src/domain/quantities.js';
import { inventoryOf } from '../../../../src/report/words/inventory.js';
import { switchPosition, unitUses } from '../../../../src/report/words/usage.js';
import { meterText, percentOf } from '../../../../src/report/words/words.js';
import { everything } from '../everything.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, supplyOf, planOf } from '../samples.js';

const all = everything((id) => id);
const inventory = inventoryOf(kitOf(all.board, all.catalogue));
const units = unitUses(all.board, inventory, all.wiring);

/** How full each output in use of a unit is, in words. */
const meters = (supply: string, unit: number): Record<string, string> =>
  Object.fromEntries(
    units
      .filter((use) => use.supply.id === supply && use.unit === unit)
      .flatMap(({ outputs }) =>
        outputs.map((use) => [use.outputs.join('+'), use.meter === null ? '' : meterText(use.meter)]),
      ),
  );
const totals = (supply: string, unit: number): string[] =>
  units
    .filter((use) => use.supply.id === supply && use.unit === unit)
    .flatMap((use) => use.totals.map(({ meter }) => meterText(meter)));

describe('how full a supply is', () => {
  it('counts a chain with its own headroom and a guess with its factor', () => {
    // (30 + 5) × 2; 60 × 1.5 × 1.2; 12 × 1.2 = 14.4.
    expect(meters('shared', 1)).toEqual({ '2': '70 of 300 mA', '4': '108 of 300 mA', '5': '15 of 300 mA' });
    // 90.5 × 1.5 × 1.2 = 162.9.
    expect(meters('joiner', 2)).toEqual({ '6': '163 of 200 mA' });
  });

  it('rates a series join by the smaller output and a parallel one by the sum', () => {
    expect(meters('joiner', 1)).toEqual({ '1+2': '120 of 500 mA', '3+4': '840 of 1000 mA' });
  });

  it('adds up totals in mA and in W, a series join on both outputs and a parallel one once', () => {
    // (30 + 5 + 90 + 12) × 1.2 = 164.4 mA.
    expect(totals('shared', 1)).toEqual(['165 of 1000 mA']);
    // (2 × 9 V × 100 mA + 9 V × 700 mA) × 1.2 = 9.72 W.
    expect(totals('joiner', 1)).toEqual(['9.8 of 24.5 W']);
  });

  it('counts a parallel join over two banks wholly in each, and once in the supply', () => {
    const total = (milliamps: number) => ({ kind: 'current', microamps: microamps(milliamps * 1000) }) as const;
    const banks = [bankFrom(1, 1, { total: total(500), joins: ['parallel'] }), bankFrom(2, 1, { total: total(400) })];
    const board = boardOf([pedalOf('thirsty', { draw: { kind: 'flat', microamps: microamps(150_000) } })]);
    const catalogue = catalogueOf(
      [supplyOf('two-banks', banks, { total: total(600) })],
      [partOf('pair', { kind: 'join', mode: 'parallel' })],
    );
    const join = { mode: 'parallel', part: partId('pair') } as const;
    const feed = feedOf('thirsty', 'two-banks', 1, {
      outputs: [1, 2],
      settings: [millivolts(9000), millivolts(9000)],
      join,
    });
    const [unit] = unitUses(board, inventoryOf(kitOf(board, catalogue)), planOf(board, catalogue, [feed]));
    expect(unit?.totals.map(({ meter }) => meterText(meter))).toEqual([
      '180 of 500 mA',
      '180 of 400 mA',
      '180 of 600 mA',
    ]);
  });

  it('shows what is asked for when all is switched on at once, where that is more than the planned load', () => {
    const [shared] = units;
    // The chorus's 260 mA beside the wah's 5 mA.
    expect(shared?.outputs.map(({ peak }) => (peak === null ? null : meterText(peak)))).toEqual([
      '265 of 300 mA',
      null,
      null,
    ]);
    // 260 + 5, the guess 60 × 1.5 and 12 mA.
    expect(shared?.totals.map(({ peak }) => peak && meterText(peak))).toEqual(['367 of 1000 mA']);
    expect(units.find(({ supply }) => supply.id === 'joiner')?.totals.map(({ peak }) => peak)).toEqual([null]);
  });

  it('knows which units are owned', () => {
    expect(units.map(({ supply, unit, owned }) => [supply.id, unit, owned])).toEqual([
      ['shared', 1, true],
      ['joiner', 1, false],
      ['joiner', 2, false],
      ['ac', 1, false],
      ['rough', 1, false],
    ]);
  });

  it('rounds up, to exactly full only at the limit', () => {
    const meter = (microampsPlanned: bigint) =>
      ({ planned: { numerator: microampsPlanned, denominator: 1n }, limit: 100_000, unit: 'mA' }) as const;
    expect([percentOf(meter(99_000n)), percentOf(meter(99_001n)), percentOf(meter(100_000n))]).toEqual([99, 99, 100]);
    expect(percentOf(meter(100_001n))).toBe(101);
    expect(meterText(meter(99_001n))).toBe('100 of 100 mA');
    expect(meterText({ ...meter(4_500n), limit: milliwatts(12_345), unit: 'W' })).toBe('4.5 of 12.345 W');
  });
});

describe('a polarity switch', () => {
  it('stands where the leads bring the right polarity to the pedal', () => {
    const feed = all.wiring.feeds.find(({ pedal }) => pedal === 'synth');
    if (feed === undefined) throw new Error('the sample has a synth');
    expect(switchPosition(inventory, feed)).toBe('centre-negative');
    expect(switchPosition(inventory, { ...feed, adapters: [partId('mini')] })).toBe('centre-positive');
    expect(switchPosition(inventory, { ...feed, adapters: [partId('flip'), partId('flip')] })).toBe('centre-positive');
  });

  it('is not there on an output of one polarity', () => {
    const feed = all.wiring.feeds.find(({ pedal }) => pedal === 'looper');
    expect(feed && switchPosition(inventory, feed)).toBeNull();
  });
});

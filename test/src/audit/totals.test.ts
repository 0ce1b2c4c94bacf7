import { describe, expect, it } from 'vitest';

import { microamps, milliwatts } from '../../../src/domain/quantities.js';
import type { JoinMode, Total } from '../../../src/domain/supply.js';
import {
  bank,
  draws,
  faults,
  feed,
  joinLead,
  listed,
  messages,
  pedal,
  setting,
  supply,
  times,
  type Case,
} from './cases.js';

const current = (value: number): Total => ({ kind: 'current', microamps: microamps(value) });
const power = (value: number): Total => ({ kind: 'power', milliwatts: milliwatts(value) });

/** 100 mA at 9 V on output 1 and 50 mA at 12 V on output 3; outputs 1 and 2, 3 and 4 are banks. */
const apart = (totals: { readonly banks?: readonly (Total | null)[]; readonly supply?: Total }): Case => ({
  pedals: [pedal('echo', draws(100)), pedal('fuzz', { ...draws(50), accepts: listed(12) })],
  supplies: [
    supply(
      'quay',
      [0, 1].map((index) =>
        bank({ settings: [setting(9, 500), setting(12, 500)], total: totals.banks?.[index] ?? null }),
      ),
      { total: totals.supply ?? null },
    ),
  ],
  feeds: [feed('echo', 1), feed('fuzz', 3, { volts: [12] })],
  headroom: { supply: times(1.2) },
});

describe('total', () => {
  it('caps load × supply in milliamps for the whole supply', () => {
    expect(faults(apart({ supply: current(180000) }))).toEqual([]);
    expect(faults(apart({ supply: current(179999) }))).toEqual(['total']);
    expect(messages(apart({ supply: current(179999) }))).toEqual([
      'the load on Quay (unit 1) is 150 mA × 1.2 = 180 mA; it gives 179.999 mA in total',
    ]);
  });

  it('caps volts × milliamps in watts for the whole supply', () => {
    // 9 V × 100 mA + 12 V × 50 mA = 1.5 W, × 1.2 = 1.8 W.
    expect(faults(apart({ supply: power(1800) }))).toEqual([]);
    expect(faults(apart({ supply: power(1799) }))).toEqual(['total']);
    expect(messages(apart({ supply: power(1799) }))).toEqual([
      'the load on Quay (unit 1) is 1.5 W × 1.2 = 1.8 W; it gives 1.799 W in total',
    ]);
  });

  it('caps each bank by what hangs on it', () => {
    expect(faults(apart({ banks: [current(120000), current(60000)] }))).toEqual([]);
    expect(faults(apart({ banks: [current(119999), current(60000)] }))).toEqual(['total']);
    expect(faults(apart({ banks: [current(119999), current(59999)] }))).toEqual(['total', 'total']);
    expect(faults(apart({ banks: [power(1080), power(720)] }))).toEqual([]);
    expect(faults(apart({ banks: [power(1080), power(719)] }))).toEqual(['total']);
    expect(messages(apart({ banks: [null, power(719)] }))).toEqual([
      'the load on the bank of outputs 3 and 4 of Quay (unit 1) is 0.6 W × 1.2 = 0.72 W; it gives 0.719 W in total',
    ]);
  });

  it('counts a guess with its factor', () => {
    const guessed = (total: number): Case => {
      const of = apart({ supply: current(total) });
      return {
        ...of,
        pedals: of.pedals.map((each) => ({ ...each, figure: 'guess' })),
        policy: { guess: times(1.5) },
      };
    };
    expect(faults(guessed(270000))).toEqual([]);
    expect(faults(guessed(269999))).toEqual(['total']);
  });

  it('counts each unit by itself', () => {
    const of = apart({ supply: current(120000) });
    expect(faults(of)).toEqual(['total']);
    expect(faults({ ...of, feeds: [feed('echo', 1), feed('fuzz', 3, { volts: [12], unit: 2 })] })).toEqual([]);
  });
});

describe('total with joined outputs', () => {
  type Totals = { readonly banks?: readonly (Total | null)[]; readonly supply?: Total };

  /** 100 mA from one output of each of two banks, or from both outputs of the first bank; in series at 9 V + 12 V. */
  const joined = (mode: JoinMode, outputs: readonly [number, number], { banks, supply: total }: Totals): Case => ({
    pedals: [pedal('echo', { ...draws(100), accepts: listed(9, 18, 21) })],
    supplies: [
      supply(
        'quay',
        [0, 1].map((index) =>
          bank({ joins: [mode], settings: [setting(9, 500), setting(12, 500)], total: banks?.[index] ?? null }),
        ),
        { total: total ?? null },
      ),
    ],
    parts: [joinLead('stack', mode)],
    feeds: [feed('echo', outputs, { join: [mode, 'stack'], volts: mode === 'series' ? [9, 12] : [9, 9] })],
  });

  it('counts a series load on both outputs, in milliamps', () => {
    expect(faults(joined('series', [1, 3], { supply: current(200000) }))).toEqual([]);
    expect(faults(joined('series', [1, 3], { supply: current(199999) }))).toEqual(['total']);
    expect(faults(joined('series', [1, 3], { banks: [current(100000), current(100000)] }))).toEqual([]);
    expect(faults(joined('series', [1, 3], { banks: [current(100000), current(99999)] }))).toEqual(['total']);
    expect(faults(joined('series', [1, 2], { banks: [current(200000)] }))).toEqual([]);
    expect(faults(joined('series', [1, 2], { banks: [current(199999)] }))).toEqual(['total']);
  });

  it("counts each output's own volts in series, in watts", () => {
    expect(faults(joined('series', [1, 3], { supply: power(2100), banks: [power(900), power(1200)] }))).toEqual([]);
    expect(faults(joined('series', [1, 3], { supply: power(2099) }))).toEqual(['total']);
    expect(faults(joined('series', [1, 3], { banks: [power(899), power(1200)] }))).toEqual(['total']);
    expect(faults(joined('series', [1, 3], { banks: [power(900), power(1199)] }))).toEqual(['total']);
    expect(faults(joined('series', [1, 2], { banks: [power(2100)] }))).toEqual([]);
    expect(faults(joined('series', [1, 2], { banks: [power(2099)] }))).toEqual(['total']);
  });

  it('counts the whole of a parallel load in each bank, and once in the supply', () => {
    const enough = { supply: current(100000), banks: [current(100000), current(100000)] };
    expect(faults(joined('parallel', [1, 3], enough))).toEqual([]);
    expect(faults(joined('parallel', [1, 3], { supply: current(99999) }))).toEqual(['total']);
    expect(faults(joined('parallel', [1, 3], { banks: [current(99999), current(100000)] }))).toEqual(['total']);
    expect(faults(joined('parallel', [1, 3], { banks: [current(100000), current(99999)] }))).toEqual(['total']);
    expect(faults(joined('parallel', [1, 3], { supply: power(900), banks: [power(900), power(900)] }))).toEqual([]);
    expect(faults(joined('parallel', [1, 3], { supply: power(899) }))).toEqual(['total']);
  });

  it('counts a parallel load once in a bank that has both outputs', () => {
    expect(faults(joined('parallel', [1, 2], { banks: [current(100000)] }))).toEqual([]);
    expect(faults(joined('parallel', [1, 2], { banks: [current(99999)] }))).toEqual(['total']);
    expect(faults(joined('parallel', [1, 2], { banks: [power(900)] }))).toEqual([]);
    expect(faults(joined('parallel', [1, 2], { banks: [power(899)] }))).toEqual(['total']);
  });
});

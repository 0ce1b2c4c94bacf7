import { describe, expect, it } from 'vitest';

import {
  current,
  power,
  quayWith,
  type Totals,
  draws,
  faults,
  feed,
  listed,
  messages,
  pedal,
  times,
  type Case,
} from './cases.js';

/** 100 mA at 9 V on output 1 and 50 mA at 12 V on output 3; outputs 1 and 2, 3 and 4 are banks. */
const apart = (totals: Totals): Case => ({
  pedals: [pedal('echo', draws(100)), pedal('fuzz', { ...draws(50), accepts: listed(12) })],
  supplies: [quayWith(null, totals)],
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

import { describe, expect, it } from 'vitest';

import { microamps } from '../../../src/domain/quantities.js';
import type { JoinMode } from '../../../src/domain/supply.js';
import {
  current,
  power,
  quayWith,
  type Totals,
  bank,
  chainLead,
  draws,
  faults,
  feed,
  joinLead,
  judge,
  listed,
  messages,
  milliamps,
  pedal,
  setting,
  supply,
  times,
  type Case,
} from './cases.js';

const headroom = { alone: times(1.2), chained: times(2), supply: times(1) };

/** Pedals on one output rated in microamps, on a chain where there are several. */
const onOne = (ratingMicroamps: number, pedals: Case['pedals'], more: Partial<Case> = {}): Case => ({
  pedals,
  supplies: [supply('quay', [bank({ settings: [{ ...setting(9, 0), rating: microamps(ratingMicroamps) }] })])],
  parts: [chainLead('fan', 5)],
  feeds: pedals.map(({ id }) => feed(id, 1, pedals.length > 1 ? { chain: 'fan' } : {})),
  headroom,
  ...more,
});

const guesses = { policy: { guess: times(1.5) } };

describe('startup on an output', () => {
  it('is taken as stated, without headroom or guess factor', () => {
    const echo = [pedal('echo', { ...draws(100), figure: 'guess', startup: milliamps(350) })];
    expect(faults(onOne(350000, echo, guesses))).toEqual([]);
    expect(faults(onOne(349999, echo, guesses))).toEqual(['startup']);
    expect(messages(onOne(349999, echo, guesses))).toEqual([
      'Echo takes 350 mA when it is switched on; output 1 of Quay (unit 1) gives 349.999 mA at 9 V',
    ]);
  });

  it('adds the load of those that state none, guess factor included', () => {
    const chain = [
      pedal('echo', { ...draws(50), startup: milliamps(200) }),
      pedal('fuzz', { ...draws(20), figure: 'guess' }),
      pedal('drive', draws(5)),
    ];
    expect(faults(onOne(235000, chain, guesses))).toEqual([]);
    expect(faults(onOne(234999, chain, guesses))).toEqual(['startup']);
    expect(messages(onOne(234999, chain, guesses))).toEqual([
      'Echo, Fuzz and Drive take 235 mA when everything is switched on at once; output 1 of Quay (unit 1) gives 234.999 mA at 9 V',
    ]);
  });

  it('adds all startups, and is told once', () => {
    const pair = ['echo', 'fuzz'].map((id) => pedal(id, { ...draws(50), startup: milliamps(150) }));
    expect(faults(onOne(300000, pair))).toEqual([]);
    expect(faults(onOne(299999, pair))).toEqual(['startup']);
    expect(judge(onOne(299999, pair)).violations).toMatchObject([
      {
        rule: 'startup',
        pedals: ['echo', 'fuzz'],
        place: { supply: 'quay', unit: 1, outputs: [1] },
        numbers: { kind: 'load', unit: 'mA', factor: { numerator: 1, denominator: 1 }, limit: 299999 },
      },
    ]);
  });

  it('counts the load where that is more, of a guess as it is planned', () => {
    const pair = (startup: number): Case['pedals'] => [
      pedal('echo', { ...draws(50), startup: milliamps(200) }),
      pedal('fuzz', { ...draws(40), figure: 'guess', startup: milliamps(startup) }),
    ];
    // Fuzz is planned with 60 mA.
    for (const startup of [1, 59.999, 60]) {
      expect(faults(onOne(260000, pair(startup), guesses))).toEqual([]);
      expect(faults(onOne(259999, pair(startup), guesses))).toEqual(['startup']);
    }
    expect(faults(onOne(260000, pair(60.001), guesses))).toEqual(['startup']);
  });

  it('is not told where no startup exceeds its load', () => {
    const pair = [pedal('echo', { ...draws(50), startup: milliamps(50) }), pedal('fuzz', draws(40))];
    expect(faults(onOne(10000, pair))).toEqual(['current']);
    expect(judge(onOne(10000, pair)).wiring.outlets).toMatchObject([{ startup: null }]);
  });

  it('says nothing of an output without such a setting', () => {
    const echo = [pedal('echo', { ...draws(50), startup: milliamps(900), accepts: listed(9, 12) })];
    expect(faults(onOne(1000, echo, { feeds: [feed('echo', 1, { volts: [12] })] }))).toEqual(['setting']);
  });
});

/** Each takes 500 mA at switch-on: Echo at 9 V on output 1, Fuzz at 12 V on output 3; outputs 1 and 2, 3 and 4 are banks. */
const apart = (totals: Totals): Case => ({
  pedals: [
    pedal('echo', { ...draws(100), startup: milliamps(500) }),
    pedal('fuzz', { ...draws(100), startup: milliamps(500), accepts: listed(12) }),
  ],
  supplies: [quayWith(null, totals)],
  feeds: [feed('echo', 1), feed('fuzz', 3, { volts: [12] })],
  headroom,
});

describe('startup in totals', () => {
  it('adds up for the whole supply, in milliamps', () => {
    expect(faults(apart({ supply: current(1000000) }))).toEqual([]);
    expect(faults(apart({ supply: current(999999) }))).toEqual(['startup']);
    expect(messages(apart({ supply: current(600000) }))).toEqual([
      'Echo and Fuzz take 1000 mA when everything is switched on at once; Quay (unit 1) gives 600 mA in total',
    ]);
  });

  it('adds volts × milliamps in watts', () => {
    // 9 V × 500 mA + 12 V × 500 mA = 10.5 W.
    expect(faults(apart({ supply: power(10500) }))).toEqual([]);
    expect(faults(apart({ supply: power(10499) }))).toEqual(['startup']);
    expect(messages(apart({ supply: power(10499) }))).toEqual([
      'Echo and Fuzz take 10.5 W when everything is switched on at once; Quay (unit 1) gives 10.499 W in total',
    ]);
  });

  it('adds up for each bank by what hangs on it', () => {
    expect(faults(apart({ banks: [current(500000), power(6000)] }))).toEqual([]);
    expect(faults(apart({ banks: [current(499999), power(6000)] }))).toEqual(['startup']);
    expect(faults(apart({ banks: [current(499999), power(5999)] }))).toEqual(['startup', 'startup']);
    expect(messages(apart({ banks: [null, power(5999)] }))).toEqual([
      'Fuzz takes 6 W when it is switched on; the bank of outputs 3 and 4 of Quay (unit 1) gives 5.999 W in total',
    ]);
    expect(judge(apart({ banks: [null, power(5999)] })).violations).toMatchObject([
      { pedals: ['fuzz'], place: { outputs: [3, 4] }, numbers: { unit: 'W', limit: 5999 } },
    ]);
  });

  it('counts the load of those that state none or less, without the factor of the total', () => {
    const of = (startup: number | null, total: number): Case => {
      const [echo, fuzz] = apart({}).pedals;
      const quiet = { ...fuzz, ...draws(100), figure: 'guess' } as Case['pedals'][number];
      return {
        ...apart({ supply: current(total) }),
        ...guesses,
        pedals: [echo as Case['pedals'][number], { ...quiet, startup: startup === null ? null : milliamps(startup) }],
        headroom: { ...headroom, supply: times(1.2) },
      };
    };
    // 500 mA and 100 mA × 1.5 for a guess.
    for (const startup of [null, 100, 150]) {
      expect(faults(of(startup, 650000))).toEqual([]);
      expect(faults(of(startup, 649999))).toEqual(['startup']);
    }
    expect(faults(of(151, 650000))).toEqual(['startup']);
  });

  it('is the affair of `total` alone where no startup there exceeds its load', () => {
    const calm = (total: number): Case => {
      const of = apart({ supply: current(total) });
      return { ...of, pedals: of.pedals.map((each) => ({ ...each, startup: milliamps(100) })) };
    };
    expect(faults(calm(200000))).toEqual([]);
    expect(faults(calm(199999))).toEqual(['total']);
    expect(judge(calm(199999)).wiring.totals).toMatchObject([{ startup: null }]);
  });

  it('counts a chain and each unit by itself', () => {
    const chain = ['echo', 'fuzz'].map((id) => pedal(id, { ...draws(10), startup: milliamps(250) }));
    const on = (total: number): Case =>
      onOne(900000, chain, { supplies: [quayWith(null, { supply: current(total) })] });
    expect(faults(on(500000))).toEqual([]);
    expect(faults(on(499999))).toEqual(['startup']);
    const single = apart({ supply: current(500000) });
    expect(faults(single)).toEqual(['startup']);
    expect(faults({ ...single, feeds: [feed('echo', 1), feed('fuzz', 3, { volts: [12], unit: 2 })] })).toEqual([]);
  });
});

describe('startup with joined outputs', () => {
  it('holds for their joint rating', () => {
    const rated = (mode: JoinMode, rating: number): Case => ({
      headroom,
      parts: [joinLead('stack', mode)],
      pedals: [pedal('echo', { ...draws(10), startup: milliamps(300), accepts: listed(9, 18) })],
      supplies: [supply('quay', [bank({ joins: [mode], settings: [setting(9, rating)] })])],
      feeds: [feed('echo', [1, 2], { join: [mode, 'stack'] })],
    });
    expect(faults(rated('parallel', 150))).toEqual([]);
    expect(faults(rated('parallel', 149.999))).toEqual(['startup']);
    expect(faults(rated('series', 300))).toEqual([]);
    expect(faults(rated('series', 299.999))).toEqual(['startup']);
  });
});

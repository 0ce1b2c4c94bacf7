import { describe, expect, it } from 'vitest';

import { microamps } from '../../../src/domain/quantities.js';
import {
  bank,
  chainLead,
  draws,
  faults,
  feed,
  joinLead,
  listed,
  messages,
  milliamps,
  pedal,
  setting,
  supply,
  times,
  volts,
  type Case,
} from './cases.js';

/** A pedal on an output rated in microamps, so that one microamp can make the difference. */
const alone = (ratingMicroamps: number, echo: Parameters<typeof pedal>[1] = {}, more: Partial<Case> = {}): Case => ({
  pedals: [pedal('echo', echo)],
  supplies: [supply('quay', [bank({ settings: [{ ...setting(9, 0), rating: microamps(ratingMicroamps) }] })])],
  feeds: [feed('echo', 1)],
  headroom: { alone: times(1.2), chained: times(2) },
  ...more,
});

const chained = (ratingMicroamps: number, pedals: Case['pedals'], more: Partial<Case> = {}): Case => ({
  ...alone(ratingMicroamps),
  pedals,
  parts: [chainLead('fan', 5)],
  feeds: pedals.map((each) => feed(each.id, 1, { chain: 'fan' })),
  ...more,
});

describe('current', () => {
  it('allows load × alone up to the rating, and no microamp more', () => {
    expect(faults(alone(216000, draws(180)))).toEqual([]);
    expect(faults(alone(215999, draws(180)))).toEqual(['current']);
    expect(messages(alone(100000, draws(180)))).toEqual([
      'Echo draws 180 mA × 1.2 = 216 mA; output 1 of Quay (unit 1) gives 100 mA at 9 V',
    ]);
  });

  it('compares exactly where the planned load is no whole number of microamps', () => {
    // 1 µA × 1.2 = 1.2 µA: 1 µA is too little, 2 µA is enough.
    expect(faults(alone(1, draws(0.001)))).toEqual(['current']);
    expect(faults(alone(2, draws(0.001)))).toEqual([]);
    // A factor that is no decimal at all: 3 mA × 4/3 = 4 mA.
    const thirds = { headroom: { alone: { numerator: 4, denominator: 3 } } };
    expect(faults(alone(4000, draws(3), thirds))).toEqual([]);
    expect(faults(alone(3999, draws(3), thirds))).toEqual(['current']);
  });

  it('multiplies a guessed draw, and no other', () => {
    const guess = { policy: { guess: times(1.5) } };
    expect(faults(alone(270000, { ...draws(150), figure: 'guess' }, guess))).toEqual([]);
    expect(faults(alone(269999, { ...draws(150), figure: 'guess' }, guess))).toEqual(['current']);
    for (const figure of ['label', 'manual', 'measured'] as const) {
      expect(faults(alone(180000, { ...draws(150), figure }, guess))).toEqual([]);
    }
    expect(messages(alone(269999, { ...draws(150), figure: 'guess' }, guess))).toEqual([
      'Echo draws 150 mA × 1.5 (a guess) × 1.2 = 270 mA; output 1 of Quay (unit 1) gives 269.999 mA at 9 V',
    ]);
  });

  it('takes the draw at the volts of the setting', () => {
    const perVoltage: Partial<Case> = {
      pedals: [
        pedal('echo', {
          accepts: listed(9, 12),
          draw: {
            kind: 'per voltage',
            microamps: new Map([
              [volts(9), milliamps(300)],
              [volts(12), milliamps(230)],
            ]),
          },
        }),
      ],
      supplies: [supply('quay', [bank({ settings: [setting(9, 276), setting(12, 276)] })])],
    };
    expect(faults(alone(1, {}, { ...perVoltage, feeds: [feed('echo', 1, { volts: [12] })] }))).toEqual([]);
    expect(faults(alone(1, {}, { ...perVoltage, feeds: [feed('echo', 1, { volts: [9] })] }))).toEqual(['current']);
  });

  it('takes the highest figure at volts without one, which are refused anyway', () => {
    const draw = { kind: 'per voltage', microamps: new Map([[volts(12), milliamps(230)]]) } as const;
    expect(faults(alone(276000, { accepts: listed(12), draw }))).toEqual(['voltage']);
    expect(faults(alone(275999, { accepts: listed(12), draw }))).toEqual(['voltage', 'current']);
  });

  it('allows the total load × chained up to the rating of a shared output', () => {
    const pair = [pedal('echo', draws(30)), pedal('fuzz', draws(20))];
    expect(faults(chained(100000, pair))).toEqual([]);
    expect(faults(chained(99999, pair))).toEqual(['current']);
    expect(messages(chained(99999, pair))).toEqual([
      'Echo and Fuzz draw (30 mA + 20 mA) × 2 = 100 mA; output 1 of Quay (unit 1) gives 99.999 mA at 9 V',
    ]);
  });
});

describe('current of joined outputs', () => {
  const joined = (mode: 'series' | 'parallel', first: number, second: number, draw: number): Case => ({
    ...alone(1),
    pedals: [pedal('echo', { ...draws(draw), accepts: listed(9, 18) })],
    supplies: [
      supply(
        'quay',
        [first, second].map((rating) => bank({ outputs: 1, joins: [mode], settings: [setting(9, rating)] })),
      ),
    ],
    parts: [joinLead('stack', mode)],
    feeds: [feed('echo', [1, 2], { join: [mode, 'stack'] })],
  });

  it('has the smaller rating in series', () => {
    expect(faults(joined('series', 120, 500, 100))).toEqual([]);
    expect(faults(joined('series', 500, 119.999, 100))).toEqual(['current']);
  });

  it('has the sum of the ratings in parallel', () => {
    expect(faults(joined('parallel', 20, 100, 100))).toEqual([]);
    expect(faults(joined('parallel', 20, 99.999, 100))).toEqual(['current']);
    expect(messages(joined('parallel', 20, 99, 100))).toEqual([
      'Echo draws 100 mA × 1.2 = 120 mA; outputs 1 and 2 of Quay (unit 1) give 119 mA at 9 V and 9 V in parallel',
    ]);
  });
});

import { describe, expect, it } from 'vitest';

import { millivolts } from '../../../src/domain/quantities.js';
import { bank, faults, feed, joinLead, listed, messages, pedal, setting, supply, volts, type Case } from './cases.js';

const one = (echo: Parameters<typeof pedal>[1], ofBank: Parameters<typeof bank>[0], atVolts = 9): Case => ({
  pedals: [pedal('echo', echo)],
  supplies: [supply('quay', [bank(ofBank)])],
  feeds: [feed('echo', 1, { volts: [atVolts], polarity: echo?.power === 'AC' ? null : 'centre-negative' })],
});

describe('power', () => {
  const alternating = { power: 'AC', polarity: null } as const;

  it('lets AC meet AC and DC meet DC', () => {
    expect(faults(one({}, {}))).toEqual([]);
    expect(faults(one(alternating, alternating))).toEqual([]);
  });

  it('refuses AC on DC and DC on AC', () => {
    expect(faults(one(alternating, {}))).toEqual(['power']);
    expect(faults(one({}, alternating))).toEqual(['power']);
    expect(messages(one(alternating, {}))).toEqual(['Echo needs AC; output 1 of Quay (unit 1) gives DC']);
  });

  it('refuses a join of which one output has the wrong power', () => {
    const mixed: Case = {
      pedals: [pedal('echo', { accepts: listed(18) })],
      supplies: [supply('quay', [bank({ joins: ['series'] }), bank({ joins: ['series'], ...alternating })])],
      parts: [joinLead('stack', 'series')],
      feeds: [feed('echo', [2, 3], { join: ['series', 'stack'] })],
    };
    expect(new Set(faults(mixed))).toEqual(new Set(['power', 'join']));
  });
});

describe('voltage', () => {
  const threeSettings = { settings: [setting(9, 500), setting(12, 500), setting(18, 500)] };

  it('accepts the listed volts only', () => {
    const nineOrEighteen = { accepts: listed(9, 18) };
    expect(faults(one(nineOrEighteen, threeSettings, 18))).toEqual([]);
    expect(faults(one(nineOrEighteen, threeSettings, 12))).toEqual(['voltage']);
    expect(messages(one(nineOrEighteen, threeSettings, 12))).toEqual([
      'Echo accepts 9 V or 18 V; output 1 of Quay (unit 1) gives 12 V',
    ]);
  });

  it('includes both ends of a range and nothing beyond', () => {
    const from9To18 = { accepts: { kind: 'range', from: volts(9), to: volts(18) } } as const;
    const at = (value: number): readonly string[] => faults(one(from9To18, { settings: [setting(value, 500)] }, value));
    expect([9, 13.5, 18].map(at)).toEqual([[], [], []]);
    expect([8.999, 18.001].map(at)).toEqual([['voltage'], ['voltage']]);
  });

  it('asks that open-circuit volts be accepted, to the millivolt', () => {
    const range = { accepts: { kind: 'range', from: volts(9), to: volts(14) } } as const;
    expect(faults(one(range, { settings: [setting(9, 500, 14)] }))).toEqual([]);
    expect(faults(one(range, { settings: [setting(9, 500, 14.001)] }))).toEqual(['voltage']);
    expect(faults(one({}, { settings: [setting(9, 500, 14)] }))).toEqual(['voltage']);
    expect(faults(one({ accepts: listed(9, 14) }, { settings: [setting(9, 500, 14)] }))).toEqual([]);
  });

  it('lets open-circuit volts rise to what the pedal survives, and no millivolt more', () => {
    const upTo = (survives: number): Case =>
      one({ survives: millivolts(survives) }, { settings: [setting(9, 500, 14)] });
    expect(faults(upTo(14000))).toEqual([]);
    expect(faults(upTo(13999))).toEqual(['voltage']);
    expect(messages(upTo(13999))).toEqual([
      'Echo accepts 9 V (survives 13.999 V); output 1 of Quay (unit 1) is unregulated and rises to 14 V without a load',
    ]);
  });

  it('never takes what a pedal survives for volts that it accepts', () => {
    expect(faults(one({ survives: volts(20) }, threeSettings, 18))).toEqual(['voltage']);
  });

  it('holds a regulated output to its setting', () => {
    expect(faults(one({ survives: volts(9) }, {}))).toEqual([]);
  });
});

describe('voltage of joined outputs', () => {
  const joined = (
    mode: 'series' | 'parallel',
    accepted: number,
    survives: number,
    openCircuits: (number | null)[],
  ): Case => ({
    pedals: [pedal('echo', { accepts: listed(accepted), survives: volts(survives) })],
    supplies: [
      supply(
        'quay',
        openCircuits.map((open) => bank({ outputs: 1, joins: [mode], settings: [setting(9, 500, open)] })),
      ),
    ],
    parts: [joinLead('stack', mode)],
    feeds: [feed('echo', [1, 2], { join: [mode, 'stack'] })],
  });

  it('adds the volts of a series join', () => {
    expect(faults(joined('series', 18, 18, [null, null]))).toEqual([]);
    expect(faults(joined('series', 9, 18, [null, null]))).toEqual(['voltage']);
  });

  it('keeps the volts of a parallel join', () => {
    expect(faults(joined('parallel', 9, 9, [null, null]))).toEqual([]);
    expect(faults(joined('parallel', 18, 18, [null, null]))).toEqual(['voltage']);
  });

  it('adds open-circuit volts in series, a regulated output counting with its setting', () => {
    expect(faults(joined('series', 18, 27, [13, 14]))).toEqual([]);
    expect(faults(joined('series', 18, 26.999, [13, 14]))).toEqual(['voltage']);
    expect(faults(joined('series', 18, 23, [null, 14]))).toEqual([]);
    expect(faults(joined('series', 18, 22.999, [null, 14]))).toEqual(['voltage']);
  });

  it('takes the higher open-circuit volts in parallel', () => {
    expect(faults(joined('parallel', 9, 14, [13, 14]))).toEqual([]);
    expect(faults(joined('parallel', 9, 13.999, [14, 13]))).toEqual(['voltage']);
    expect(faults(joined('parallel', 9, 13.999, [null, 14]))).toEqual(['voltage']);
  });
});

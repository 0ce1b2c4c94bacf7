import { describe, expect, it } from 'vitest';

import {
  bank,
  chainLead,
  feed,
  joinLead,
  judge,
  listed,
  milliamps,
  part,
  pedal,
  setting,
  supply,
  type Case,
} from './cases.js';

const parts = [part('flip', { reverses: true }), chainLead('fan', 5), joinLead('stack', 'series')];

/** Of every violation the rule, the pedals and the outputs, all on unit 1 of the supply. */
const placed = (of: Case): readonly unknown[] =>
  judge(of).violations.map(({ rule, pedals, place }) => {
    expect(place).toMatchObject({ supply: 'quay', unit: 1 });
    return [rule, pedals, place?.outputs];
  });

const echo = pedal('echo');
const fuzz = pedal('fuzz');
const positive = { polarity: 'centre-positive' } as const;

describe('a violation names its pedals and its outputs', () => {
  it('of polarity, on a line and at a switch', () => {
    const wrong: Case = {
      pedals: [echo, pedal('fuzz', positive)],
      supplies: [supply('quay', [bank()])],
      feeds: [feed('echo', 1), feed('fuzz', 2, positive)],
    };
    expect(placed(wrong)).toEqual([['polarity', ['fuzz'], [2]]]);
    const torn: Case = {
      pedals: [pedal('tuner'), echo, pedal('fuzz', positive)],
      supplies: [supply('quay', [bank({ polarity: 'either' })])],
      parts,
      feeds: [feed('tuner', 2), feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan', ...positive })],
    };
    expect(placed(torn)).toEqual([['polarity', ['echo', 'fuzz'], [1]]]);
  });

  it('of a plug', () => {
    const of: Case = {
      pedals: [echo, pedal('fuzz', { inlet: 'jack-3.5' })],
      supplies: [supply('quay', [bank()])],
      feeds: [feed('echo', 1), feed('fuzz', 2)],
    };
    expect(placed(of)).toEqual([['plug', ['fuzz'], [2]]]);
  });

  it('of a setting that there is not, and of one switch that stands both ways', () => {
    const unknown: Case = {
      pedals: [echo, pedal('fuzz', { accepts: listed(12) })],
      supplies: [supply('quay', [bank()])],
      feeds: [feed('echo', 1), feed('fuzz', 2, { volts: [12] })],
    };
    expect(placed(unknown)).toContainEqual(['setting', ['fuzz'], [2]]);
    const both = (switching: 'each' | 'together', outputs: readonly [number, number], shared = {}): Case => ({
      pedals: [echo, pedal('fuzz', { accepts: listed(12) }), pedal('tuner')],
      supplies: [supply('quay', [bank({ switching, settings: [setting(9, 500), setting(12, 500)] }), bank()])],
      parts,
      feeds: [feed('echo', outputs[0], shared), feed('fuzz', outputs[1], { ...shared, volts: [12] }), feed('tuner', 3)],
    });
    expect(placed(both('each', [1, 1], { chain: 'fan' }))).toContainEqual(['setting', ['echo', 'fuzz'], [1]]);
    expect(placed(both('together', [1, 2]))).toEqual([['setting', ['echo', 'fuzz'], [1, 2]]]);
    expect(placed(both('each', [1, 2]))).toEqual([]);
  });

  it('of a join, on its own outputs and with whom it shares them', () => {
    const stacked = feed('echo', [1, 2], { join: ['series', 'stack'] });
    const of = (joins: readonly ['series'] | readonly []): Case => ({
      pedals: [pedal('echo', { accepts: listed(18) }), fuzz],
      supplies: [supply('quay', [bank({ outputs: 3, joins })])],
      parts,
      feeds: [stacked, feed('fuzz', 3)],
    });
    expect(placed(of(['series']))).toEqual([]);
    expect(placed(of([]))).toEqual([['join', ['echo'], [1, 2]]]);
    expect(placed({ ...of(['series']), feeds: [stacked, feed('fuzz', 2)] })).toContainEqual([
      'join',
      ['echo', 'fuzz'],
      [1, 2],
    ]);
  });

  it('of a total, without the pedals and outputs that it does not count', () => {
    const of: Case = {
      pedals: [echo, fuzz, pedal('tuner')],
      supplies: [supply('quay', [bank({ total: { kind: 'current', microamps: milliamps(150) } }), bank()])],
      feeds: [feed('echo', 1), feed('fuzz', 2), feed('tuner', 3)],
    };
    expect(placed(of)).toEqual([['total', ['echo', 'fuzz'], [1, 2]]]);
  });

  it('in rising order, by number', () => {
    const of: Case = {
      pedals: [pedal('echo', { accepts: listed(18) }), fuzz],
      supplies: [supply('quay', [bank({ outputs: 10, joins: ['series'] })])],
      parts,
      feeds: [feed('echo', [10, 2], { join: ['series', 'stack'] }), feed('fuzz', 2)],
    };
    expect(placed(of)).toContainEqual(['join', ['echo', 'fuzz'], [2, 10]]);
  });
});

describe('a message about polarity says how often it is turned', () => {
  const message = (...adapters: readonly string[]): string | undefined =>
    judge({
      pedals: [pedal('echo', adapters.length % 2 === 0 ? positive : {})],
      supplies: [supply('quay', [bank()])],
      parts,
      feeds: [feed('echo', 1, { adapters })],
    }).violations[0]?.message;

  it('when it is', () => {
    expect(message()).toBe('Echo wants centre-positive; it gets centre-negative from output 1 of Quay (unit 1)');
    expect(message('flip')).toMatch(/^Echo wants centre-negative; it gets centre-positive from .*, reversed once$/);
    expect(message('flip', 'flip')).toMatch(/, reversed 2 times$/);
  });
});

import { describe, expect, it } from 'vitest';

import {
  bank,
  chainLead,
  faults,
  feed,
  joinLead,
  judge,
  listed,
  messages,
  part,
  pedal,
  setting,
  supply,
  type Case,
} from './cases.js';

const parts = [
  joinLead('stack', 'series'),
  joinLead('pair', 'parallel'),
  joinLead('mini-stack', 'series', { fits: 'jack-3.5' }),
  chainLead('fan', 2),
  part('straight'),
];

type BankChanges = Parameters<typeof bank>[0];

/** Outputs 1 and 2 are the first bank, 3 and 4 the second. */
const joined = (
  mode: 'series' | 'parallel',
  {
    first = {},
    second = {},
    outputs = [1, 2],
    lead,
    volts,
  }: {
    readonly first?: BankChanges;
    readonly second?: BankChanges;
    readonly outputs?: readonly number[];
    readonly lead?: string;
    readonly volts?: readonly number[];
  } = {},
): Case => ({
  pedals: [pedal('echo', { accepts: listed(9, 18, 21) })],
  supplies: [
    supply(
      'quay',
      [first, second].map((changes) =>
        bank({ joins: ['series', 'parallel'], settings: [setting(9, 500), setting(12, 500)], ...changes }),
      ),
    ),
  ],
  parts,
  feeds: [
    feed('echo', outputs, {
      join: [mode, lead ?? (mode === 'series' ? 'stack' : 'pair')],
      ...(volts === undefined ? {} : { volts }),
    }),
  ],
});

describe('join', () => {
  it('takes two outputs of one bank or of two', () => {
    for (const mode of ['series', 'parallel'] as const) {
      expect(faults(joined(mode))).toEqual([]);
      expect(faults(joined(mode, { outputs: [2, 3] }))).toEqual([]);
    }
  });

  it('takes isolated outputs only', () => {
    expect(faults(joined('series', { first: { isolated: false } }))).toEqual(['join']);
    expect(faults(joined('series', { outputs: [2, 3], second: { isolated: false } }))).toEqual(['join']);
    expect(messages(joined('series', { outputs: [2, 3], second: { isolated: false } }))).toEqual([
      'outputs 2 and 3 of Quay (unit 1) cannot be joined: 3 is not isolated',
    ]);
  });

  it('takes what the maker of both banks allows', () => {
    expect(faults(joined('series', { first: { joins: ['series'] } }))).toEqual([]);
    expect(faults(joined('series', { first: { joins: ['parallel'] } }))).toEqual(['join']);
    expect(faults(joined('parallel', { first: { joins: [] } }))).toEqual(['join']);
    expect(faults(joined('parallel', { outputs: [1, 3], second: { joins: ['series'] } }))).toEqual(['join']);
  });

  it('takes the lead of its kind that fits', () => {
    expect(faults(joined('series', { lead: 'pair' }))).toEqual(['join']);
    expect(faults(joined('parallel', { lead: 'stack' }))).toEqual(['join']);
    expect(faults(joined('series', { lead: 'fan' }))).toEqual(['join']);
    expect(faults(joined('series', { lead: 'straight' }))).toEqual(['join']);
    expect(faults(joined('series', { lead: 'mini-stack' }))).toEqual(['join']);
    expect(messages(joined('series', { lead: 'pair' }))).toEqual(['Pair joins in parallel, not in series']);
  });

  it('takes banks that agree in power, plug and polarity', () => {
    const across = (second: BankChanges): readonly string[] => faults(joined('series', { outputs: [1, 3], second }));
    expect(across({ plug: 'jack-3.5' })).toEqual(['join', 'join']);
    expect(across({ polarity: 'centre-positive' })).toEqual(['join']);
    expect(across({ polarity: 'either' })).toEqual([]);
    expect(messages(joined('series', { outputs: [1, 3], second: { polarity: 'centre-positive' } }))).toEqual([
      'outputs 1 and 3 of Quay (unit 1) cannot be joined: they differ in polarity (centre-negative and centre-positive)',
    ]);
  });

  it('joins AC where its maker allows it', () => {
    const alternating = { power: 'AC', polarity: null } as const;
    const of = joined('series', { first: alternating });
    const pedals = of.pedals.map((each) => ({ ...each, ...alternating }));
    const feeds = of.feeds.map((each) => ({ ...each, polarity: null }));
    expect(faults({ ...of, pedals, feeds })).toEqual([]);
    const refused = joined('series', { first: { ...alternating, joins: [] } });
    expect(faults({ ...refused, pedals, feeds })).toEqual(['join']);
  });

  it('stands at the same volts in parallel, at any in series', () => {
    expect(faults(joined('series', { volts: [9, 12] }))).toEqual([]);
    expect(faults(joined('parallel', { volts: [9, 9] }))).toEqual([]);
    expect(faults(joined('parallel', { volts: [9, 12] }))).toEqual(['join']);
  });

  it('takes two different outputs', () => {
    expect(faults(joined('series', { outputs: [1] }))).toEqual(['join']);
    expect(faults(joined('parallel', { outputs: [1, 1] }))).toEqual(['join']);
    const unjoined = joined('series');
    expect(faults({ ...unjoined, feeds: [feed('echo', [1, 2])] })).toEqual(['join']);
  });

  it('feeds one pedal', () => {
    const withFuzz = (fuzz: Case['feeds'][number]): readonly string[] => {
      const of = joined('parallel');
      return faults({ ...of, pedals: [...of.pedals, pedal('fuzz')], feeds: [...of.feeds, fuzz] });
    };
    expect(withFuzz(feed('fuzz', 3))).toEqual([]);
    expect(withFuzz(feed('fuzz', 1, { unit: 2 }))).toEqual([]);
    expect(withFuzz(feed('fuzz', 2))).toEqual(['join']);
    expect(withFuzz(feed('fuzz', [1, 2], { join: ['parallel', 'pair'] }))).toEqual(['join']);
    expect(withFuzz(feed('fuzz', [2, 3], { join: ['parallel', 'pair'] }))).toEqual(['join']);
    expect(withFuzz(feed('fuzz', [3, 4], { join: ['parallel', 'pair'] }))).toEqual([]);
  });

  it('feeds one pedal, wherever the board lists the other one', () => {
    const of = joined('parallel');
    const before = { ...of, pedals: [pedal('fuzz'), ...of.pedals], feeds: [feed('fuzz', 2), ...of.feeds] };
    expect(faults(before)).toEqual(['join']);
    expect(messages(before)).toEqual([
      'outputs 1 and 2 of Quay (unit 1) are joined for Echo and cannot feed Fuzz as well',
    ]);
  });

  it('is the same whichever output is named first', () => {
    expect(faults(joined('series', { outputs: [2, 1] }))).toEqual([]);
    const of = joined('parallel');
    const both = [...of.feeds, feed('fuzz', [2, 1], { join: ['parallel', 'pair'] })];
    const report = judge({ ...of, pedals: [...of.pedals, pedal('fuzz')], feeds: both });
    expect(report.violations.map((violation) => violation.rule)).toEqual(['join']);
    expect(report.wiring.score.parts).toBe(1);
  });

  it('has no lead that serves as an adapter', () => {
    const of = joined('parallel');
    const adapted = (adapter: string): Case => ({ ...of, feeds: [feed('echo', 1, { adapters: [adapter] })] });
    expect(faults(adapted('straight'))).toEqual([]);
    expect(faults(adapted('stack'))).toEqual(['join']);
  });
});

import { describe, expect, it } from 'vitest';

import {
  bank,
  chainLead,
  draws,
  faults,
  feed,
  joinLead,
  judge,
  listed,
  messages,
  pedal,
  supply,
  type Case,
} from './cases.js';

const shared = { isolated: false } as const;
const parts = [chainLead('fan', 5), joinLead('stack', 'series')];

/** A chain on isolated output 1, isolated outputs 1 to 3, shared outputs 4 to 6 in two banks. */
const onQuay = (pedals: Case['pedals'], feeds: Case['feeds']): Case => ({
  pedals,
  supplies: [
    supply('quay', [
      bank({ outputs: 3, joins: ['series'] }),
      bank({ outputs: 2, ...shared }),
      bank({ outputs: 1, ...shared }),
    ]),
  ],
  parts,
  feeds,
});

describe('ground', () => {
  const pedals = [pedal('echo'), pedal('fuzz', { ground: 'positive' })];
  const on = (first: Parameters<typeof feed>[1], second: Parameters<typeof feed>[1], more = {}): Case =>
    onQuay(pedals, [feed('echo', first, more), feed('fuzz', second, more)]);

  it('is its own on each isolated output', () => {
    expect(faults(on(1, 2))).toEqual([]);
    expect(faults(on(1, 4))).toEqual([]);
  });

  it('is one on a chain', () => {
    expect(faults(on(1, 1, { chain: 'fan' }))).toEqual(['ground']);
    expect(messages(on(1, 1, { chain: 'fan' }))).toEqual([
      'positive ground (Fuzz) and negative ground (Echo) meet on output 1 of Quay (unit 1)',
    ]);
  });

  it('is one for all shared outputs of a supply, across its banks', () => {
    expect(faults(on(4, 5))).toEqual(['ground']);
    expect(faults(on(4, 6))).toEqual(['ground']);
  });

  it('is told with everybody on it, isolated outputs and joins by their numbers', () => {
    const names = ['a', 'b', 'c', 'd', 'e'].map((name) => pedal(name));
    const feeds = [
      feed('a', 4),
      feed('b', 1, { chain: 'fan' }),
      feed('c', 1, { chain: 'fan' }),
      feed('d', 6),
      feed('e', [3, 2], { join: ['series', 'stack'] }),
    ];
    expect(judge(onQuay(names, feeds)).wiring.grounds).toEqual([
      { supply: 'quay', unit: 1, outputs: null, pedals: ['a', 'd'] },
      { supply: 'quay', unit: 1, outputs: [1], pedals: ['b', 'c'] },
      { supply: 'quay', unit: 1, outputs: [2, 3], pedals: ['e'] },
    ]);
  });

  it('is not shared between units', () => {
    expect(faults(onQuay(pedals, [feed('echo', 4), feed('fuzz', 5, { unit: 2 })]))).toEqual([]);
  });

  it('may be positive for all', () => {
    const positive = pedals.map((each) => ({ ...each, ground: 'positive' }) as const);
    expect(faults(onQuay(positive, [feed('echo', 4), feed('fuzz', 6)]))).toEqual([]);
  });

  it('is one for joined outputs, whoever else hangs on them', () => {
    const joined = (second: number): Case =>
      onQuay(
        [pedal('echo', { accepts: listed(18) }), pedal('fuzz', { ground: 'positive' })],
        [feed('echo', [1, 2], { join: ['series', 'stack'] }), feed('fuzz', second)],
      );
    expect(faults(joined(3))).toEqual([]);
    expect(faults(joined(2))).toEqual(['ground', 'join']);
  });

  it('holds for AC outputs too', () => {
    const alternating = { power: 'AC', polarity: null } as const;
    const pair = (isolated: boolean): Case => ({
      pedals: pedals.map((each) => ({ ...each, ...alternating })),
      supplies: [supply('quay', [bank({ ...alternating, isolated })])],
      feeds: [feed('echo', 1, { polarity: null }), feed('fuzz', 2, { polarity: null })],
    });
    expect(faults(pair(true))).toEqual([]);
    expect(faults(pair(false))).toEqual(['ground']);
  });
});

describe('exposed', () => {
  const loud = pedal('fuzz', { highGain: true });
  const digital = pedal('echo', { digital: true });
  const both = pedal('shimmer', { highGain: true, digital: true, ...draws(10) });
  const exposedIn = (pedals: Case['pedals'], feeds: Case['feeds']): readonly string[] =>
    judge(onQuay(pedals, feeds)).wiring.exposed;

  it('are the high-gain pedals that share a ground with a digital one', () => {
    expect(exposedIn([digital, loud], [feed('echo', 4), feed('fuzz', 6)])).toEqual(['fuzz']);
    expect(exposedIn([digital, loud], [feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan' })])).toEqual([
      'fuzz',
    ]);
    expect(exposedIn([digital, loud], [feed('echo', 1), feed('fuzz', 2)])).toEqual([]);
    expect(exposedIn([digital, loud], [feed('echo', 1), feed('fuzz', 4)])).toEqual([]);
    expect(exposedIn([digital, loud], [feed('echo', 4, { unit: 2 }), feed('fuzz', 4)])).toEqual([]);
  });

  it('do not expose themselves', () => {
    expect(exposedIn([both], [feed('shimmer', 4)])).toEqual([]);
    expect(exposedIn([both, loud], [feed('shimmer', 4), feed('fuzz', 5)])).toEqual(['fuzz']);
    expect(exposedIn([both, digital], [feed('shimmer', 4), feed('echo', 5)])).toEqual(['shimmer']);
    const twin = { ...both, id: loud.id };
    expect(exposedIn([both, twin], [feed('shimmer', 4), feed('fuzz', 5)])).toEqual(['shimmer', 'fuzz']);
  });

  it('are all told in the order of the board', () => {
    const drive = pedal('drive', { highGain: true });
    const feeds = [feed('fuzz', 4), feed('echo', 5), feed('drive', 6)];
    expect(exposedIn([drive, digital, loud], feeds)).toEqual(['drive', 'fuzz']);
  });
});

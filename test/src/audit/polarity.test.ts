import { describe, expect, it } from 'vitest';

import type { Polarity } from '../../../src/domain/pedal.js';
import type { Bank } from '../../../src/domain/supply.js';
import { bank, chainLead, faults, feed, joinLead, listed, messages, part, pedal, supply, type Case } from './cases.js';

const parts = [
  part('flip', { reverses: true }),
  part('straight'),
  chainLead('fan', 5),
  chainLead('flip-fan', 5, { reverses: true }),
  joinLead('stack', 'series'),
  joinLead('flip-stack', 'series', { reverses: true }),
];

type Changes = NonNullable<Parameters<typeof feed>[2]>;

const one = (output: Bank['polarity'], wanted: Polarity, changes: Changes): Case => ({
  pedals: [pedal('echo', { polarity: wanted })],
  supplies: [supply('quay', [bank({ polarity: output })])],
  parts,
  feeds: [feed('echo', 1, { polarity: wanted, ...changes })],
});

describe('polarity', () => {
  it('agrees by itself or not at all', () => {
    expect(faults(one('centre-negative', 'centre-negative', {}))).toEqual([]);
    expect(faults(one('centre-positive', 'centre-positive', {}))).toEqual([]);
    expect(faults(one('centre-negative', 'centre-positive', {}))).toEqual(['polarity']);
    expect(messages(one('centre-negative', 'centre-positive', {}))).toEqual([
      'Echo wants centre-positive; it gets centre-negative from output 1 of Quay (unit 1)',
    ]);
  });

  it('turns with every reversing lead', () => {
    const through = (...adapters: string[]): readonly string[] =>
      faults(one('centre-negative', 'centre-positive', { adapters }));
    expect(through('flip')).toEqual([]);
    expect(through('flip', 'straight')).toEqual([]);
    expect(through('straight')).toEqual(['polarity']);
    expect(through('flip', 'flip')).toEqual(['polarity']);
    expect(faults(one('centre-negative', 'centre-negative', { adapters: ['flip'] }))).toEqual(['polarity']);
    expect(faults(one('centre-negative', 'centre-negative', { adapters: ['flip', 'flip'] }))).toEqual([]);
  });

  it('is as the feed says', () => {
    const claim = (polarity: Polarity | null): Case => one('centre-negative', 'centre-negative', { polarity });
    expect(faults(claim('centre-negative'))).toEqual([]);
    expect(faults(claim('centre-positive'))).toEqual(['polarity']);
    expect(faults(claim(null))).toEqual(['polarity']);
    expect(messages(claim(null))).toEqual([
      'Echo is said to get no polarity; it gets centre-negative from output 1 of Quay (unit 1)',
    ]);
  });

  it('follows a polarity switch', () => {
    expect(faults(one('either', 'centre-positive', {}))).toEqual([]);
    expect(faults(one('either', 'centre-negative', { adapters: ['flip'] }))).toEqual([]);
    expect(faults(one('either', 'centre-negative', { polarity: 'centre-positive' }))).toEqual(['polarity']);
    expect(faults(one('either', 'centre-negative', { polarity: null }))).toEqual(['polarity']);
  });

  it('has no place in AC', () => {
    const alternating = (polarity: Polarity | null): Case => ({
      pedals: [pedal('echo', { power: 'AC', polarity: null })],
      supplies: [supply('quay', [bank({ power: 'AC', polarity: null })])],
      parts,
      feeds: [feed('echo', 1, { polarity, adapters: ['flip'] })],
    });
    expect(faults(alternating(null))).toEqual([]);
    expect(faults(alternating('centre-negative'))).toEqual(['polarity']);
  });

  it('refuses a DC output that states none', () => {
    expect(faults(one(null, 'centre-negative', {}))).toEqual(['polarity']);
  });
});

describe('polarity on a chain', () => {
  const pair = (output: Bank['polarity'], second: Polarity, chain: string, ...adapters: readonly string[][]): Case => ({
    pedals: [pedal('echo'), pedal('fuzz', { polarity: second })],
    supplies: [supply('quay', [bank({ polarity: output })])],
    parts,
    feeds: [
      feed('echo', 1, { chain, adapters: adapters[0] ?? [] }),
      feed('fuzz', 1, { chain, adapters: adapters[1] ?? [], polarity: second }),
    ],
  });

  it('turns every tail with a reversing chain lead', () => {
    expect(faults(pair('centre-negative', 'centre-negative', 'fan'))).toEqual([]);
    expect(faults(pair('centre-positive', 'centre-negative', 'flip-fan'))).toEqual([]);
    expect(faults(pair('centre-negative', 'centre-negative', 'flip-fan'))).toEqual(['polarity', 'polarity']);
    expect(faults(pair('centre-negative', 'centre-negative', 'flip-fan', ['flip'], ['flip']))).toEqual([]);
  });

  it('has one switch for all pedals of an output', () => {
    expect(faults(pair('either', 'centre-negative', 'fan'))).toEqual([]);
    expect(faults(pair('either', 'centre-positive', 'fan', [], ['flip']))).toEqual([]);
    const torn = pair('either', 'centre-positive', 'fan');
    expect(faults(torn)).toEqual(['polarity']);
    expect(messages(torn)).toEqual([
      'the polarity switch of output 1 of Quay (unit 1) would have to stand both ways, for Echo and Fuzz',
    ]);
    expect(faults(pair('either', 'centre-negative', 'fan', [], ['flip']))).toEqual(['polarity']);
  });

  it('has a switch for each output', () => {
    const of = pair('either', 'centre-positive', 'fan');
    expect(faults({ ...of, feeds: [feed('echo', 1), feed('fuzz', 2, { polarity: 'centre-positive' })] })).toEqual([]);
  });
});

describe('polarity of joined outputs', () => {
  const joined = (first: Bank['polarity'], second: Bank['polarity'], wanted: Polarity, lead = 'stack'): Case => ({
    pedals: [pedal('echo', { polarity: wanted, accepts: listed(18) })],
    supplies: [
      supply(
        'quay',
        [first, second].map((polarity) => bank({ outputs: 1, polarity, joins: ['series'] })),
      ),
    ],
    parts,
    feeds: [feed('echo', [1, 2], { join: ['series', lead], polarity: wanted })],
  });

  it('is that of the outputs, turned by a reversing lead', () => {
    expect(faults(joined('centre-positive', 'centre-positive', 'centre-positive'))).toEqual([]);
    expect(faults(joined('centre-positive', 'centre-positive', 'centre-negative'))).toEqual(['polarity']);
    expect(faults(joined('centre-positive', 'centre-positive', 'centre-negative', 'flip-stack'))).toEqual([]);
  });

  it('is what a fixed output makes of one with a switch', () => {
    expect(faults(joined('either', 'centre-positive', 'centre-positive'))).toEqual([]);
    expect(faults(joined('either', 'centre-positive', 'centre-negative'))).toEqual(['polarity']);
    expect(faults(joined('centre-negative', 'either', 'centre-positive'))).toEqual(['polarity']);
  });

  it('is free where both outputs have a switch', () => {
    expect(faults(joined('either', 'either', 'centre-positive'))).toEqual([]);
    expect(faults(joined('either', 'either', 'centre-negative', 'flip-stack'))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';

import { bank, chainLead, faults, feed, joinLead, listed, messages, part, pedal, supply, type Case } from './cases.js';

const parts = [
  part('mini', { fits: 'barrel-2.1', gives: 'jack-3.5' }),
  part('wide', { fits: 'barrel-2.1', gives: 'barrel-2.5' }),
  part('wide-to-mini', { fits: 'barrel-2.5', gives: 'jack-3.5' }),
  part('straight'),
  chainLead('fan', 5),
  chainLead('mini-fan', 5, { gives: 'jack-3.5' }),
  joinLead('stack', 'series', { gives: 'barrel-2.5' }),
];

const one = (inlet: string, ...adapters: readonly string[]): Case => ({
  pedals: [pedal('echo', { inlet })],
  supplies: [supply('quay', [bank()])],
  parts,
  feeds: [feed('echo', 1, { adapters })],
});

describe('plug', () => {
  it('agrees with the inlet by itself', () => {
    expect(faults(one('barrel-2.1'))).toEqual([]);
    expect(faults(one('jack-3.5'))).toEqual(['plug']);
    expect(messages(one('jack-3.5'))).toEqual([
      'Echo takes jack-3.5; what comes from output 1 of Quay (unit 1) offers barrel-2.1',
    ]);
  });

  it('agrees through adapters that fit one another, in their order', () => {
    expect(faults(one('jack-3.5', 'mini'))).toEqual([]);
    expect(faults(one('jack-3.5', 'wide', 'wide-to-mini'))).toEqual([]);
    expect(faults(one('jack-3.5', 'wide-to-mini', 'wide'))).toEqual(['plug']);
    expect(faults(one('barrel-2.1', 'mini'))).toEqual(['plug']);
    expect(messages(one('jack-3.5', 'wide-to-mini'))).toEqual([
      'Wide-to-mini fits barrel-2.5; what comes from output 1 of Quay (unit 1) to Echo offers barrel-2.1',
    ]);
  });

  it('takes at most two adapters', () => {
    expect(faults(one('barrel-2.1', 'straight', 'straight'))).toEqual([]);
    expect(faults(one('barrel-2.1', 'straight', 'straight', 'straight'))).toEqual(['plug']);
    expect(messages(one('barrel-2.1', 'straight', 'straight', 'straight'))).toEqual([
      'Echo hangs on 3 adapters in a row (straight, straight and straight); at most 2 are allowed',
    ]);
  });

  it('starts behind the chain lead, each tail by itself', () => {
    const pair = (chain: string, first: readonly string[], second: readonly string[]): Case => ({
      ...one('jack-3.5'),
      pedals: [pedal('echo', { inlet: 'jack-3.5' }), pedal('fuzz')],
      feeds: [feed('echo', 1, { chain, adapters: first }), feed('fuzz', 1, { chain, adapters: second })],
    });
    expect(faults(pair('fan', ['mini'], []))).toEqual([]);
    expect(faults(pair('fan', [], []))).toEqual(['plug']);
    expect(faults(pair('mini-fan', [], []))).toEqual(['plug']);
    expect(faults(pair('mini-fan', ['mini'], []))).toEqual(['plug', 'plug']);
  });

  it('starts behind the join lead', () => {
    const joined = (...adapters: readonly string[]): Case => ({
      ...one('jack-3.5'),
      pedals: [pedal('echo', { inlet: 'jack-3.5', accepts: listed(18) })],
      supplies: [supply('quay', [bank({ joins: ['series'] })])],
      feeds: [feed('echo', [1, 2], { join: ['series', 'stack'], adapters })],
    });
    expect(faults(joined('wide-to-mini'))).toEqual([]);
    expect(faults(joined('mini'))).toEqual(['plug']);
    expect(faults(joined())).toEqual(['plug']);
  });

  it('holds for AC as for DC', () => {
    const alternating = (inlet: string): Case => ({
      pedals: [pedal('echo', { power: 'AC', polarity: null, inlet })],
      supplies: [supply('quay', [bank({ power: 'AC', polarity: null })])],
      feeds: [feed('echo', 1, { polarity: null })],
    });
    expect(faults(alternating('barrel-2.1'))).toEqual([]);
    expect(faults(alternating('jack-3.5'))).toEqual(['plug']);
  });
});

import { describe, expect, it } from 'vitest';

import { minorUnits } from '../../../src/domain/quantities.js';
import { bank, chainLead, faults, feed, messages, pedal, supply, volts, type Case } from './cases.js';

/** Two units at 100.00. */
const two = (policy: Case['policy'], owned = 0): Case => ({
  pedals: [pedal('echo'), pedal('fuzz')],
  supplies: [supply('quay', [bank()])],
  feeds: [feed('echo', 1), feed('fuzz', 1, { unit: 2 })],
  owned: { quay: owned },
  ...(policy === undefined ? {} : { policy }),
});

describe('limit', () => {
  it('caps what is bought, to the cent', () => {
    expect(faults(two({ budget: minorUnits(20000) }))).toEqual([]);
    expect(faults(two({ budget: minorUnits(19999) }))).toEqual(['limit']);
    expect(faults(two({ budget: minorUnits(10000) }, 1))).toEqual([]);
    expect(faults(two({ budget: minorUnits(0) }, 2))).toEqual([]);
    expect(messages(two({ budget: minorUnits(19999) }))).toEqual([
      'what has to be bought costs 200.00 EUR; the budget is 199.99 EUR',
    ]);
  });

  it('caps the money without the noise price, parts included', () => {
    const noisy = (budget: number): Case => ({
      ...two({ budget: minorUnits(budget), noisePrice: minorUnits(2000) }),
      pedals: [pedal('echo', { digital: true }), pedal('fuzz', { highGain: true })],
      parts: [chainLead('fan', 2)],
      feeds: ['echo', 'fuzz'].map((id) => feed(id, 1, { chain: 'fan' })),
    });
    expect(faults(noisy(10500))).toEqual([]);
    expect(faults(noisy(10499))).toEqual(['limit']);
  });

  it('caps the supplies in use, owned or not', () => {
    expect(faults(two({ bricks: 2 }, 2))).toEqual([]);
    expect(faults(two({ bricks: 1 }, 2))).toEqual(['limit']);
    expect(messages(two({ bricks: 1 }))).toEqual(['2 supply units are in use; at most 1 may be']);
  });

  it('caps the mains sockets, one for each supply in use', () => {
    expect(faults(two({ sockets: 2 }))).toEqual([]);
    expect(faults(two({ sockets: 1 }))).toEqual(['limit']);
    expect(messages(two({ sockets: 1 }))).toEqual(['2 mains sockets are needed; 1 is at hand']);
  });
});

describe('mains', () => {
  const at = (mains: number | readonly number[], accepts: readonly [number, number] | null): Case => ({
    pedals: [pedal('echo')],
    supplies: [
      supply('quay', [bank()], {
        source: { kind: 'mains', volts: accepts && { from: volts(accepts[0]), to: volts(accepts[1]) } },
      }),
    ],
    feeds: [feed('echo', 1)],
    policy: { mains: [mains].flat().map(volts) },
  });

  it('lie within what the supply accepts, both ends included', () => {
    expect(faults(at(230, [100, 240]))).toEqual([]);
    expect(faults(at(230, [230, 240]))).toEqual([]);
    expect(faults(at(230, [100, 230]))).toEqual([]);
    expect(faults(at(230, [230.001, 240]))).toEqual(['mains']);
    expect(faults(at(230, [100, 229.999]))).toEqual(['mains']);
    expect(messages(at(230, [100, 127]))).toEqual(['Quay (unit 1) accepts 100 V to 127 V; the venue has 230 V']);
  });

  it('lie within it at every venue of a tour', () => {
    expect(faults(at([120, 230], [100, 240]))).toEqual([]);
    expect(faults(at([120, 230], [120, 230]))).toEqual([]);
    expect(messages(at([120, 230], [100, 127]))).toEqual(['Quay (unit 1) accepts 100 V to 127 V; the venue has 230 V']);
    expect(messages(at([230, 120], [220, 240]))).toEqual(['Quay (unit 1) accepts 220 V to 240 V; the venue has 120 V']);
    expect(messages(at([100, 120, 230], [220, 240]))).toEqual([
      'Quay (unit 1) accepts 220 V to 240 V; venues have 100 V and 120 V',
    ]);
    expect(faults(at([120, 230], null))).toEqual(['mains']);
  });

  it('refuse a supply that does not state its own, where the venue states them', () => {
    expect(faults(at(230, null))).toEqual(['mains']);
    expect(faults(at([], null))).toEqual([]);
    expect(faults(at([], [100, 127]))).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';

import {
  bank,
  chainLead,
  faults,
  feed,
  joinLead,
  listed,
  messages,
  pedal,
  setting,
  supply,
  type Case,
} from './cases.js';

const anyVolts = { accepts: listed(9, 12, 18, 21) };
const settings = [setting(9, 500), setting(12, 500)];

const two = (feeds: Case['feeds'], changes: Parameters<typeof bank>[0] = {}): Case => ({
  pedals: [pedal('echo', anyVolts), pedal('fuzz', anyVolts)],
  supplies: [supply('quay', [bank({ settings, ...changes }), bank({ settings, ...changes })])],
  parts: [chainLead('fan', 2), joinLead('stack', 'series')],
  feeds,
});

describe('setting', () => {
  it('must be one that the output has', () => {
    expect(faults(two([feed('echo', 1, { volts: [12] }), feed('fuzz', 2)]))).toEqual([]);
    const wrong = two([feed('echo', 1, { volts: [18] }), feed('fuzz', 2)]);
    expect(faults(wrong)).toEqual(['setting']);
    expect(messages(wrong)).toEqual(['Echo counts on 18 V from output 1 of Quay (unit 1), which gives 9 V or 12 V']);
  });

  it('must be on an output that exists', () => {
    expect(faults(two([feed('echo', 4), feed('fuzz', 1)]))).toEqual([]);
    const wrong = two([feed('echo', 5), feed('fuzz', 1)]);
    expect(faults(wrong)).toEqual(['setting', 'missing']);
    expect(messages(wrong)).toEqual(['Echo hangs on output 5 of Quay (unit 1), which has outputs 1 to 4 only']);
  });

  it('is the same for all pedals of one output', () => {
    const chained = (volts: number): Case =>
      two([feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan', volts: [volts] })]);
    expect(faults(chained(9))).toEqual([]);
    expect(faults(chained(12))).toEqual(['setting']);
    expect(messages(chained(12))).toEqual([
      'output 1 of Quay (unit 1) cannot give 9 V and 12 V at once, for Echo and Fuzz',
    ]);
  });

  it('is free for each output of a bank that is switched so', () => {
    expect(faults(two([feed('echo', 1), feed('fuzz', 2, { volts: [12] })]))).toEqual([]);
  });

  it('is the same for a bank that is switched together, and for that bank alone', () => {
    const together = { switching: 'together' } as const;
    expect(faults(two([feed('echo', 1, { volts: [12] }), feed('fuzz', 2, { volts: [12] })], together))).toEqual([]);
    expect(faults(two([feed('echo', 1), feed('fuzz', 3, { volts: [12] })], together))).toEqual([]);
    expect(faults(two([feed('echo', 1), feed('fuzz', 2, { volts: [12], unit: 2 })], together))).toEqual([]);
    const torn = two([feed('echo', 1), feed('fuzz', 2, { volts: [12] })], together);
    expect(faults(torn)).toEqual(['setting']);
    expect(messages(torn)).toEqual([
      'outputs 1 and 2 of Quay (unit 1) are switched together and cannot give 9 V and 12 V at once',
    ]);
  });

  it('is told once where a single output of a bank switched together is torn', () => {
    const feeds = [feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan', volts: [12] })];
    expect(faults(two(feeds, { switching: 'together' }))).toEqual(['setting']);
  });

  it('binds the outputs of a series join to their banks', () => {
    const series = (outputs: readonly number[], volts: readonly number[]): Case => ({
      ...two([feed('echo', outputs, { volts, join: ['series', 'stack'] })], {
        switching: 'together',
        joins: ['series'],
      }),
      pedals: [pedal('echo', anyVolts)],
    });
    expect(faults(series([1, 2], [9, 9]))).toEqual([]);
    expect(faults(series([2, 3], [9, 12]))).toEqual([]);
    expect(faults(series([1, 2], [9, 12]))).toEqual(['setting']);
  });
});

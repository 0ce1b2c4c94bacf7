import { describe, expect, it } from 'vitest';

import type { Feed } from '../../../src/domain/plan.js';
import { partId } from '../../../src/domain/quantities.js';
import { bank, chainLead, faults, feed, judge, messages, part, pedal, supply, type Case } from './cases.js';

const flip = part('flip', { reverses: true });
const mole = pedal('mole', { polarity: 'unknown' });

/** A feed of the mole by these leads for minus and for plus on the pin. */
const either = (output: number, minus: readonly string[], plus: readonly string[], chain = ''): Feed => ({
  ...feed('mole', output, {
    polarity: 'unknown',
    adapters: [...new Set([...minus, ...plus])],
    ...(chain === '' ? {} : { chain }),
  }),
  readings: { 'centre-negative': minus.map(partId), 'centre-positive': plus.map(partId) },
});

const onBox = (polarity: 'centre-negative' | 'either', ...feeds: readonly Feed[]): Case => ({
  pedals: [mole, pedal('echo')],
  supplies: [supply('quay', [bank({ outputs: 3, polarity })])],
  parts: [flip, chainLead('fan', 5)],
  feeds,
  partial: true,
});

describe('a pedal whose polarity nobody has read', () => {
  it('is right on a fixed output with a reversing lead for the other reading, and wrong without one', () => {
    expect(faults(onBox('centre-negative', either(1, [], ['flip'])))).toEqual([]);
    expect(messages(onBox('centre-negative', either(1, [], [])))).toEqual([
      'should the label say centre-positive: Mole wants centre-positive; it gets centre-negative from output 1 of Quay (unit 1)',
    ]);
    expect(faults(onBox('centre-negative', either(1, ['flip'], [])))).toEqual(['polarity', 'polarity']);
  });

  it('needs no lead alone on a polarity switch, which waits for the label', () => {
    expect(faults(onBox('either', either(1, [], [])))).toEqual([]);
  });

  it('cannot have a switch wait that a chain shares', () => {
    const echo = feed('echo', 1, { chain: 'fan' });
    expect(faults(onBox('either', either(1, [], [], 'fan'), echo))).toEqual(['polarity']);
    expect(faults(onBox('either', either(1, [], ['flip'], 'fan'), echo))).toEqual([]);
  });

  it.each([
    [
      'has to say which leads go with which reading',
      feed('mole', 1, { polarity: 'unknown' }),
      'names no leads for either',
    ],
    [
      'has the leads that its readings need',
      { ...either(1, [], ['flip']), adapters: [] },
      'not those that its two readings',
    ],
    ['has no more than those', { ...either(1, [], []), adapters: either(1, [], ['flip']).adapters }, 'not those that'],
  ])('%s', (_, wrong, message) => {
    const { malformed } = judge(onBox('centre-negative', wrong));
    expect(malformed.map((each) => each.message).join()).toContain(message);
  });

  it('is the only one that may have readings', () => {
    const echo = { ...either(1, [], []), pedal: feed('echo', 1).pedal };
    expect(judge(onBox('centre-negative', echo)).malformed).toHaveLength(1);
  });
});

describe('a pedal whose ground nobody knows', () => {
  const lone = (first: number, second: number): Case => ({
    pedals: [pedal('mole', { ground: 'unknown' }), pedal('echo')],
    supplies: [supply('quay', [bank({ outputs: 2 }), bank({ outputs: 2, isolated: false })])],
    parts: [],
    feeds: [feed('mole', first), feed('echo', second)],
  });

  it('shares its ground with no other', () => {
    expect(faults(lone(1, 2))).toEqual([]);
    expect(faults(lone(3, 1))).toEqual([]);
    expect(messages(lone(3, 4))).toEqual([
      'Mole, of which nobody knows the ground, shares one with Echo on outputs 3 and 4 of Quay (unit 1)',
    ]);
  });
});

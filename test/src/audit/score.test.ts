import { describe, expect, it } from 'vitest';

import { euros, scoreWith } from '../../support/builders.js';
import {
  bank,
  chainLead,
  draws,
  feed,
  joinLead,
  judge,
  listed,
  part,
  pedal,
  setting,
  supply,
  volts,
  type Case,
} from './cases.js';

describe('score', () => {
  it('counts a whole board as by hand', () => {
    const of: Case = {
      pedals: [
        pedal('echo', { digital: true, ...draws(50) }),
        pedal('fuzz', { highGain: true, ...draws(5) }),
        pedal('drive', { accepts: listed(9, 18), prefers: volts(18), highGain: true }),
        pedal('organ', { accepts: listed(9, 12, 18), prefers: volts(18) }),
        pedal('reverb', { prefers: volts(9), polarity: 'centre-positive' }),
        pedal('tremolo', { accepts: listed(9, 18), prefers: volts(18) }),
      ],
      supplies: [
        supply('quay', [
          bank({ outputs: 4, isolated: true, joins: ['series'], settings: [setting(9, 500), setting(12, 500)] }),
          bank({ outputs: 2, isolated: false }),
        ]),
        supply('jetty', [bank({ outputs: 1 })]),
      ],
      parts: [chainLead('fan', 5), joinLead('stack', 'series'), part('flip', { reverses: true }), part('straight')],
      feeds: [
        feed('echo', 5, { chain: 'fan' }),
        feed('fuzz', 5, { chain: 'fan' }),
        feed('drive', [1, 2], { join: ['series', 'stack'] }),
        feed('organ', 3, { volts: [12] }),
        feed('reverb', 1, { supply: 'jetty', adapters: ['flip', 'straight'], polarity: 'centre-positive' }),
      ],
      owned: { quay: 1, straight: 4, flip: 0 },
      partial: true,
    };
    const report = judge(of);
    expect(report.violations).toEqual([]);
    expect(report.missing).toEqual([]);
    // Bought: one jetty at 100.00 and fan, stack and flip at 5.00 each. Off the preferred volts: organ at 12 V.
    expect(report.wiring.score).toEqual(
      scoreWith({ unpowered: 1, money: euros(115), exposed: 1, bricks: 2, parts: 4, offPreferred: 1 }),
    );
    expect(report.wiring.unpowered).toEqual(['tremolo']);
    expect(report.wiring.exposed).toEqual(['fuzz']);
  });

  it('counts the sum of a series join as the volts of its pedal', () => {
    const joined = (prefers: number): number =>
      judge({
        pedals: [pedal('drive', { accepts: listed(9, 18), prefers: volts(prefers) })],
        supplies: [supply('quay', [bank({ joins: ['series'] })])],
        parts: [joinLead('stack', 'series')],
        feeds: [feed('drive', [1, 2], { join: ['series', 'stack'] })],
      }).wiring.score.offPreferred;
    expect(joined(18)).toBe(0);
    expect(joined(9)).toBe(1);
  });
});

import { describe, expect, it } from 'vitest';

import { factorOfThousandths } from '../../../src/domain/quantities.js';
import { onCharge } from '../../support/builders.js';
import { bank, draws, faults, feed, joinLead, judge, messages, pedal, supply, volts, type Case } from './cases.js';

/** Three outputs of a bank of so many watt-hours, that has to last 4 h by 85 % of them. */
const withBank = (wattHours: number, milliamps: readonly number[], more: Partial<Case> = {}): Case => ({
  pedals: milliamps.map((draw, at) => pedal(`p${at}`, draws(draw))),
  supplies: [supply('quay', [bank({ outputs: 3, joins: ['series'] })], onCharge(wattHours))],
  feeds: milliamps.map((_, at) => feed(`p${at}`, at + 1)),
  policy: { runtime: { hours: factorOfThousandths(4000), usable: factorOfThousandths(850) }, mains: [volts(230)] },
  ...more,
});

describe('runtime', () => {
  it('is watts times hours, for what is usable of the watt-hours, to the last microwatt', () => {
    // 9 V × 170 mA × 4 h = 6.12 Wh = 7.2 Wh × 0.85.
    expect(faults(withBank(7.2, [100, 70]))).toEqual([]);
    expect(faults(withBank(7.2, [100, 70.001]))).toEqual(['runtime']);
    expect(faults(withBank(7.199, [100, 70]))).toEqual(['runtime']);
    expect(messages(withBank(7.199, [100, 70]))).toEqual([
      'Quay (unit 1) has 7.199 Wh × 0.85 = 6.11915 Wh; 1.53 W for 4 h take 6.12 Wh',
    ]);
  });

  it('is not known without a policy that says how long it has to be', () => {
    expect(faults(withBank(74, [100], { policy: { runtime: null } }))).toEqual(['runtime']);
  });

  it('counts a series join on both outputs', () => {
    const joined = (milliamps: number): Case =>
      withBank(7.2, [milliamps], {
        pedals: [pedal('p0', { ...draws(milliamps), accepts: { kind: 'listed', millivolts: [volts(18)] } })],
        parts: [joinLead('stack', 'series')],
        feeds: [feed('p0', [1, 2], { join: ['series', 'stack'] })],
      });
    expect(faults(joined(85))).toEqual([]);
    expect(faults(joined(85.001))).toEqual(['runtime']);
  });

  it('is told in hours, exactly', () => {
    const [lasting] = judge(withBank(7.2, [100, 50])).wiring.runtimes;
    expect(lasting).toMatchObject({ supply: 'quay', unit: 1, pedals: ['p0', 'p1'], milliwattHours: 7200 });
    // 6.12 Wh ÷ 1.35 W.
    expect((Number(lasting?.hours.numerator) / Number(lasting?.hours.denominator)).toFixed(4)).toBe('4.5333');
  });

  it('asks for no mains socket, and for no venue', () => {
    expect(judge(withBank(7.2, [100])).wiring.sockets).toBe(0);
    expect(judge(withBank(7.2, [100])).wiring.score.bricks).toBe(1);
  });
});

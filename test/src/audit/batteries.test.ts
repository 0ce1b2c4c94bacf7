import { describe, expect, it } from 'vitest';

import { ownBatteryOf } from '../../../src/domain/own-battery.js';
import { factorOfThousandths, microampHours, pedalId } from '../../../src/domain/quantities.js';
import { draws, faults, feed, judge, messages, part, pedal, volts, type Case } from './cases.js';

/** A pedal of so many milliamps on a set of nine-volt batteries of 500 mAh each, 8 h of which are asked for and 100 h paid. */
function onBattery(milliamps: number, count = 1, more: Partial<Case> = {}): Case {
  const battery = { type: 'block', count, of: pedalId('wah') };
  const wah = pedal('wah', { ...draws(milliamps), battery, accepts: { kind: 'listed', millivolts: [volts(9)] } });
  const block = part('block', {
    role: { kind: 'battery', type: 'block', millivolts: volts(9), microampHours: microampHours(500_000) },
  });
  const set = ownBatteryOf(wah, block);
  if (set === null) throw new RangeError('a battery that the pedal takes');
  return {
    pedals: [wah],
    supplies: [set],
    parts: [block],
    owned: { [set.id]: 1 },
    feeds: [feed('wah', 1, { supply: set.id, volts: [9 * count] })],
    policy: { batteries: { change: factorOfThousandths(8000), pay: factorOfThousandths(100_000) } },
    ...more,
  };
}

describe('battery', () => {
  it('lasts for as long as is asked, to the last microamp', () => {
    expect(faults(onBattery(62.5))).toEqual([]);
    expect(faults(onBattery(62.501))).toEqual(['battery']);
    expect(messages(onBattery(62.501))).toEqual(['1 × Block in Wah has 500 mAh; 62.501 mA for 8 h take 500.008 mAh']);
  });

  it('is of volts that the pedal accepts, all of a set together', () => {
    expect(faults(onBattery(5, 2))).toEqual(['battery']);
  });

  it('is of no use where nobody says how long a set must last', () => {
    expect(faults(onBattery(5, 1, { policy: { batteries: null } }))).toEqual(['battery']);
  });

  it('is that of its own pedal', () => {
    const { feeds: _, ...shared } = onBattery(5);
    const [set] = shared.supplies;
    const other = { ...pedal('fuzz'), ...draws(5) };
    expect(faults({ ...shared, pedals: [other], feeds: [feed('fuzz', 1, { supply: set?.id ?? '' })] })).toEqual([
      'battery',
    ]);
  });

  it('is paid for by the hours of playing, set by set', () => {
    const bought = (milliamps: number) =>
      judge(onBattery(milliamps)).wiring.buy.parts.map(({ id, units }) => [id, units]);
    expect(bought(5)).toEqual([['block', 1]]);
    expect(bought(5.001)).toEqual([['block', 2]]);
    expect(bought(62.5)).toEqual([['block', 13]]);
  });

  it('is no supply in use, no lead, and takes no socket', () => {
    const { sockets, score } = judge(onBattery(5)).wiring;
    expect([sockets, score.bricks, score.parts]).toEqual([0, 0, 0]);
  });

  it('is told in hours', () => {
    const [lasting] = judge(onBattery(40)).wiring.batteries;
    expect(Number(lasting?.hours?.numerator) / Number(lasting?.hours?.denominator)).toBe(12.5);
  });
});

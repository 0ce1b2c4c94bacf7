import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { microamps, millivolts } from '../../../src/domain/quantities.js';
import {
  acceptsVolts,
  exitOf,
  inParallel,
  inSeries,
  outletOf,
  takenAlone,
  takenInChain,
  voltsSuit,
  type Outlet,
} from '../../../src/loadout/outlet.js';
import {
  bankOf,
  factor,
  listed,
  milliamps,
  numbered,
  pedalOf,
  policyOf,
  settingOf,
  volts,
} from '../../support/builders.js';

const outlet = (atVolts: number, rating: number, openCircuit?: number): Outlet => ({
  power: 'DC',
  ...settingOf(atVolts, rating, openCircuit),
});

const headroom = (alone: number, chained: number): Policy =>
  policyOf({ headroom: { alone: factor(alone), chained: factor(chained), supply: factor(1) }, guess: factor(1.5) });

describe('joined outlets', () => {
  it('add their volts in series, and the weaker rating holds', () => {
    expect(inSeries(outlet(9, 100), outlet(12, 80))).toEqual(outlet(21, 80));
  });

  it('add their open-circuit volts in series, a regulated one counting its own', () => {
    expect(inSeries(outlet(9, 100, 13), outlet(9, 100, 12))).toEqual(outlet(18, 100, 25));
    expect(inSeries(outlet(9, 100), outlet(9, 100, 12))).toEqual(outlet(18, 100, 21));
  });

  it('add their ratings in parallel, and the higher open-circuit volts count', () => {
    expect(inParallel(outlet(9, 100), outlet(9, 80))).toEqual(outlet(9, 180));
    expect(inParallel(outlet(9, 100, 13), outlet(9, 100, 12))).toEqual(outlet(9, 200, 13));
    expect(inParallel(outlet(9, 100), outlet(9, 100, 12))).toEqual(outlet(9, 200, 12));
  });
});

describe('volts', () => {
  it('are among those listed, to the millivolt', () => {
    const pedal = pedalOf('pedal', 10, { accepts: listed(9, 18) });
    const accepted = [8999, 9000, 9001, 12000, 18000].map((each) => acceptsVolts(pedal, millivolts(each)));
    expect(accepted).toEqual([false, true, false, false, true]);
  });

  it('are in a range, both ends included', () => {
    const pedal = pedalOf('pedal', 10, { accepts: { kind: 'range', from: volts(9), to: volts(18) } });
    const accepted = [8999, 9000, 12345, 18000, 18001].map((each) => acceptsVolts(pedal, millivolts(each)));
    expect(accepted).toEqual([false, true, true, true, false]);
  });

  it.each<[string, Partial<Pedal>, number, boolean]>([
    ['refused without a word about more', {}, 9.001, false],
    ['accepted when they do not rise', {}, 9, true],
    ['accepted when the pedal also takes the open-circuit volts', { accepts: listed(9, 13) }, 13, true],
    ['accepted within a range', { accepts: { kind: 'range', from: volts(9), to: volts(13) } }, 13, true],
    [
      'refused a millivolt beyond a range',
      { accepts: { kind: 'range', from: volts(9), to: volts(13) } },
      13.001,
      false,
    ],
    ['accepted up to the most that it survives', { survives: volts(13) }, 13, true],
    ['refused a millivolt beyond that', { survives: volts(13) }, 13.001, false],
  ])('of an unregulated output are %s', (_, more, openCircuit, expected) => {
    expect(voltsSuit(pedalOf('pedal', 10, more), outlet(9, 100, openCircuit))).toBe(expected);
  });

  it('that a pedal survives are not volts that it accepts', () => {
    expect(voltsSuit(pedalOf('pedal', 10, { survives: volts(18) }), outlet(12, 100))).toBe(false);
  });

  it('of AC are none for DC', () => {
    const alternating = pedalOf('pedal', 10, { power: 'AC', polarity: null });
    expect(voltsSuit(alternating, outlet(9, 100))).toBe(false);
    expect(voltsSuit(alternating, { ...outlet(9, 100), power: 'AC' })).toBe(true);
  });
});

describe('the load of a pedal', () => {
  const inChain = (pedal: Pedal, on: Outlet, policy: Policy) => takenInChain(pedal, on, policy)?.load ?? null;
  const alone = (pedal: Pedal, on: Outlet, policy: Policy) => takenAlone(pedal, on, policy)?.load ?? null;
  const loadOf = (rating: number, pedal: Pedal, policy: Policy) =>
    alone(pedal, { ...outlet(9, 0), rating: microamps(rating) }, policy);

  it('fits an output of its own up to the rating over the headroom', () => {
    // 100 mA × 1.2 = 120 mA. Loads count in halves of a microamp, as a guess counts three of them.
    expect(loadOf(120_000, pedalOf('pedal', 100), headroom(1.2, 2))).toBe(200_000n);
    expect(loadOf(119_999, pedalOf('pedal', 100), headroom(1.2, 2))).toBeNull();
  });

  it('is half as much again when it is a guess', () => {
    const guess = pedalOf('pedal', 100, { figure: 'guess' });
    expect(loadOf(150_000, guess, headroom(1, 2))).toBe(300_000n);
    expect(loadOf(149_999, guess, headroom(1, 2))).toBeNull();
    // One microamp guessed is one and a half: two are enough, one is not.
    const least = pedalOf('pedal', 0.001, { figure: 'guess' });
    expect(loadOf(2, least, headroom(1, 2))).toBe(3n);
    expect(loadOf(1, least, headroom(1, 2))).toBeNull();
  });

  it('is asked for at the volts of the setting', () => {
    const figures = new Map([
      [volts(9), milliamps(300)],
      [volts(12), milliamps(230)],
    ]);
    const pedal = pedalOf('pedal', 0, { accepts: listed(9, 12), draw: { kind: 'per voltage', microamps: figures } });
    expect(alone(pedal, outlet(9, 299.999), headroom(1, 1))).toBeNull();
    expect(alone(pedal, outlet(12, 230), headroom(1, 1))).toBe(460_000n);
  });

  it('is refused when starting takes more than the rating, without headroom', () => {
    const pedal = pedalOf('pedal', 50, { startup: milliamps(100), figure: 'guess' });
    expect(loadOf(100_000, pedal, headroom(1.2, 1.2))).toBe(150_000n);
    expect(loadOf(99_999, pedal, headroom(1.2, 1.2))).toBeNull();
    expect(inChain(pedal, { ...outlet(9, 0), rating: microamps(99_999) }, headroom(1.2, 1.2))).toBeNull();
  });

  it('goes with what switching on takes: the startup as stated, or the load where that is more', () => {
    const guess = (startup: number) => pedalOf('pedal', 50, { startup: milliamps(startup), figure: 'guess' });
    expect(takenAlone(guess(100), outlet(9, 100), headroom(1, 1))).toEqual({ load: 150_000n, surge: 200_000n });
    expect(takenInChain(guess(74), outlet(9, 100), headroom(1, 1))).toEqual({ load: 150_000n, surge: 150_000n });
    expect(takenAlone(pedalOf('pedal', 50), outlet(9, 100), headroom(1, 1))).toEqual({
      load: 100_000n,
      surge: 100_000n,
    });
  });

  it('fits a chain up to the rating over the headroom of chains', () => {
    expect(inChain(pedalOf('pedal', 50), outlet(9, 100), headroom(1, 2))).toBe(100_000n);
    expect(inChain(pedalOf('pedal', 50.001), outlet(9, 100), headroom(1, 2))).toBeNull();
    // Alone it may ask for more headroom than in a chain.
    expect(alone(pedalOf('pedal', 50.001), outlet(9, 100), headroom(2, 1))).toBeNull();
    expect(inChain(pedalOf('pedal', 50.001), outlet(9, 100), headroom(2, 1))).toBe(100_002n);
  });

  it('never hangs in a chain where the maker asks for an output of its own, nor on AC', () => {
    expect(inChain(pedalOf('pedal', 1, { alone: true }), outlet(9, 100), headroom(1, 1))).toBeNull();
    const alternating = pedalOf('pedal', 1, { power: 'AC', polarity: null });
    expect(inChain(alternating, { ...outlet(9, 100), power: 'AC' }, headroom(1, 1))).toBeNull();
    expect(alone(alternating, { ...outlet(9, 100), power: 'AC' }, headroom(1, 1))).toBe(2_000n);
  });
});

describe('the exit of a bank', () => {
  it.each([
    ['centre-negative', ['centre-negative']],
    ['centre-positive', ['centre-positive']],
    ['either', ['centre-negative', 'centre-positive']],
    [null, []],
  ] as const)('with polarity %s has %j', (polarity, polarities) => {
    const banks = numbered([bankOf(1, [settingOf(9, 100)], { polarity, plug: 'jack-3.5' })]);
    expect(banks.map(exitOf)).toEqual([{ plug: 'jack-3.5', polarities }]);
  });

  it('leads to an outlet with the figures of a setting', () => {
    const [bank] = numbered([bankOf(1, [settingOf(9, 100, 13)], { power: 'AC', polarity: null })]);
    expect(bank?.settings.map((setting) => outletOf(bank, setting))).toEqual([{ ...outlet(9, 100, 13), power: 'AC' }]);
  });
});

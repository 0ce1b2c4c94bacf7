import { describe, expect, it } from 'vitest';

import { drawAt, loadOf, pedalLoad, withinFactor } from '../../../src/loadout/load.js';
import { factor, listed, milliamps, pedalOf, policyOf, volts } from '../../support/builders.js';

const policy = policyOf({ guess: factor(1.25) });

describe('a load', () => {
  it('is the draw at the volts, and none where there is no figure', () => {
    const figures = new Map([[volts(9), milliamps(30)]]);
    const pedal = pedalOf('pedal', 0, { accepts: listed(9), draw: { kind: 'per voltage', microamps: figures } });
    expect([drawAt(pedal, volts(9)), drawAt(pedal, volts(12))]).toEqual([30_000, undefined]);
    expect(pedalLoad(pedal, volts(12), policy)).toBeUndefined();
    expect(drawAt(pedalOf('flat', 30), volts(12))).toBe(30_000);
  });

  it('counts a guess × 5/4 and all else as it stands, in quarters of a microamp', () => {
    expect(pedalLoad(pedalOf('pedal', 0.003, { figure: 'guess' }), volts(9), policy)).toBe(15n);
    expect(pedalLoad(pedalOf('pedal', 0.003), volts(9), policy)).toBe(12n);
    expect(loadOf(3, policy)).toBe(12n);
  });

  it('is within a limit that it reaches, and not beyond', () => {
    expect(withinFactor(10n, factor(1.2), 12n)).toBe(true);
    expect(withinFactor(10n, factor(1.2), 11n)).toBe(false);
    // A third and a bit: 3 × 4/3 = 4.
    expect(withinFactor(3n, { numerator: 4, denominator: 3 }, 4n)).toBe(true);
    expect(withinFactor(4n, { numerator: 4, denominator: 3 }, 5n)).toBe(false);
  });
});

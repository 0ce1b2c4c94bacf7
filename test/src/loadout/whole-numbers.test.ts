import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { wholeNumbers } from '../../../src/loadout/whole-numbers.js';
import { share, trying } from '../../support/runs.js';

describe('big integers as plain numbers', () => {
  it('are divided by what the weights have in common, capacities rounded down', () => {
    const { least, most, exact } = wholeNumbers([600n, 900n], [1000n, 299n]);
    expect([least(600n), least(900n), most(1000n), most(299n), exact]).toEqual([2, 3, 3, 0, true]);
  });

  it('are what they are where there is nothing to divide by', () => {
    for (const weights of [[], [0n], [0n, 1n]]) {
      const { least, most, exact } = wholeNumbers(weights, [7n]);
      expect([least(0n), most(7n), exact]).toEqual([0, 7, true]);
    }
  });

  type Counted = readonly (readonly [weight: bigint, count: number])[];
  const counted = (largest: bigint): fc.Arbitrary<Counted> =>
    fc.array(fc.tuple(fc.bigInt({ min: 0n, max: largest }), fc.nat({ max: 6 })), { minLength: 1, maxLength: 5 });

  /** Σ weight × count, in big integers and in plain numbers. */
  const sums = (weights: Counted, least: (weight: bigint) => number): [bigint, number] => [
    weights.reduce((sum, [weight, count]) => sum + weight * BigInt(count), 0n),
    weights.reduce((sum, [weight, count]) => sum + least(weight) * count, 0),
  ];

  it('fit just where they fit, as long as they are small enough', () => {
    const seen = { fits: 0, not: 0 };
    const capacities = fc.bigInt({ min: 0n, max: 3_000_000n });
    // Weights have this in common, so that any size will do.
    const units = fc.constantFrom(1n, 7n, 1000n, 10n ** 18n + 9n);
    fc.assert(
      fc.property(counted(100_000n), capacities, units, fc.nat({ max: 99 }), (drawn, room, unit, rest) => {
        const weights = drawn.map(([weight, count]) => [weight * unit, count] as const);
        const capacity = room * unit + (BigInt(rest) * unit) / 100n;
        const { least, most, exact } = wholeNumbers(
          weights.map(([weight]) => weight),
          [capacity],
        );
        const [sum, short] = sums(weights, least);
        // Without any weight there is nothing in common.
        if (weights.some(([weight]) => weight > 0n)) expect(exact).toBe(true);
        expect(short <= most(capacity)).toBe(sum <= capacity);
        seen[sum <= capacity ? 'fits' : 'not'] += 1;
      }),
      trying(1000),
    );
    expect(Math.min(seen.fits, seen.not)).toBeGreaterThan(share(50));
  });

  it('still fit where they fit when they are too large to be exact, and are safe', () => {
    const seen = { rounded: 0, fits: 0 };
    fc.assert(
      fc.property(counted(10n ** 24n), fc.bigInt({ min: 0n, max: 10n ** 25n }), (weights, capacity) => {
        const { least, most, exact } = wholeNumbers(
          weights.map(([weight]) => weight),
          [capacity],
        );
        const [sum, short] = sums(weights, least);
        if (!exact) seen.rounded += 1;
        if (sum <= capacity) {
          seen.fits += 1;
          expect(short).toBeLessThanOrEqual(most(capacity));
        }
        // A few hundred of them add up to a safe integer.
        for (const number of [...weights.map(([weight]) => least(weight)), most(capacity)]) {
          expect(Number.isSafeInteger(number * 256)).toBe(true);
          expect(number).toBeGreaterThanOrEqual(0);
        }
      }),
      trying(1000),
    );
    expect(Math.min(seen.rounded, seen.fits)).toBeGreaterThan(share(50));
  });

  it('do not lose much: what is too large by a tenth is still too large', () => {
    const weights = [10n ** 20n, 10n ** 20n + 1n];
    const { least, most, exact } = wholeNumbers(weights, [10n ** 21n]);
    expect(exact).toBe(false);
    expect(10 * least(10n ** 20n)).toBeLessThanOrEqual(most(10n ** 21n));
    expect(11 * least(10n ** 20n)).toBeGreaterThan(most(10n ** 21n));
  });
});

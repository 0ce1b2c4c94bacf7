import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { compareExact, drawAt, exactly, loadAt, scaled, stepsUp, sum } from '../../../src/domain/load.js';
import { factorOfThousandths, microamps, millivolts } from '../../../src/domain/quantities.js';
import { pedalOf } from '../report/samples.js';
import { trying } from '../../support/runs.js';

const guess = factorOfThousandths(1500);
const nine = millivolts(9000);

describe('the load of a pedal', () => {
  it('is its draw', () => {
    const pedal = pedalOf('echo', { draw: { kind: 'flat', microamps: microamps(180_000) } });
    expect(stepsUp(loadAt(pedal, nine, guess), 1)).toBe(180_000);
  });

  it('is its draw times the guess factor when the figure is a guess', () => {
    const pedal = pedalOf('echo', { draw: { kind: 'flat', microamps: microamps(180_001) }, figure: 'guess' });
    expect(compareExact(loadAt(pedal, nine, guess), { numerator: 540_003n, denominator: 2n })).toBe(0);
  });

  it('follows the volts where the draw does, and refuses others', () => {
    const figures = new Map([
      [nine, microamps(300_000)],
      [millivolts(12_000), microamps(230_000)],
    ]);
    const pedal = pedalOf('synth', { draw: { kind: 'per voltage', microamps: figures } });
    expect(drawAt(pedal, millivolts(12_000))).toBe(230_000);
    expect(() => drawAt(pedal, millivolts(18_000))).toThrow(RangeError);
  });
});

describe('exact quantities', () => {
  const whole = fc.integer({ min: 0, max: 10 ** 9 });
  const factor = fc.integer({ min: 1, max: 100_000 }).map(factorOfThousandths);

  it('compare as numbers do, whatever they are fractions of', () => {
    const half = { numerator: 1n, denominator: 2n };
    const third = { numerator: 1n, denominator: 3n };
    expect(compareExact(third, half)).toBeLessThan(0);
    expect(compareExact(half, third)).toBeGreaterThan(0);
    expect(compareExact(half, { numerator: 3n, denominator: 6n })).toBe(0);
    expect(compareExact(exactly(0), exactly(0))).toBe(0);
  });

  it('round up to whole steps, and only when they must', () => {
    expect(stepsUp(exactly(0), 1000)).toBe(0);
    expect(stepsUp(exactly(4000), 1000)).toBe(4);
    expect(stepsUp(exactly(4001), 1000)).toBe(5);
    expect(stepsUp({ numerator: 7n, denominator: 2n }, 1)).toBe(4);
  });

  it('add and scale without an error', () => {
    fc.assert(
      fc.property(fc.array(whole, { maxLength: 6 }), factor, (values, by) => {
        const scaledSum = scaled(sum(values.map(exactly)), by);
        const sumOfScaled = sum(values.map((value) => scaled(exactly(value), by)));
        const total = BigInt(values.reduce((left, right) => left + right, 0));
        expect(compareExact(scaledSum, sumOfScaled)).toBe(0);
        expect(scaledSum.numerator * BigInt(by.denominator)).toBe(total * BigInt(by.numerator) * scaledSum.denominator);
      }),
      trying(300),
    );
  });
});

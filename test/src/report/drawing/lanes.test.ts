import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { isStraight, lanesFor, type Run } from '../../../../src/report/drawing/lanes.js';

const run = (lefts: readonly number[], rights: readonly number[]): Run => ({ lefts, rights });

describe('lanes', () => {
  it('are taken by no straight lead, and shared by those that do not meet', () => {
    const [straight, upper, lower] = [run([10], [10]), run([20], [40]), run([60], [90])];
    const lanes = lanesFor([straight, upper, lower]);
    expect(lanes.has(straight)).toBe(false);
    expect([lanes.get(upper), lanes.get(lower)]).toEqual([0, 0]);
  });

  it('let leads that go the same way go round one another', () => {
    // Both go down: the one that starts higher turns further right, or it would be crossed.
    const [higher, lower] = [run([10], [50]), run([30], [70])];
    const lanes = lanesFor([higher, lower]);
    expect(lanes.get(higher)).toBeGreaterThan(lanes.get(lower) ?? Infinity);
  });

  it('are never shared by leads that pass each other', () => {
    const end = fc.integer({ min: 0, max: 60 }).map((at) => at * 10);
    const anyRun = fc.record({
      lefts: fc.array(end, { minLength: 1, maxLength: 2 }),
      rights: fc.array(
        end.map((at) => at + 5),
        { minLength: 1, maxLength: 4 },
      ),
    });
    fc.assert(
      fc.property(fc.array(anyRun, { maxLength: 12 }), (runs) => {
        const lanes = lanesFor(runs);
        expect(lanes.size).toBe(runs.filter((one) => !isStraight(one)).length);
        for (const one of runs)
          for (const other of runs) {
            if (one === other || lanes.get(one) !== lanes.get(other)) continue;
            const [a, b] = [one, other].map(({ lefts, rights }) => [...lefts, ...rights]) as [number[], number[]];
            expect(Math.max(...a) < Math.min(...b) || Math.max(...b) < Math.min(...a)).toBe(true);
          }
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { smallestHitting } from '../../../../src/planning/conflict/smallest-hitting.js';
import { Tally } from '../../../support/tally.js';
import { share, trying } from '../../../support/runs.js';

const hits = (chosen: readonly number[], plans: readonly (readonly number[])[]): boolean =>
  plans.every((powered) => chosen.some((count, index) => count > (powered[index] ?? 0)));

const sizeOf = (chosen: readonly number[]): number => chosen.reduce((sum, count) => sum + count, 0);

/** Every way to choose none to all of each class. */
const everyChoice = ([first, ...rest]: readonly number[]): readonly (readonly number[])[] =>
  first === undefined
    ? [[]]
    : everyChoice(rest).flatMap((others) => Array.from({ length: first + 1 }, (_, count) => [count, ...others]));

/** Up to five classes, and plans each of which powers some of every class. */
const cases = fc.array(fc.nat({ max: 3 }), { minLength: 1, maxLength: 5 }).chain((members) =>
  fc.record({
    members: fc.constant(members),
    plans: fc.array(fc.tuple(...members.map((most) => fc.nat({ max: most }))), { maxLength: 8 }),
    fewer: fc.integer({ min: 1, max: 9 }),
  }),
);

describe('the smallest set that no known plan powers', () => {
  it('is as small as any that there is', () => {
    const seen = new Tally();
    fc.assert(
      fc.property(cases, ({ members, plans, fewer }) => {
        const all = everyChoice(members).filter((chosen) => hits(chosen, plans));
        const least = Math.min(...all.map(sizeOf));
        const found = smallestHitting(members, plans, fewer);
        if (found === 'unknown') throw new Error('so few cases are not too many');
        if (found === 'none') {
          expect(least).toBeGreaterThanOrEqual(fewer);
          seen.add('none');
          return;
        }
        expect(found.every((count, index) => count >= 0 && count <= (members[index] ?? 0))).toBe(true);
        expect([hits(found, plans), sizeOf(found)]).toEqual([true, least]);
        expect(least).toBeLessThan(fewer);
        seen.add(`of ${least}`);
      }),
      trying(2000),
    );
    expect(seen.lacking(share(60), 'none', 'of 0', 'of 1', 'of 2', 'of 3')).toEqual([]);
  });

  it('of pairs of which each plan lacks one takes one of each', () => {
    const pairs = 12;
    const plans = Array.from({ length: pairs }, (_, pair) =>
      Array.from({ length: 2 * pairs }, (_, pedal) => (pedal >> 1 === pair ? 0 : 1)),
    );
    const members = Array.from({ length: 2 * pairs }, () => 1);
    const found = smallestHitting(members, plans, 2 * pairs);
    expect(typeof found === 'string' ? found : sizeOf(found)).toBe(pairs);
    expect(smallestHitting(members, plans, pairs)).toBe('none');
  });

  it('is given up where there are too many cases', () => {
    // Each plan lacks the three pedals of a line in a space of four dimensions with three points each.
    const pedals = Array.from({ length: 81 }, (_, pedal) => pedal);
    const thirdOf = (one: number, other: number): number =>
      [1, 3, 9, 27].reduce((sum, place) => sum + place * ((6 - digit(one, place) - digit(other, place)) % 3), 0);
    const lines = pedals.flatMap((one) =>
      pedals
        .filter((other) => one < other && other < thirdOf(one, other))
        .map((other) => [one, other, thirdOf(one, other)]),
    );
    expect(lines).toHaveLength(1080);
    const plans = lines.map((line) => pedals.map((pedal) => (line.includes(pedal) ? 0 : 1)));
    const members = pedals.map(() => 1);
    expect(smallestHitting(members, plans, 81)).toBe('unknown');
  });
});

const digit = (pedal: number, place: number): number => Math.floor(pedal / place) % 3;

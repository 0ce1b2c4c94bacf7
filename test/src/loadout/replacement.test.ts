import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { replaceable, replacersFirst } from '../../../src/loadout/replacement.js';
import { share, trying } from '../../support/runs.js';

/** A pedal that is worth something where it may hang, and draws something: less is as good. */
type Draft = { readonly worth: number; readonly draw: number };

const canReplace = (one: Draft, two: Draft): boolean => one.worth >= two.worth && one.draw <= two.draw;
const worth = ({ worth: value }: Draft): number => value;

const drafts = fc.array(fc.record({ worth: fc.nat({ max: 5 }), draw: fc.nat({ max: 5 }) }), { maxLength: 9 });

describe('pedals that can replace others', () => {
  it('come before these, and the most valuable first where neither can', () => {
    const [dear, frugal, poor, twin] = [
      { worth: 9, draw: 5 },
      { worth: 4, draw: 1 },
      { worth: 3, draw: 2 },
      { worth: 3, draw: 2 },
    ];
    const order = replacersFirst([poor, frugal, twin, dear], worth, canReplace);
    expect(order.map((pedal) => [dear, frugal, poor, twin].indexOf(pedal))).toEqual([0, 1, 2, 3]);
    expect(replaceable(order, canReplace)).toEqual([[], [2, 3], [3], []]);
  });

  it('come first even when they are worth less', () => {
    // By volts, say, and not by worth: the poor one can do all that the dear one can.
    const order = replacersFirst(
      ['dear', 'poor'],
      (name) => name.length,
      (one) => one === 'poor',
    );
    expect(order).toEqual(['poor', 'dear']);
  });

  it('are all there, each before all that it can strictly replace', () => {
    const seen = { replaced: 0 };
    fc.assert(
      fc.property(drafts, (pedals) => {
        const order = replacersFirst(pedals, worth, canReplace);
        expect(new Set(order)).toEqual(new Set(pedals));
        expect(order).toHaveLength(pedals.length);
        for (const [index, pedal] of order.entries()) {
          for (const earlier of order.slice(0, index)) {
            expect(canReplace(pedal, earlier) && !canReplace(earlier, pedal)).toBe(false);
          }
        }
        for (const [index, later] of replaceable(order, canReplace).entries()) {
          const expected = order.flatMap((other, at) =>
            at > index && other.worth <= (order[index]?.worth ?? NaN) && other.draw >= (order[index]?.draw ?? NaN)
              ? [at]
              : [],
          );
          expect(later).toEqual(expected);
          seen.replaced += later.length;
        }
      }),
      trying(500),
    );
    expect(seen.replaced).toBeGreaterThan(share(500));
  });
});

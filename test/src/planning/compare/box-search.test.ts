import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { Boxes, everyPoint, isNoWorse, type Box, type Figures } from '../../../../src/planning/compare/box-search.js';
import { share, trying } from '../../../support/runs.js';

const small = fc.integer({ min: 0, max: 5 });
const plans: fc.Arbitrary<readonly Figures[]> = fc.array(
  fc.record({ money: fc.integer({ min: 0, max: 20 }), exposed: small, bricks: small }),
  { minLength: 1, maxLength: 25, size: 'max' },
);

const isIn = ({ exposed, bricks }: Figures, box: Box): boolean => exposed <= box.exposed && bricks <= box.bricks;
const inOrder = (one: Figures, other: Figures): number =>
  one.money - other.money || one.exposed - other.exposed || one.bricks - other.bricks;
const isSame = (one: Figures, other: Figures): boolean => isNoWorse(one, other) && isNoWorse(other, one);

const unbeatenOf = (all: readonly Figures[]): readonly Figures[] =>
  all
    .filter((plan) => all.every((other) => !isNoWorse(other, plan) || isSame(other, plan)))
    .filter((plan, at, kept) => kept.findIndex((other) => isSame(plan, other)) === at)
    .sort(inOrder);

/** A shop whose plans are all known; answers no more questions than it has patience for. */
function shop(all: readonly Figures[], known: readonly Figures[] = [], patience = Infinity) {
  const asked: Box[] = [];
  const boxes = new Boxes<Figures>({
    solve: (box) => {
      if (asked.push(box) > patience) return Promise.resolve({ kind: 'stopped' });
      const [cheapest] = all.filter((plan) => isIn(plan, box)).sort(inOrder);
      return Promise.resolve(cheapest === undefined ? { kind: 'none' } : { kind: 'point', point: cheapest });
    },
    least: {
      exposed: Math.min(...all.map(({ exposed }) => exposed)),
      bricks: Math.min(...all.map(({ bricks }) => bricks)),
    },
    known,
    leastMoney: () => 0,
  });
  return { boxes, asked };
}

describe('the points that nothing beats', () => {
  it('are all found, each once, and no box is asked about twice', async () => {
    let several = 0;
    await fc.assert(
      fc.asyncProperty(plans, fc.nat({ max: 24 }), async (all, at) => {
        const expected = unbeatenOf(all);
        const known = expected[at];
        const { boxes, asked } = shop(all, known === undefined ? [] : [known]);
        expect(await everyPoint(boxes)).toBe(true);
        expect([...boxes.points].sort(inOrder)).toEqual(expected);
        expect(new Set(asked.map(({ exposed, bricks }) => `${exposed} ${bricks}`)).size).toBe(asked.length);
        if (expected.length > 3) several += 1;
      }),
      trying(2000),
    );
    expect(several).toBeGreaterThan(share(500));
  });

  it('are not all known when a question was not answered', async () => {
    const all = [
      { money: 1, exposed: 2, bricks: 2 },
      { money: 2, exposed: 1, bricks: 2 },
      { money: 3, exposed: 2, bricks: 1 },
    ];
    const { boxes } = shop(all, [], 2);
    expect(await everyPoint(boxes)).toBe(false);
    expect(boxes.points).toEqual(all.slice(0, 2));
  });

  it('are asked about no more where it is known that nothing costs less', async () => {
    const point = { money: 7, exposed: 0, bricks: 1 };
    const asked: Box[] = [];
    const boxes = new Boxes<Figures>({
      solve: (box) => {
        asked.push(box);
        return Promise.resolve({ kind: 'none' });
      },
      least: { exposed: 0, bricks: 1 },
      known: [point],
      leastMoney: ({ exposed }) => 7 - exposed,
    });
    expect(await boxes.answerTo({ exposed: 0, bricks: 2 })).toEqual({ kind: 'point', point });
    expect(await boxes.answerTo({ exposed: 1, bricks: 0 })).toEqual({ kind: 'none' });
    expect(asked).toEqual([]);
    expect(await boxes.answerTo({ exposed: 1, bricks: 2 })).toEqual({ kind: 'none' });
    expect(asked).toEqual([{ exposed: 1, bricks: 2 }]);
  });
});

import { describe, expect, it } from 'vitest';

import type { ChoosingAim } from '../../../../src/domain/aim.js';
import type { JudgedPlan } from '../../../../src/domain/judged-plan.js';
import { choicesOf } from '../../../../src/planning/compare/choices.js';
import type { UnbeatenPoint } from '../../../../src/planning/compare/comparison.js';
import { pointOf } from '../../../../src/planning/compare/unbeaten.js';
import { euros, policyOf, scoreWith } from '../../../support/builders.js';

/** A point by its three figures alone. */
const point = (money: number, exposed: number, bricks: number): UnbeatenPoint =>
  pointOf({ score: scoreWith({ money: euros(money), exposed, bricks }) } as JudgedPlan, true);

const figuresOf = ({ money, exposed, bricks }: UnbeatenPoint) => [money / 100, exposed, bricks];

const shown = (
  best: UnbeatenPoint,
  points: readonly UnbeatenPoint[],
  budget: number | null = null,
  aim: ChoosingAim = 'cost',
) =>
  choicesOf(best, points, {
    aim,
    policy: policyOf({ noisePrice: euros(20), budget: budget === null ? null : euros(budget) }),
  }).map(figuresOf);

const [cheap, quiet, few, middle, near] = [
  point(30, 4, 5),
  point(90, 0, 6),
  point(120, 3, 1),
  point(50, 2, 3),
  point(32, 3, 5),
] as const;
const all = [cheap, near, middle, quiet, few];

describe('the choices', () => {
  it('are the best, the quietest, the one with the fewest supplies and what lies farthest from these', () => {
    // 32 + 3 × 20 is the least; of the others 50 lies farther from all three than 30.
    expect(shown(near, all)).toEqual([near, quiet, few, middle].map(figuresOf));
  });

  it('are proven ones where there are enough of them', () => {
    const unproven = { ...middle, isProven: false };
    expect(shown(near, [cheap, near, unproven, quiet, few])).toEqual([near, quiet, few, cheap].map(figuresOf));
    expect(shown(near, [near, unproven, quiet, few])).toEqual([near, quiet, few, middle].map(figuresOf));
  });

  it('are each shown once, and fewer where there are no more', () => {
    expect(shown(quiet, [quiet, few])).toEqual([quiet, few].map(figuresOf));
    expect(shown(quiet, [quiet])).toEqual([figuresOf(quiet)]);
  });

  it('have one within the budget where there is one, the best under the aim', () => {
    expect(shown(middle, all, 40)).toEqual([middle, quiet, few, near].map(figuresOf));
    expect(shown(middle, all, 31)).toEqual([middle, quiet, few, cheap].map(figuresOf));
    expect(shown(middle, all, 10)).toEqual([middle, quiet, few, cheap].map(figuresOf));
  });
});

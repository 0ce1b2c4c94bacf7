import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perLeadTier } from '../../../../src/domain/counted-tiers.js';
import { perPedalTier } from '../../../../src/domain/pedal-tier.js';
import { choosingAims, tiersOf, type Criterion } from '../../../../src/domain/aim.js';
import { compactProgram } from '../../../../bench/rival/formulation/compact-program.js';
import { coarse } from '../../../../bench/rival/formulation/detail.js';
import type { Model } from '../../../../bench/rival/formulation/model.js';
import { Sum } from '../../../../bench/rival/formulation/program-builder.js';
import { questionOf, type Question } from '../../../../src/formulation/question.js';
import { stepsOf, type CompactStep } from '../../../../bench/rival/formulation/tiers.js';
import { tierValues } from '../../../../src/formulation/digits.js';
import { boardOf, catalogueOf, euros, pedalOf, policyOf } from '../../../support/builders.js';
import { share, trying } from '../../../support/runs.js';
import { firstDifference } from '../../../support/tier-figures.js';

/** A question about so many pedals, with a noise price of 20 euros. */
const question = (pedals: number, tiers: readonly Criterion[]): Question => {
  const all = Array.from({ length: pedals }, (_, index) => pedalOf(`pedal-${index}`, 10 + index));
  const board = boardOf(all, { policy: policyOf({ noisePrice: euros(20), supplyPrice: euros(7) }) });
  return questionOf(kitOf(board, catalogueOf([])), { tiers, partial: true });
};

/** A model whose columns 0 to 8 are the measures themselves; a unit of money is `price` minor units. */
function modelOf(of: Question, price: number): Model {
  const measure = (column: number, share = 1): Sum => new Sum().add(column, share);
  return {
    ...compactProgram(of, [], coarse),
    measures: {
      unpowered: measure(0),
      money: measure(1, price),
      exposed: measure(2),
      bricks: measure(3),
      ...perLeadTier(() => measure(4)),
      ...perPedalTier(() => measure(5)),
      newlyExposed: measure(6),
      moved: measure(7),
      sockets: measure(8),
    },
  };
}

/** What a point is worth in a step. */
const valueOf = ({ objective }: CompactStep, point: readonly number[]): number =>
  objective.terms.reduce((sum, { column, coefficient }) => sum + coefficient * (point[column] ?? 0), 0);

const points = (pedals: number): fc.Arbitrary<readonly number[]> => {
  const count = fc.nat({ max: pedals });
  return fc.tuple(
    count,
    fc.nat({ max: 2 * pedals }),
    count,
    count,
    fc.nat({ max: 3 * pedals }),
    count,
    count,
    count,
    count,
  );
};

const figuresOf = (point: readonly number[], tiers: readonly Criterion[], price: number): readonly number[] => {
  const [unpowered = 0, units = 0, exposed = 0, bricks = 0, parts = 0, offPreferred = 0, ...others] = point;
  const [newlyExposed = 0, moved = 0, sockets = 0] = others;
  const money = units * price;
  const all: Record<Criterion, number> = {
    unpowered,
    money,
    exposed,
    bricks,
    sockets,
    ...perLeadTier(() => parts),
    ...perPedalTier(() => offPreferred),
    outlay: money + 700 * bricks,
    cost: money + 2000 * exposed + 700 * bricks,
    newCost: money + 2000 * newlyExposed + 700 * bricks,
    moved,
  };
  return tiers.map((tier) => all[tier]);
};

describe.each(choosingAims)('the steps of the aim of %s', (aim) => {
  const tiers = tiersOf(aim, policyOf({ supplyPrice: euros(7) }));

  it.each([2, 9, 40])('put plans in the order of its tiers, with %i pedals', (pedals) => {
    const seen = { equal: 0, different: 0 };
    const prices = fc.constantFrom(1, 999, 1000, 123_457);
    fc.assert(
      fc.property(points(pedals), points(pedals), fc.boolean(), prices, (first, second, like, price) => {
        // Two points at random differ in their first tier as a rule; half of them are made to agree there.
        const other = like ? first.map((value, column) => (column < 4 ? value : (second[column] ?? 0))) : second;
        const of = question(pedals, tiers);
        const steps = stepsOf(modelOf(of, price), of);
        const inSteps = firstDifference(
          steps.map((step) => valueOf(step, first)),
          steps.map((step) => valueOf(step, other)),
        );
        const expected = firstDifference(figuresOf(first, tiers, price), figuresOf(other, tiers, price));
        seen[expected === 0 ? 'equal' : 'different'] += 1;
        expect(Math.sign(inSteps)).toBe(Math.sign(expected));
      }),
      trying(400),
    );
    expect(seen.different).toBeGreaterThan(share(200));
  });

  it('tell the value of every tier', () => {
    fc.assert(
      fc.property(points(6), fc.constantFrom(1, 999, 1000), (point, price) => {
        const of = question(6, tiers);
        const values = stepsOf(modelOf(of, price), of).flatMap((step) => tierValues(step, valueOf(step, point)));
        const figures = figuresOf(point, tiers, price);
        expect(values).toEqual(tiers.map((tier, index) => [tier, figures[index]]));
      }),
      trying(300),
    );
  });

  it('have numbers that an engine can tell apart', () => {
    const of = question(60, tiers);
    const terms = stepsOf(modelOf(of, 1), of).flatMap(({ objective }) => objective.terms);
    expect(Math.max(...terms.map(({ coefficient }) => coefficient))).toBeLessThanOrEqual(1e9);
  });
});

it('any plan will do where nothing is to be minimised: one step without an objective', () => {
  const of = question(2, []);
  expect(stepsOf(modelOf(of, 1), of)).toEqual([{ objective: { name: '', terms: [], constant: 0 }, tiers: [] }]);
});

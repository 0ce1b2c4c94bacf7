import fc from 'fast-check';
import { expect, it } from 'vitest';

import { choosingAims, tiersOf, tierValue, type ChoosingAim } from '../../../src/domain/aim.js';
import type { Board, Catalogue } from '../../../src/domain/board.js';
import { kitOf } from '../../../src/domain/kit.js';
import { groupsOf } from '../../../src/formulation/loadout-groups.js';
import { possibleNumbers } from '../../../src/formulation/possible-numbers.js';
import { questionOf } from '../../../src/formulation/question.js';
import { scalarObjectives } from '../../../src/formulation/scalar-objective.js';
import { tierRanges, type TierRanges } from '../../../src/formulation/tier-ranges.js';
import { tinyCase } from '../../support/arbitraries.js';
import { bruteForce } from '../../support/brute-force.js';
import { bankOf, boardOf, catalogueOf, pedalOf, policyOf, settingOf, supplyOf, euros } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';

/** The numbers of an aim that a board's plans can have; a later step builds on what the first tiers come to. */
function numbersOf(board: Board, catalogue: Catalogue, aim: ChoosingAim, partial = true) {
  const tiers = tiersOf(aim, board.policy).filter((tier) => partial || tier !== 'unpowered');
  const question = questionOf(kitOf(board, catalogue), { tiers, partial });
  const [objective] = scalarObjectives(question);
  if (objective === undefined) throw new RangeError('there is no step');
  const groups = question.supplies.flatMap((uses) => groupsOf(uses, new Set(), question.bench));
  return { objective, ...possibleNumbers(objective, tierRanges(question, groups), new Map()) };
}

it('whatever a plan comes to is possible, under every aim', () => {
  const seen = { numbers: 0, passedOver: 0 };
  const aims = fc.constantFrom(...choosingAims);
  fc.assert(
    fc.property(tinyCase, aims, aims, fc.boolean(), ({ board, catalogue }, best, aim, partial) => {
      const plan = bruteForce(board, catalogue, { aim: best, partial });
      if (plan.kind === 'impossible') return;
      const { objective, below, from } = numbersOf(board, catalogue, aim);
      const number = objective.tiers.reduce(
        (sum, { tier, unit, weight }) =>
          sum + weight * (tier === 'sockets' ? 0 : tierValue(tier, plan.score, board.policy) / unit),
        0,
      );
      expect([below(number + 1), from(number)]).toEqual([number, number]);
      expect(below(number)).toBeLessThan(number);
      expect(from(number + 1)).toBeGreaterThan(number);
      seen.numbers += 1;
      if (below(number) < number - 1) seen.passedOver += 1;
    }),
    trying(400),
  );
  expect(seen.numbers).toBeGreaterThan(share(200));
  expect(seen.passedOver).toBeGreaterThan(share(50));
});

const nine = settingOf(9, 100);
const pedals = ['a', 'b', 'c'].map((id) => pedalOf(id, 10));
const twin = supplyOf('twin', 10, [bankOf(2, [nine])]);

it('so many supplies cost at least as much as the cheapest, and at most as much as the dearest', () => {
  const policy = policyOf({ noisePrice: euros(0), supplyPrice: euros(0) });
  const board = boardOf(pedals, { policy });
  const dear = supplyOf('dear', 15, [bankOf(2, [nine])]);
  const { objective, below, from } = numbersOf(board, catalogueOf([twin, dear]), 'bricks', false);
  expect(objective.tiers.map(({ tier, unit }) => [tier, unit]).slice(0, 2)).toEqual([
    ['bricks', 1],
    ['cost', 500],
  ]);
  const [bricks = NaN, cost = NaN] = objective.tiers.map(({ weight }) => weight);
  // One supply costs 2 or 3 fives, two of them 4 to 6.
  expect(below(2 * bricks + 4 * cost)).toBe(bricks + 3 * cost);
  expect(from(bricks + 3 * cost + 1)).toBe(2 * bricks + 4 * cost);
  expect(from(bricks)).toBe(bricks + 2 * cost);
  expect(below(3 * bricks)).toBe(2 * bricks + 6 * cost);
});

it('money that is known tells how many supplies it can be', () => {
  const policy = policyOf({ noisePrice: euros(0), supplyPrice: euros(5) });
  const { objective, below, from } = numbersOf(boardOf(pedals, { policy }), catalogueOf([twin]), 'cost', false);
  expect(objective.tiers.map(({ tier, unit }) => [tier, unit]).slice(0, 2)).toEqual([
    ['cost', 500],
    ['bricks', 1],
  ]);
  const [cost = NaN, bricks = NaN] = objective.tiers.map(({ weight }) => weight);
  // A supply is 10 euros and counts as 5 more: three fives each, and nothing in between.
  expect(from(1)).toBe(3 * cost + bricks);
  expect(from(3 * cost + bricks + 1)).toBe(6 * cost + 2 * bricks);
  expect(below(6 * cost + 2 * bricks)).toBe(3 * cost + bricks);
  expect(below(0)).toBe(-1);
  expect(from(9 * cost + 3 * bricks + 1)).toBe(Infinity);
});

it('there are no more supplies than there are units, and units for nothing may be among them', () => {
  const policy = policyOf({ noisePrice: euros(0) });
  const owned = { supplies: new Map([[twin.id, 1]]), parts: new Map() };
  const rare = catalogueOf([{ ...twin, stock: 1 }]);
  const { objective, below, from } = numbersOf(boardOf(pedals, { policy, owned }), rare, 'bricks', false);
  const [bricks = NaN, cost = NaN] = objective.tiers.map(({ weight }) => weight);
  expect(from(bricks)).toBe(bricks);
  expect(from(2 * bricks)).toBe(2 * bricks + cost);
  expect(below(3 * bricks)).toBe(2 * bricks + cost);
  expect(from(3 * bricks)).toBe(Infinity);
});

it('any number is possible where it would take too long to tell', () => {
  const tiers = [
    { tier: 'money', unit: 1, weight: 10 },
    { tier: 'bricks', unit: 1, weight: 1 },
  ] as const;
  // So many bricks only for nothing at all: no other money has a number of bricks.
  const money = { least: 0, most: 1e12 };
  const ranges: TierRanges = (tier, known) =>
    tier === 'money' ? money : { least: known.get('money') === 0 ? 0 : Infinity, most: 0 };
  const { below, from } = possibleNumbers({ tiers }, ranges, new Map());
  expect(below(5)).toBe(0);
  expect(below(1e12)).toBe(1e12 - 1);
  expect(from(5e11)).toBe(5e11);
});

import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { audit, isSound } from '../../../../src/audit/audit.js';
import { choosingAims, tiersOf, tierValue, type ChoosingAim } from '../../../../src/domain/aim.js';
import type { Score } from '../../../../src/domain/plan.js';
import { minorUnits, type SupplyId } from '../../../../src/domain/quantities.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import type { PlannedOption } from '../../../../src/planning/compare/comparison.js';
import type { Board } from '../../../../src/domain/board.js';
import type { Case } from '../../../support/arbitraries.js';
import { sourceCase } from '../../../support/arbitrary-fed.js';
import { noisyCase, shoppingCase } from '../../../support/arbitrary-shops.js';
import { euros } from '../../../support/builders.js';
import { bruteForce } from '../../../support/brute-force.js';
import { contains, everyPurchase, type Counts, type PurchaseFound } from '../../../support/brute-force-purchases.js';
import { usedIn } from '../../../support/plan-uses.js';
import { Tally } from '../../../support/tally.js';
import { share, trying, tryingUntil } from '../../../support/runs.js';

const runs = 100;

const figures = (score: Score, aim: ChoosingAim, { board }: Case): readonly number[] =>
  tiersOf(aim, board.policy).map((tier) => tierValue(tier, score, board.policy));

/** Below zero when the first is the smaller in the first figure in which they differ. */
const inOrder = (first: readonly number[], second: readonly number[]): number =>
  first.map((value, at) => value - (second[at] ?? 0)).find((difference) => difference !== 0) ?? 0;

const shops = fc.oneof({ weight: 2, arbitrary: shoppingCase }, { weight: 3, arbitrary: sourceCase(3, 3) });

const lackingSources = (seen: Tally): readonly string[] => [
  ...seen.lacking(share(runs / 40), 'battery', 'power bank', 'fed supply'),
  ...seen.lacking(1, 'own adapter'),
];

/** What a customer may want to spend, of all sizes that these shops know. */
const budgets = fc.option(fc.integer({ min: 1, max: 60 }).map(euros), { freq: 2 });

const within = ({ board, catalogue }: Case, budget: Board['policy']['budget']): Case => ({
  board: { ...board, policy: { ...board.policy, budget } },
  catalogue,
});

/** A budget rules out nothing. */
const free = (board: Board): Board => ({ ...board, policy: { ...board.policy, budget: null } });

const boughtBy = ({ supplies }: PlannedOption): Counts => new Map(supplies.map(({ id, units }) => [id, units]));

const planned = (options: readonly { readonly kind: string }[]): readonly PlannedOption[] =>
  options.filter((option): option is PlannedOption => option.kind === 'plan');

/** The least figures of the purchases that hold none of those listed; null when there are no such purchases. */
function nextFigures(
  all: readonly PurchaseFound[],
  listed: readonly Counts[],
  aim: ChoosingAim,
  of: Case,
): readonly number[] | null {
  const left = all.filter(({ bought }) => !listed.some((earlier) => contains(bought, earlier)));
  const [best] = left.map(({ score }) => figures(score, aim, of)).sort(inOrder);
  return best ?? null;
}

describe.each(choosingAims)('under the aim of %s', (aim) => {
  it('the best purchases are those that trying everything finds, in order', async () => {
    const seen = { none: 0, several: 0, one: 0 };
    const sources = new Tally();
    await fc.assert(
      fc.asyncProperty(shops, fc.integer({ min: 1, max: 6 }), async (of, best) => {
        const { purchases } = everyPurchase(free(of.board), of.catalogue, aim);
        const comparison = await compare(kitOf(of.board, of.catalogue), { aim, best });
        const options = planned(comparison.options);
        seen[options.length === 0 ? 'none' : options.length > 1 ? 'several' : 'one'] += 1;
        const listed: Counts[] = [];
        for (const option of options) {
          const bought = boughtBy(option);
          const same = purchases.find((each) => contains(each.bought, bought) && contains(bought, each.bought));
          if (same === undefined) throw new Error('an option buys what trying everything never buys');
          expect(figures(option.score, aim, of)).toEqual(figures(same.score, aim, of));
          expect(figures(option.score, aim, of)).toEqual(nextFigures(purchases, listed, aim, of));
          listed.push(bought);
          sources.add(...usedIn(option.wiring, of));
        }
        const next = nextFigures(purchases, listed, aim, of);
        expect(comparison.best.end).toBe(options.length === best ? 'enough' : 'all');
        if (options.length < best) expect(next).toBeNull();
      }),
      trying(2 * runs),
    );
    expect(seen.several).toBeGreaterThan(share(runs / 4));
    expect(lackingSources(sources)).toEqual([]);
  });
});

const triple = ({ money, exposed, bricks }: Pick<Score, 'money' | 'exposed' | 'bricks'>) => [money, exposed, bricks];

describe.each(choosingAims)('what nothing beats, under the aim of %s', (aim) => {
  it('is all that trying everything finds, and the choices are the best of it in their kinds', async () => {
    const seen = { over: 0, quiet: 0, bricks: 0 };
    const sources = new Tally();
    await fc.assert(
      fc.asyncProperty(fc.oneof(noisyCase, shops, shops), budgets, async (made, budget) => {
        const of = within(made, budget);
        const { unbeatenScores } = everyPurchase(free(of.board), of.catalogue, aim);
        const { unbeaten, options, isProven } = await compare(kitOf(of.board, of.catalogue), {
          aim,
          remainingMs: () => Infinity,
        });
        const [choices, expected] = [planned(options), unbeatenScores.map(triple).sort(inOrder)];
        expect(isProven).toBe(true);
        expect(unbeaten.points.map(triple).sort(inOrder)).toEqual(expected);
        expect(choices.length).toBe(Math.min(4, expected.length));
        for (const { score, wiring } of choices) {
          expect(expected).toContainEqual(triple(score));
          sources.add(...usedIn(wiring, of));
        }
        const [best] = [...unbeatenScores].map((score) => figures(score, aim, of)).sort(inOrder);
        const [first] = choices;
        if (best === undefined || first === undefined) return;
        expect(figures(first.score, aim, of)).toEqual(best);
        expect(first.merits[0]).toBe('aim');
        const [quiet] = [...expected].sort((one, two) => inOrder([one[1] ?? 0, ...one], [two[1] ?? 0, ...two]));
        const [fewest] = [...expected].sort((one, two) => inOrder([one[2] ?? 0, ...one], [two[2] ?? 0, ...two]));
        for (const { merits, score } of choices) {
          expect(merits.includes('quiet')).toBe(String(triple(score)) === String(quiet));
          expect(merits.includes('bricks')).toBe(String(triple(score)) === String(fewest));
          // Several may cost as little, one with fewer supplies, one with fewer exposed.
          expect(merits.includes('money')).toBe(score.money === expected[0]?.[0]);
        }
        expect(choices.map(({ score }) => triple(score))).toEqual(expect.arrayContaining([quiet, fewest]));
        const most = budget ?? Infinity;
        if (expected.some(([money = 0]) => money <= most))
          expect(choices.some(({ overBudget }) => overBudget === 0)).toBe(true);
        for (const { score, overBudget } of choices) expect(overBudget).toBe(Math.max(0, score.money - most));
        if (choices.some(({ overBudget }) => overBudget > 0)) seen.over += 1;
        if (String(best) !== String(quiet)) seen.quiet += 1;
        if (String(best) !== String(fewest)) seen.bricks += 1;
      }),
      trying(3 * runs),
    );
    expect(lackingSources(sources)).toEqual([]);
    const others = (['quiet', 'bricks'] as const).filter((kind) => kind !== aim).map((kind) => seen[kind]);
    expect(Math.min(seen.over, ...others)).toBeGreaterThan(share(runs / 20));
  });
});

describe('what money buys', () => {
  it('is every pair that trying everything finds unbeaten, and no other', async () => {
    const seen = { exposed: 0, bricks: 0 };
    const isMet = (): boolean => Math.min(seen.exposed, seen.bricks) > share(runs / 20);
    const { enough, parameters } = tryingUntil(runs, isMet);
    await fc.assert(
      fc.asyncProperty(noisyCase, async (of) => {
        if (enough()) return;
        const { unbeaten, purchases } = everyPurchase(free(of.board), of.catalogue, 'cost');
        const comparison = await compare(kitOf(of.board, of.catalogue), {
          best: 1,
          remainingMs: () => Infinity,
        });
        expect(comparison.tradeOffs.length).toBe(purchases.length === 0 ? 0 : 2);
        for (const { against, points, complete } of comparison.tradeOffs) {
          expect(complete).toBe(true);
          expect(points.map(({ money, amount }) => [money, amount])).toEqual(unbeaten[against]);
          if (points.length > 1) seen[against] += 1;
          for (const { money, amount, wiring } of points) {
            const report = audit(free(of.board), of.catalogue, wiring.feeds, { partial: false });
            expect(isSound(report)).toBe(true);
            expect([report.wiring.score.money, report.wiring.score[against]]).toEqual([money, amount]);
          }
        }
      }),
      parameters,
    );
    expect(isMet()).toBe(true);
  });
});

describe('a purchase that is asked for', () => {
  it('gets the best wiring that trying everything finds for just these supplies', async () => {
    const seen = { plan: 0, fails: 0, idle: 0, stock: 0, over: 0 };
    await fc.assert(
      fc.asyncProperty(
        shoppingCase,
        fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 9, maxLength: 9 }),
        budgets,
        async (made, rolled, budget) => {
          const of = within(made, budget);
          const dice = [...rolled];
          const { board, catalogue } = of;
          const bought = new Map(
            catalogue.supplies.flatMap(({ id }): readonly (readonly [SupplyId, number])[] => {
              const die = dice.pop() ?? 0;
              return die > 3 ? [[id, die - 3]] : [];
            }),
          );
          const aim = choosingAims[(dice.pop() ?? 0) % 3] ?? 'cost';
          const comparison = await compare(kitOf(board, catalogue), { aim, best: 1, asked: [bought] });
          const option = comparison.options.find(({ asked }) => asked);
          expect(option).toBeDefined();
          const paid = catalogue.supplies.reduce((sum, { id, price }) => sum + (bought.get(id) ?? 0) * (price ?? 0), 0);
          const missing = catalogue.supplies.some(({ id, stock }) => (bought.get(id) ?? 0) > (stock ?? Infinity));
          if (option === undefined) return;
          seen[option.kind] += 1;
          if (missing) {
            seen.stock += 1;
            expect(option.kind).toBe('fails');
            return;
          }
          const after = afterBuying(of, bought);
          const expected = bruteForce(after.board, after.catalogue, { aim, partial: false });
          expect(option.kind).toBe(expected.kind === 'plan' ? 'plan' : 'fails');
          if (option.kind === 'fails' || expected.kind === 'impossible') return;
          if (option.idle.length > 0) seen.idle += 1;
          const score = { ...expected.score, money: minorUnits(expected.score.money + paid) };
          expect(figures(option.score, aim, of)).toEqual(figures(score, aim, of));
          const over = Math.max(0, option.score.money - (budget ?? Infinity));
          if (over > 0) seen.over += 1;
          expect(option.overBudget).toBe(over);
        },
      ),
      trying(2 * runs),
    );
    expect(Math.min(seen.plan, seen.fails)).toBeGreaterThan(share(runs / 10));
    expect(Math.min(seen.idle, seen.stock, seen.over)).toBeGreaterThan(share(runs / 20));
  });
});

/** The customer after the purchase, at a shop that has sold out of supplies. */
function afterBuying({ board, catalogue }: Case, bought: ReadonlyMap<SupplyId, number>): Case {
  const { owned } = board;
  const supplies = new Map(owned.supplies);
  for (const [id, units] of bought) supplies.set(id, (supplies.get(id) ?? 0) + units);
  return {
    board: { ...free(board), owned: { ...owned, supplies } },
    catalogue: { ...catalogue, supplies: catalogue.supplies.map((supply) => ({ ...supply, stock: 0 })) },
  };
}

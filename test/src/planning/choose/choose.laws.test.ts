import { isDeepStrictEqual } from 'node:util';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, compareScores, type ChoosingAim } from '../../../../src/domain/aim.js';
import type { Feed, Wiring } from '../../../../src/domain/plan.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import type { ChooseOptions } from '../../../../src/planning/choose/choose.js';
import { tinyCase, type Case } from '../../../support/arbitraries.js';
import { adapterCase, sourceCase } from '../../../support/arbitrary-fed.js';
import { supplyDrafts, supplyFrom } from '../../../support/arbitrary-supplies.js';
import { relaxations, restrictions, sourceRelaxations, sourceRestrictions } from '../../../support/changes.js';
import { sharedChoose } from '../../../support/choosing.js';
import { askedAtMost, mostAsks } from '../../../support/counted-limit.js';
import { share, tryingMost } from '../../../support/runs.js';
import { Tally } from '../../../support/tally.js';
import { tierFigures } from '../../../support/tier-figures.js';

const choose = sharedChoose();
const runs = 300;
/** Half of them with every source. */
const cases = fc.oneof(tinyCase, sourceCase(3, 3));
const aims = fc.constantFrom(...choosingAims);

/** The proven plan, null when it is impossible. Passes over a case in which the search gets stuck. */
async function proven({ board, catalogue }: Case, options: ChooseOptions): Promise<Wiring | null> {
  const answer = await choose(board, catalogue, { ...options, remainingMs: askedAtMost(mostAsks) });
  if (answer.kind === 'impossible') return null;
  fc.pre(answer.kind === 'plan' && answer.gap === null);
  return answer.wiring;
}

/** The best plan that leaves as few pedals unpowered as can be; there always is one. */
async function bestPartial(of: Case, aim: ChoosingAim): Promise<Wiring> {
  const wiring = await proven(of, { aim, partial: true });
  if (wiring === null) throw new Error('a plan that may leave out every pedal always exists');
  return wiring;
}

/** The plan with what is possible is no better than the plan with more. */
async function expectNoWorse(less: Case, more: Case, aim: ChoosingAim, seen: { better: number }): Promise<void> {
  const before = await bestPartial(less, aim);
  const after = await bestPartial(more, aim);
  const change = compareScores(after.score, before.score, aim, more.board.policy);
  if (change < 0) seen.better += 1;
  expect(change).toBeLessThanOrEqual(0);
}

describe('no plan gets worse', () => {
  it('when the shop has one more supply', async () => {
    const seen = { better: 0 };
    await fc.assert(
      fc.asyncProperty(cases, supplyDrafts, aims, async (of, draft, aim) => {
        const further = supplyFrom({ ...draft, gear: false }, 99);
        const catalogue = { ...of.catalogue, supplies: [...of.catalogue.supplies, further] };
        await expectNoWorse(of, { ...of, catalogue }, aim, seen);
      }),
      tryingMost(runs),
    );
    expect(seen.better).toBeGreaterThan(share(runs / 20));
  });

  it('when the price of a supply or a lead falls', async () => {
    const seen = { better: 0 };
    await fc.assert(
      fc.asyncProperty(cases, fc.nat(), fc.nat({ max: 99 }), aims, async (of, which, share, aim) => {
        const { supplies, parts } = of.catalogue;
        if (supplies.length + parts.length === 0) return;
        const index = which % (supplies.length + parts.length);
        const cheaper = <Article extends Case['catalogue']['supplies' | 'parts'][number]>(
          article: Article,
        ): Article => ({
          ...article,
          price: minorUnits(Math.floor(((article.price ?? 0) * share) / 100)),
        });
        const catalogue = {
          ...of.catalogue,
          supplies: supplies.map((each, at) => (at === index ? cheaper(each) : each)),
          parts: parts.map((each, at) => (at === index - supplies.length ? cheaper(each) : each)),
        };
        await expectNoWorse(of, { ...of, catalogue }, aim, seen);
      }),
      tryingMost(runs),
    );
    expect(seen.better).toBeGreaterThan(share(runs / 20));
  });

  // Where a pedal has one companion on a chain, its going leaves the companion alone on the output: that may take more
  // headroom, and the chain lead may have been what changed plug or polarity. Any other pedal can be unplugged, and what
  // is left is a plan.
  it('when a pedal goes, unless it leaves another one alone on its chain', async () => {
    const seen = { better: 0, guarded: 0 };
    await fc.assert(
      fc.asyncProperty(cases, fc.nat(), aims, async (of, which, aim) => {
        const { pedals } = of.board;
        const wiring = await bestPartial(of, aim);
        const gone = pedals[which % pedals.length];
        if (gone === undefined || pedals.length === 1 || leavesOneAlone(gone.id, wiring.feeds)) {
          seen.guarded += 1;
          return;
        }
        const board = { ...of.board, pedals: pedals.filter((pedal) => pedal !== gone) };
        const after = await bestPartial({ ...of, board }, aim);
        const change = compareScores(after.score, wiring.score, aim, board.policy);
        if (change < 0) seen.better += 1;
        expect(change).toBeLessThanOrEqual(0);
      }),
      tryingMost(runs + 100),
    );
    expect(seen.better).toBeGreaterThan(share(runs / 3));
    expect(seen.guarded).toBeLessThan(share(100));
  });
});

function leavesOneAlone(pedal: string, feeds: readonly Feed[]): boolean {
  const feed = feeds.find((each) => each.pedal === pedal);
  if (feed === undefined || feed.chain === null) return false;
  const placeOf = ({ supply, unit, outputs }: Feed): string => JSON.stringify([supply, unit, outputs]);
  return feeds.filter((each) => placeOf(each) === placeOf(feed)).length === 2;
}

describe('a rule taken away makes no plan worse, a way out taken away none better', () => {
  const loosened = [...relaxations, ...sourceRelaxations];
  const tightened = [...restrictions, ...sourceRestrictions];
  const ofSources = [...sourceRelaxations, ...sourceRestrictions];

  /** What the best plan that may leave pedals out comes to, the first that counts first. */
  const figuresOf = async (of: Case, aim: ChoosingAim): Promise<readonly number[]> =>
    tierFigures((await bestPartial(of, aim)).score, aim, of.board.policy);

  /** Below 0 where the first is better. */
  function compared(one: readonly number[], other: readonly number[]): number {
    const at = one.findIndex((figure, index) => figure !== other[index]);
    return at < 0 ? 0 : (one[at] ?? 0) - (other[at] ?? 0);
  }

  it('on boards with every source, changes of theirs and of all others', async () => {
    const seen = new Tally();
    const others = fc.constantFrom(...relaxations, ...restrictions);
    const every = fc.oneof(sourceCase(3, 3), adapterCase(sourceCase(3, 3)));
    // What has made a difference so often is not looked at any more.
    const enough = share(12);
    await fc.assert(
      fc.asyncProperty(every, aims, others, async (of, aim, other) => {
        const before = await figuresOf(of, aim);
        for (const change of [...ofSources.filter(({ name }) => seen.of(name) < enough), other]) {
          const changed = change.changed(of);
          if (isDeepStrictEqual(changed, of)) continue;
          const difference = compared(await figuresOf(changed, aim), before);
          if (difference !== 0) seen.add(change.name);
          if (loosened.includes(change)) expect(difference, change.name).toBeLessThanOrEqual(0);
          if (tightened.includes(change)) expect(difference, change.name).toBeGreaterThanOrEqual(0);
        }
      }),
      tryingMost(160),
    );
    expect(seen.lacking(share(4), ...ofSources.map(({ name }) => name))).toEqual([]);
  });
});

describe('the order of the input', () => {
  const shuffledCase = cases.chain((of) =>
    fc.record({
      of: fc.constant(of),
      pedals: shuffled(of.board.pedals),
      gear: fc.record({ supplies: shuffled(of.board.gear.supplies), parts: shuffled(of.board.gear.parts) }),
      supplies: shuffled(of.catalogue.supplies),
      parts: shuffled(of.catalogue.parts),
    }),
  );

  it('never changes how good the plan is', async () => {
    let moved = 0;
    await fc.assert(
      fc.asyncProperty(
        shuffledCase,
        aims,
        fc.boolean(),
        async ({ of, pedals, gear, supplies, parts }, aim, partial) => {
          const other: Case = {
            board: { ...of.board, pedals, gear },
            catalogue: { ...of.catalogue, supplies, parts },
          };
          if (pedals.some((pedal, index) => pedal !== of.board.pedals[index])) moved += 1;
          const [first, second] = [await proven(of, { aim, partial }), await proven(other, { aim, partial })];
          expect(second === null).toBe(first === null);
          if (first === null || second === null) return;
          expect(compareScores(second.score, first.score, aim, of.board.policy)).toBe(0);
        },
      ),
      tryingMost(runs),
    );
    expect(moved).toBeGreaterThan(share(runs / 3));
  });
});

function shuffled<Item>(items: readonly Item[]): fc.Arbitrary<Item[]> {
  return fc.shuffledSubarray([...items], { minLength: items.length });
}

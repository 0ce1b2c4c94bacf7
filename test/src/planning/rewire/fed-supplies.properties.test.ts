import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { compareScores } from '../../../../src/domain/aim.js';
import type { Board, WiredFeed } from '../../../../src/domain/board.js';
import type { JudgedPlan } from '../../../../src/domain/judged-plan.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { everyFeed } from '../../../../src/domain/plan.js';
import { chooseAround } from '../../../../src/planning/choose/choose-around.js';
import { rewire } from '../../../../src/planning/rewire/rewire.js';
import { todaysWiring } from '../../../../src/planning/today/todays-wiring.js';
import { verifyProof } from '../../../../src/proof/verify-proof.js';
import { read, type Case } from '../../../support/arbitraries.js';
import { fedCase, sourceCase } from '../../../support/arbitrary-fed.js';
import { bruteForce } from '../../../support/brute-force.js';
import { bruteForceMoves } from '../../../support/brute-force-moves.js';
import { share, trying } from '../../../support/runs.js';
import { carriedOut } from '../../../support/simulated-steps.js';
import { Tally } from '../../../support/tally.js';
import { isOfInlet, pluggedAs, wiredOf } from '../../../support/wired.js';

/** A board on which some pedals are plugged as a plan for another aim has them, with all that this plan uses owned. */
function pluggedToday({ board, catalogue }: Case, die: number): Board {
  const today = bruteForce(board, catalogue, { aim: die % 2 === 0 ? 'quiet' : 'bricks', partial: true });
  if (today.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
  const owned = new Map(board.owned.supplies);
  for (const { supply, unit } of today.feeds) owned.set(supply, Math.max(unit, owned.get(supply) ?? 0));
  const wired = today.feeds.map(wiredOf).filter((feed, at) => isOfInlet(feed) || (die >> at) % 3 > 0);
  const feedsPedals = (of: { readonly supply: string; readonly unit: number }): boolean =>
    wired.some((feed) => !isOfInlet(feed) && feed.supply === of.supply && feed.unit === of.unit);
  const inUse = (feed: WiredFeed): boolean => !isOfInlet(feed) || feedsPedals(feed.inletOf);
  return pluggedAs({ ...board, owned: { ...board.owned, supplies: owned } }, wired.filter(inUse));
}

const cases = fc.oneof({ weight: 2, arbitrary: fedCase(3, 3) }, { weight: 1, arbitrary: sourceCase(3, 3) });

describe('re-plugging a board with fed supplies', () => {
  it('is as good as brute force finds it, proven so, and done in safe steps', async () => {
    const seen = new Tally();
    const counts = { steps: 0, switches: 0, measured: 0, stayedOn: 0 };
    const runs = 500;
    await fc.assert(
      fc.asyncProperty(cases.map(read), fc.nat(), fc.boolean(), async (of, die, partial) => {
        const board = pluggedToday(of, die);
        const kit = kitOf(board, of.catalogue);
        const expected = bruteForceMoves(board, of.catalogue, { partial });
        const answer = await rewire(kit, { partial, proof: true });
        expect(answer.kind).toBe(expected === null ? 'impossible' : 'plan');
        seen.add(answer.kind);
        if (answer.kind !== 'plan' || expected === null) return;
        expect(answer.gap).toBe(null);
        expect(compareScores(answer.wiring.score, expected, 'moves', board.policy)).toBe(0);
        if (answer.proof !== undefined)
          expect(verifyProof(board, of.catalogue, answer.proof, answer.wiring.score)).toMatchObject({
            kind: 'holds',
          });
        const steps = answer.changes?.steps ?? [];
        const hung = carriedOut(steps, todaysWiring(kit).feeds, board, of.catalogue, counts);
        const planned = everyFeed(answer.wiring).filter(
          ({ pedal }) => !board.pedals.some(({ id, kept }) => id === pedal && kept !== null),
        );
        expect(new Set(hung.keys())).toEqual(new Set(planned.map(({ pedal }) => pedal)));
        if (answer.wiring.inlets.length > 0) seen.add('fed');
        if (steps.some((step) => step.kind === 'plug' && step.feed.inletOf !== undefined)) seen.add('inlet plugged');
        if (steps.some((step) => step.kind === 'pull' && step.from.inletOf !== undefined)) seen.add('inlet pulled');
      }),
      trying(2 * runs),
    );
    expect(seen.lacking(share(runs / 20), 'plan', 'impossible', 'fed', 'inlet plugged')).toEqual([]);
    expect(seen.lacking(1, 'inlet pulled')).toEqual([]);
    expect(counts.measured).toBeGreaterThan(share(runs / 4));
  });

  it('an inlet that is kept stays, at no less than where it need not, and is in the way only where no plan has it there', async () => {
    const seen = new Tally();
    const runs = 500;
    await fc.assert(
      fc.asyncProperty(fedCase(3, 3).map(read), fc.nat(), async (of, die) => {
        const board = pluggedToday(of, die);
        const [wired] = board.inlets;
        if (wired === undefined) return;
        const kit = kitOf(board, of.catalogue);
        const [free, kept] = [await rewire(kit), await rewire(kit, { keep: [wired.pedal], proof: true })];
        const around = await chooseAround(kit, [wired]);
        seen.add(`kept ${kept.kind}`);
        expect(kept.kind === 'plan').toBe(around.kind === 'plan');
        if (kept.kind === 'impossible' && free.kind === 'plan')
          expect(kept.reasons).toMatchObject([{ kind: 'request', requests: [{ kind: 'keep', pedal: wired.pedal }] }]);
        if (kept.kind !== 'plan' || free.kind !== 'plan') return;
        expect([kept.gap, kept.proof]).toEqual([null, undefined]);
        expect(isKept(kept.wiring, wired)).toBe(true);
        const order = compareScores(free.wiring.score, kept.wiring.score, 'moves', board.policy);
        if (isKept(free.wiring, wired)) expect(order).toBe(0);
        else expect(order).toBeLessThanOrEqual(0);
        seen.add(isKept(free.wiring, wired) ? 'stays' : 'would go');
      }),
      trying(2 * runs),
    );
    expect(seen.lacking(share(runs / 30), 'kept plan', 'stays')).toEqual([]);
    expect(seen.lacking(1, 'kept impossible', 'would go')).toEqual([]);
  });
});

const isKept = ({ inlets }: JudgedPlan, { pedal, supply, unit, outputs }: WiredFeed): boolean =>
  inlets.some(
    (feed) =>
      feed.pedal === pedal && feed.supply === supply && feed.unit === unit && feed.outputs.join() === outputs.join(),
  );

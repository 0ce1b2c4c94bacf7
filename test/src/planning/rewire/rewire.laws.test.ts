import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { auditWiring } from '../../../../src/audit/audit-wiring.js';
import type { Wiring } from '../../../../src/domain/plan.js';
import type { Answer } from '../../../../src/planning/answer.js';
import { check } from '../../../../src/planning/check/check.js';
import { rewire, type RewireOptions } from '../../../../src/planning/rewire/rewire.js';
import { wiredFeeds } from '../../../../src/planning/today/wired-feeds.js';
import type { Case } from '../../../support/arbitraries.js';
import { owning, wiredCase } from '../../../support/arbitrary-wirings.js';
import { askedAtMost, mostAsks } from '../../../support/counted-limit.js';
import { carriedOut } from '../../../support/simulated-steps.js';
import { wiredOf } from '../../../support/wired.js';
import { share, tryingMost, tryingUntil } from '../../../support/runs.js';

const runs = 80;

type Plan = Extract<Answer, { kind: 'plan' }>;

/** The proven plan, null when it is impossible. Passes over a case in which the search gets stuck. */
async function planFor({ board, catalogue }: Case, options: RewireOptions = {}): Promise<Plan | null> {
  const answer = await rewire(kitOf(board, catalogue), { ...options, remainingMs: askedAtMost(mostAsks) });
  if (answer.kind === 'impossible') return null;
  fc.pre(answer.kind === 'plan' && answer.gap === null);
  return answer;
}

const changesIn = ({ changes }: Plan) => {
  if (changes === undefined) throw new Error('a plan for re-plugging says what it changes');
  return changes;
};

/** Whether today's wiring keeps every rule, powers every pedal and uses nothing that is not owned. */
function isWell({ board, catalogue }: Case): boolean {
  const { status, wiring } = check(kitOf(board, catalogue));
  return status === 'safe' && wiring.unpowered.length === 0 && wiring.score.money === 0;
}

describe('re-plugging', () => {
  it('moves nothing, and sets nothing anew, where today is allowed and complete', async () => {
    let well = 0;
    const isMet = (): boolean => well > share(runs / 5);
    const { enough, parameters } = tryingUntil(2 * runs, isMet);
    await fc.assert(
      fc.asyncProperty(wiredCase, async (of) => {
        if (enough() || !isWell(of)) return;
        well += 1;
        const plan = await planFor(of);
        expect(plan?.wiring.moved).toEqual([]);
        expect(plan?.wiring.score).toMatchObject({ moved: 0, newlyExposed: 0, money: 0, unpowered: 0 });
      }),
      parameters,
    );
    expect(isMet()).toBe(true);
  });

  it('has nothing left to do once it was done', async () => {
    let done = 0;
    await fc.assert(
      fc.asyncProperty(wiredCase, fc.boolean(), async (of, partial) => {
        const plan = await planFor(of, { partial });
        if (plan === null) return;
        // The shop has its stock again, which may now power one more.
        if (plan.wiring.unpowered.length > 0 && plan.wiring.score.money > 0) return;
        done += 1;
        const { board, catalogue } = of;
        const replugged = owning({ ...board, wiring: plan.wiring.feeds.map(wiredOf) }, true);
        const again = await planFor({ board: replugged, catalogue }, { partial });
        expect(again?.wiring.moved).toEqual([]);
        expect(again === null ? null : changesIn(again)).toMatchObject({
          moves: [],
          added: [],
          dropped: [],
          steps: [],
        });
      }),
      tryingMost(runs),
    );
    expect(done).toBeGreaterThan(share(runs / 2));
  });

  it('buys nothing when nothing is to be bought', async () => {
    const seen = { free: 0, forbidden: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, async (of) => {
        const plan = await planFor(of, { buy: 'never' });
        const freely = await planFor(of);
        if (plan !== null) {
          expect(plan.wiring.buy).toEqual({ supplies: [], parts: [] });
          seen.free += 1;
        } else if (freely !== null) {
          expect(freely.wiring.score.money).toBeGreaterThan(0);
          seen.forbidden += 1;
        }
      }),
      tryingMost(runs),
    );
    expect(seen.free).toBeGreaterThan(share(runs / 4));
    expect(seen.forbidden).toBeGreaterThan(share(runs / 20));
  });

  it('says of every pedal what becomes of it, and why it moves', async () => {
    const seen = { rule: 0, taken: 0, saves: 0, company: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, fc.boolean(), async (of, partial) => {
        const plan = await planFor(of, { partial });
        if (plan === null) return;
        const { stays, releads, moves, added, dropped } = changesIn(plan);
        const { feeds, moved, unpowered } = plan.wiring;
        const wired = new Set(of.board.wiring.map(({ pedal }) => pedal));
        expect([...moves.map(({ to }) => to.pedal), ...dropped]).toEqual(moved);
        expect([...stays, ...added, ...moves.map(({ to }) => to.pedal)].sort()).toEqual(
          feeds.map(({ pedal }) => pedal).sort(),
        );
        expect(stays).toEqual(expect.arrayContaining([...releads]));
        expect(added.filter((pedal) => wired.has(pedal))).toEqual([]);
        expect(dropped).toEqual(unpowered.filter((pedal) => wired.has(pedal)));
        for (const { reason } of moves) seen[reason.kind] += 1;
      }),
      tryingMost(2 * runs),
    );
    expect(seen.none).toBe(0);
    expect(seen.rule).toBeGreaterThan(share(runs / 10));
  });

  it('lets no pedal come to harm on the way, and ends as planned', async () => {
    const seen = { steps: 0, switches: 0, measured: 0, stayedOn: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, fc.boolean(), async (of, partial) => {
        const plan = await planFor(of, { partial });
        if (plan === null) return;
        const { board, catalogue } = of;
        const today = wiredFeeds(kitOf(board, catalogue)).feeds;
        const plugged = carriedOut(changesIn(plan).steps, today, board, catalogue, seen);
        expect(plugged).toEqual(new Map(plan.wiring.feeds.map((feed) => [feed.pedal, feed])));
      }),
      tryingMost(2 * runs),
    );
    expect(Math.min(seen.switches, seen.stayedOn)).toBeGreaterThan(share(runs / 20));
    expect(seen.measured).toBeGreaterThan(share(runs / 2));
  });

  it('claims of its moves what the audit finds, and the audit would find anything else', async () => {
    let moved = 0;
    await fc.assert(
      fc.asyncProperty(wiredCase, async (of) => {
        const plan = await planFor(of, { partial: true });
        if (plan === null) throw new Error('a plan that may leave out every pedal always exists');
        const { wiring } = plan;
        const errors = (claimed: Wiring) => auditWiring(of.board, of.catalogue, claimed, { partial: true });
        expect(errors(wiring)).toEqual([]);
        const others = wiring.feeds.map(({ pedal }) => pedal).filter((pedal) => !wiring.moved?.includes(pedal));
        for (const pedal of others)
          expect(errors({ ...wiring, moved: [...(wiring.moved ?? []), pedal] })).toMatchObject([{ field: 'moved' }]);
        if (wiring.moved !== undefined && wiring.moved.length > 0) {
          moved += 1;
          expect(errors({ ...wiring, moved: wiring.moved.slice(1) })).toMatchObject([{ field: 'moved' }]);
        }
      }),
      tryingMost(runs),
    );
    expect(moved).toBeGreaterThan(share(runs / 10));
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { audit, isSound } from '../../../../src/audit/audit.js';
import { choosingAims, compareScores } from '../../../../src/domain/aim.js';
import type { Wiring } from '../../../../src/domain/plan.js';
import type { ChooseOptions } from '../../../../src/planning/choose/choose.js';
import { largerCase, tinyCase, type Case } from '../../../support/arbitraries.js';
import { bruteForce } from '../../../support/brute-force.js';
import { sharedChoose } from '../../../support/choosing.js';
import { askedAtMost, mostAsks } from '../../../support/counted-limit.js';
import { share, tryingMost } from '../../../support/runs.js';

const choose = sharedChoose();
const runs = 300;
const aims = fc.constantFrom(...choosingAims);

/** The proven plan, null when it is impossible. Passes over a case in which the search gets stuck. */
async function proven({ board, catalogue }: Case, options: ChooseOptions): Promise<Wiring | null> {
  const answer = await choose(board, catalogue, { ...options, remainingMs: askedAtMost(mostAsks) });
  if (answer.kind === 'impossible') return null;
  fc.pre(answer.kind === 'plan' && answer.gap === null);
  return answer.wiring;
}

describe.each(choosingAims)('under the aim of %s', (aim) => {
  it.each([false, true])('the plan is as good as brute force finds it; partial: %s', async (partial) => {
    const seen = { plan: 0, impossible: 0, unpowered: 0 };
    await fc.assert(
      fc.asyncProperty(tinyCase, async (of) => {
        const expected = bruteForce(of.board, of.catalogue, { aim, partial });
        const wiring = await proven(of, { aim, partial });
        seen[expected.kind] += 1;
        expect(wiring === null ? 'impossible' : 'plan').toBe(expected.kind);
        if (wiring === null || expected.kind === 'impossible') return;
        if (wiring.unpowered.length > 0) seen.unpowered += 1;
        expect(compareScores(wiring.score, expected.score, aim, of.board.policy)).toBe(0);
      }),
      tryingMost(runs),
    );
    expect(seen.plan).toBeGreaterThan(share(runs / 3));
    expect(partial ? seen.unpowered : seen.impossible).toBeGreaterThan(share(runs / 6));
  });
});

describe('on larger boards', () => {
  it('every plan keeps every rule, and is what it says it is', async () => {
    let powered = 0;
    await fc.assert(
      fc.asyncProperty(largerCase(8, 5), aims, async ({ board, catalogue }, aim) => {
        const remainingMs = askedAtMost(mostAsks);
        const answer = await choose(board, catalogue, { aim, partial: true, remainingMs });
        fc.pre(answer.kind !== 'stopped');
        if (answer.kind !== 'plan') throw new Error('a plan that may leave out every pedal always exists');
        const { feeds, unpowered, exposed, buy, score } = answer.wiring;
        const report = audit(board, catalogue, feeds, { partial: true });
        powered += feeds.length;
        expect(isSound(report)).toBe(true);
        expect({ unpowered, exposed, score }).toEqual({
          unpowered: report.wiring.unpowered,
          exposed: report.wiring.exposed,
          score: report.wiring.score,
        });
        expect(new Set([...buy.supplies, ...buy.parts])).toEqual(
          new Set([...report.wiring.buy.supplies, ...report.wiring.buy.parts]),
        );
      }),
      tryingMost(runs),
    );
    expect(powered).toBeGreaterThan(share(3 * runs));
  });
});

import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { tiersOf, tierValue } from '../../../../src/domain/aim.js';
import type { Wiring } from '../../../../src/domain/plan.js';
import type { PedalId } from '../../../../src/domain/quantities.js';
import type { Answer } from '../../../../src/planning/answer.js';
import { rewire, type RewireOptions } from '../../../../src/planning/rewire/rewire.js';
import type { Case } from '../../../support/arbitraries.js';
import { wiredCase } from '../../../support/arbitrary-wirings.js';
import { bruteForceMoves } from '../../../support/brute-force-moves.js';
import { askedAtMost, mostAsks } from '../../../support/counted-limit.js';
import { share, tryingMost } from '../../../support/runs.js';

const runs = 300;

/** The proven plan, null when it is impossible. Passes over a case in which the search gets stuck. */
async function proven({ board, catalogue }: Case, options: RewireOptions): Promise<Wiring | null> {
  const answer = await rewire(kitOf(board, catalogue), { ...options, remainingMs: askedAtMost(mostAsks) });
  fc.pre(isProven(answer));
  return answer.kind === 'plan' ? answer.wiring : null;
}

const isProven = (answer: Answer): boolean =>
  answer.kind === 'impossible' || (answer.kind === 'plan' && answer.gap === null);

const figures = ({ score }: Pick<Wiring, 'score'>, { board }: Case): readonly number[] =>
  tiersOf('moves', board.policy).map((tier) => tierValue(tier, score, board.policy));

describe('re-plugging', () => {
  it.each([false, true])('is as good as brute force finds it; partial: %s', async (partial) => {
    const seen = { plan: 0, impossible: 0, moved: 0, stayed: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, async (of) => {
        const expected = bruteForceMoves(of.board, of.catalogue, { partial });
        const wiring = await proven(of, { partial });
        seen[expected === null ? 'impossible' : 'plan'] += 1;
        expect(wiring === null).toBe(expected === null);
        if (wiring === null || expected === null) return;
        expect(figures(wiring, of)).toEqual(figures({ score: expected }, of));
        if (wiring.score.moved === 0) seen.stayed += 1;
        else seen.moved += 1;
      }),
      tryingMost(runs),
    );
    expect(seen.plan).toBeGreaterThan(share(runs / 3));
    expect(seen.moved).toBeGreaterThan(share(runs / 10));
    expect(seen.stayed).toBeGreaterThan(share(runs / 10));
  });

  it('keeps what it is told to keep', async () => {
    const seen = { kept: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, fc.array(fc.nat({ max: 3 }), { maxLength: 2 }), async (of, pins) => {
        const keep = [...new Set(pins.flatMap((pin): PedalId[] => of.board.wiring.slice(pin, pin + 1).map(({ pedal }) => pedal)))]; // prettier-ignore
        const expected = bruteForceMoves(of.board, of.catalogue, { partial: false, keep });
        const wiring = await proven(of, { keep });
        expect(wiring === null).toBe(expected === null);
        if (wiring === null || expected === null) return;
        expect(figures(wiring, of)).toEqual(figures({ score: expected }, of));
        expect(keep.filter((pedal) => wiring.moved?.includes(pedal))).toEqual([]);
        if (keep.length > 0) seen.kept += 1;
      }),
      tryingMost(runs),
    );
    expect(seen.kept).toBeGreaterThan(share(runs / 10));
  });
});

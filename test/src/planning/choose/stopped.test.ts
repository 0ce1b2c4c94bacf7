import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims } from '../../../../src/domain/aim.js';
import type { ChooseOptions } from '../../../../src/planning/choose/choose.js';
import { largerCase, tinyCase, type Case } from '../../../support/arbitraries.js';
import { euros } from '../../../support/builders.js';
import { sharedChoose } from '../../../support/choosing.js';
import { expectNotWrong, type Extent } from '../../../support/not-wrong.js';
import { auditWiring } from '../../../../src/audit/audit-wiring.js';
import { box, caseOf, pairWith, type Given } from '../given.js';
import { share, trying } from '../../../support/runs.js';

const choose = sharedChoose();
const runs = 300;

type Seen = Record<Extent, number>;
const nothingSeen = (): Seen => ({ proven: 0, impossible: 0, 'best found': 0, stopped: 0 });

const questions = fc.record({ of: tinyCase, aim: fc.constantFrom(...choosingAims), partial: fc.boolean() });

/** Asks with little patience, and counts how far the answers go. None may be wrong. */
async function counted(optionsFor: (stopAfter: number) => ChooseOptions, numRuns = runs): Promise<Seen> {
  const seen = nothingSeen();
  await fc.assert(
    fc.asyncProperty(questions, fc.nat({ max: 6 }), async ({ of, aim, partial }, stopAfter) => {
      const answer = await choose(of.board, of.catalogue, { ...optionsFor(stopAfter), aim, partial });
      seen[expectNotWrong(answer, of, { aim, partial })] += 1;
    }),
    trying(numRuns),
  );
  return seen;
}

describe('without any time', () => {
  it.each<[string, () => ChooseOptions]>([
    ['no millisecond is left', () => ({ remainingMs: () => 0 })],
    ['the time is over', () => ({ remainingMs: () => -1 })],
    ['the search is cancelled', () => ({ signal: AbortSignal.abort() })],
  ])('there is a quick plan that keeps every rule, or none: %s', async (_, options) => {
    const seen = await counted(options);
    expect(seen['best found']).toBeGreaterThan(share(runs / 4));
    expect(seen.stopped).toBeGreaterThan(share(runs / 20));
  });

  it('a quick plan keeps every rule on larger boards, too', async () => {
    let plans = 0;
    await fc.assert(
      fc.asyncProperty(largerCase(8, 5), fc.boolean(), async ({ board, catalogue }: Case, partial) => {
        const answer = await choose(board, catalogue, { partial, remainingMs: () => 0 });
        if (answer.kind !== 'plan') return;
        plans += 1;
        expect(auditWiring(board, catalogue, answer.wiring, { partial })).toEqual([]);
      }),
      trying(runs),
    );
    expect(plans).toBeGreaterThan(share(runs / 3));
  });

  // Two boxes cost 20 and take two sockets.
  const given: Given = { pedals: pairWith(), supplies: [box(1)] };

  it.each<[string, Given['policy']]>([
    ['the budget', { budget: euros(19.99) }],
    ['the bricks', { bricks: 1 }],
    ['the sockets', { sockets: 1 }],
  ])('a quick plan keeps within %s', async (_, policy = {}) => {
    const { board, catalogue } = caseOf({ ...given, policy });
    for (const partial of [false, true]) {
      const answer = await choose(board, catalogue, { remainingMs: () => 0, partial });
      expectNotWrong(answer, { board, catalogue }, { aim: 'cost', partial });
    }
  });
});

describe('with too little time', () => {
  it('the answer says how far the search came, and nothing that is wrong', async () => {
    const seen = await counted((stopAfter) => {
      let asked = 0;
      return { remainingMs: () => ((asked += 1) > stopAfter ? 0 : 60_000) };
    });
    for (const extent of ['proven', 'impossible', 'best found'] as const)
      expect(seen[extent]).toBeGreaterThan(share(runs / 30));
    expect(seen.stopped).toBeGreaterThan(0);
  });

  it('a search that is cancelled midway says so likewise', async () => {
    const cancelled = 80;
    const seen = await counted((stopAfter) => {
      const controller = new AbortController();
      let reports = 0;
      const onProgress = (): void => {
        reports += 1;
        if (reports > stopAfter) controller.abort();
      };
      return { signal: controller.signal, onProgress };
    }, cancelled);
    expect(seen['best found']).toBeGreaterThan(0);
    expect(seen.proven).toBeGreaterThan(share(cancelled / 10));
  });
});

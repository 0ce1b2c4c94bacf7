import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../src/domain/kit.js';
import { choose } from '../../../src/planning/choose/choose.js';
import { explain } from '../../../src/planning/explain/explain.js';
import { tinyCase } from '../../support/arbitraries.js';
import { caseFor, impossibleCases } from '../../support/impossible-cases.js';
import { expectNotWrong } from '../../support/not-wrong.js';
import { Tally } from '../../support/tally.js';

describe('without engines', () => {
  it('choose finds what there is by loadouts alone, and proves nearly all of it', async () => {
    const seen = new Tally();
    await fc.assert(
      fc.asyncProperty(tinyCase, async (given) => {
        const answer = await choose(kitOf(given.board, given.catalogue));
        seen.add(expectNotWrong(answer, given, { aim: 'cost', partial: false }));
      }),
      { numRuns: 60 },
    );
    expect(seen.lacking(5, 'proven', 'impossible')).toEqual([]);
    expect(seen.of('best found') + seen.of('stopped')).toBeLessThan(6);
  });

  it('choose by the compact program is stopped before it began', async () => {
    const [one] = impossibleCases;
    if (one === undefined) throw new Error('no case');
    const { board, catalogue } = caseFor(one);
    expect(await choose(kitOf(board, catalogue), { method: 'compact' })).toEqual({ kind: 'stopped', aim: 'cost' });
  });

  it.each(impossibleCases)('explain finds a smallest conflict: $why', async (one) => {
    const { board, catalogue } = caseFor(one);
    const explanation = await explain(kitOf(board, catalogue), { shrinkMs: 100_000 });
    if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
    const [first] = explanation.conflicts;
    const size = (first?.conflict.pedals.length ?? 0) + (first?.conflict.facts.length ?? 0);
    expect(size).toBeGreaterThan(0);
    expect(first?.conflict.size).toBe('smallest');
  });
});

import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';

import { compactSearch } from '../../../bench/rival/formulation/compact-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { noisyCase } from '../../support/arbitrary-shops.js';
import { everyPurchase } from '../../support/brute-force-purchases.js';
import { sharedEngines } from '../../support/engines.js';
import { trying } from '../../support/runs.js';

const engines = sharedEngines();

const patience = { remainingMs: () => Infinity };

it.each([
  ['loadouts', (question: Question) => optimise(question, patience)],
  ['the compact program', (question: Question) => compactSearch(question, { engines, ...patience })],
] as const)('keeps the limit of exposed pedals, at the least cost: %s', async (_, search) => {
  const seen = { bites: 0 };
  await fc.assert(
    fc.asyncProperty(noisyCase, fc.integer({ min: 0, max: 1 }), async ({ board, catalogue }, mostExposed) => {
      const { exposed } = everyPurchase(board, catalogue, 'cost').unbeaten;
      const expected = exposed.find(([, amount]) => amount <= mostExposed)?.[0] ?? null;
      if (expected !== null && expected !== exposed[0]?.[0]) seen.bites += 1;
      const question = questionOf(kitOf(board, catalogue), { tiers: ['money'], partial: false, mostExposed });
      const outcome = await search(question);
      if (outcome.kind === 'stopped') throw new Error('nothing stops it');
      expect(outcome.kind === 'proven' ? outcome.values.get('money') : null).toBe(expected);
    }),
    trying(50),
  );
  expect(seen.bites).toBeGreaterThan(0);
});

import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { comparisonSheet } from '../../../../src/report/sheet/comparison-sheet.js';
import { comparisonHandout } from '../../../../src/report/words/comparison-handout.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';

const shop = catalogueOf([supplyOf('dory', 12, [bankOf(1, [settingOf(9, 300)])])]);
const asked = [new Map([[supplyId('dory'), 2]])];
const occasion = { shop: null, date: '28 November 2026' };

/** The words of the sheet on which two of three single outputs were asked for, with so much to spend. */
async function wordsFor(budget: number): Promise<string> {
  const pedals = ['echo', 'fuzz', 'drive'].map((name) => pedalOf(name, 50));
  const kit = kitOf(boardOf(pedals, { policy: policyOf({ budget: euros(budget) }) }), shop);
  const comparison = await compare(kit, { asked });
  return comparisonSheet(comparisonHandout({ kit, comparison }), occasion)
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}

it('a purchase that was asked for and cannot do it alone says what to buy beside it, and what all of it comes to', async () => {
  const enough = await wordsFor(40);
  expect(enough).toContain('(fails)');
  expect(enough).toContain('Together with 1 × dory it can: 36.00 EUR for all of it.');
});

it('whatever the budget', async () => {
  expect(await wordsFor(30)).toContain(
    'Together with 1 × dory it can: 36.00 EUR for all of it, 6.00 EUR over the budget.',
  );
});

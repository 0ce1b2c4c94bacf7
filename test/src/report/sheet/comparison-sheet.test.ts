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
  partOf,
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
  expect(enough).toContain('None exposed to noise, 3 supplies and no extra leads in use, no output free, the fullest');
  expect(enough).toContain('Together with 1 × dory it can: 36.00 EUR for all of it.');
});

it('whatever the budget', async () => {
  expect(await wordsFor(30)).toContain(
    'Together with 1 × dory it can: 36.00 EUR for all of it, 6.00 EUR over the budget.',
  );
});

it('takes the two sides of a sheet where those have room for all but the chart', async () => {
  const draws = [10, 20, 30, 10, 50, 250, 360, 90, 150, 10, 25, 40, 35, 60];
  const pedals = draws.map((draw, at) =>
    pedalOf(`Pedal number ${at}`, draw, draw < 60 && at < 5 ? { highGain: true } : { digital: draw > 80 }),
  );
  const box = (id: string, price: number, outputs: number, rating: number) =>
    supplyOf(id, price, [bankOf(outputs, [settingOf(9, rating)], { isolated: true })]);
  const fan = partOf('chain of five', 8, { kind: 'chain', tails: 5 });
  const sold = catalogueOf(
    [
      supplyOf('nine 200', 9.9, [bankOf(1, [settingOf(9, 200)])], { stock: 2 }),
      supplyOf('nine 500', 12.9, [bankOf(1, [settingOf(9, 500)])], { stock: 2 }),
      supplyOf('nine 1000', 17.5, [bankOf(1, [settingOf(9, 1000)])], { stock: 2 }),
      box('six', 79, 6, 150),
      box('ten', 189, 10, 450),
    ],
    [fan],
  );
  const kit = kitOf(boardOf(pedals, { policy: policyOf({ chains: 'allow' }) }), sold);
  const sheet = comparisonSheet(comparisonHandout({ kit, comparison: await compare(kit) }), occasion);
  expect(sheet.match(/id="option-\d+"/g)?.length).toBe(4);
  expect(sheet.match(/<div class="side">/g)).toHaveLength(2);
  expect(sheet).not.toContain('At a glance');
});

it('takes one side where that has room for all but the chart', async () => {
  const pedals = Array.from({ length: 18 }, (_, at) =>
    pedalOf(`Pedal ${at}`, 20 + at, at < 4 ? { highGain: true } : { digital: true }),
  );
  const six = supplyOf('six', 79, [bankOf(6, [settingOf(9, 150)], { isolated: true })]);
  const nine = supplyOf('nine', 10, [bankOf(1, [settingOf(9, 500)])]);
  const fan = partOf('chain of five', 8, { kind: 'chain', tails: 5 });
  const kit = kitOf(boardOf(pedals, { policy: policyOf({ chains: 'allow' }) }), catalogueOf([nine, six], [fan]));
  const sheet = comparisonSheet(comparisonHandout({ kit, comparison: await compare(kit) }), occasion);
  expect(sheet.match(/id="option-\d+"/g)).toHaveLength(2);
  expect(sheet.match(/<div class="side">/g)).toHaveLength(1);
  expect(sheet.includes('At a glance')).toBe(false);
});

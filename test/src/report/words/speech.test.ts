import { expect, test } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { spentText } from '../../../../src/report/words/headline.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { bankFrom, boardOf, catalogueOf, pedalOf, supplyOf } from '../samples.js';

const list = catalogueOf([supplyOf('quay', [bankFrom(1, 2)], { price: minorUnits(2090) })]);

test.each([
  ['shop', 'the shop'],
  ['Catalogue', 'the shop'],
  ['prices', 'the shop'],
  ['Table', 'the shop'],
  ['price list', 'the shop'],
  ['products_export_1', 'the shop'],
  ['stock-2026-11-30', 'the shop'],
  ['Shop 24', 'the shop'],
  ['24', 'the shop'],
  ['Marram Street shop', 'Marram Street shop'],
  ['tableland', 'tableland'],
])('what is called %s sells at %s', async (name, told) => {
  const kit = kitOf(boardOf([pedalOf('echo')]), { ...list, name });
  const answer = await choose(kit);
  if (answer.kind !== 'plan') throw new Error('there is no plan');
  expect(spentText(speechOf(kit), answer.wiring)).toBe(`Spend 20.90 EUR at ${told}.`);
});

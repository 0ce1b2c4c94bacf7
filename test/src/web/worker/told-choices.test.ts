import { expect, test } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import type { JudgedPlan } from '../../../../src/domain/judged-plan.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { toldChoices, wiredAsAnswered } from '../../../../src/web/worker/told-choices.js';
import { bankFrom, boardOf, catalogueOf, pedalOf, planOf, supplyOf } from '../../report/samples.js';

test('the choice that the answer says is plugged as the answer says, on the screen and on paper alike', async () => {
  const box = (id: string, price: number) => supplyOf(id, [bankFrom(1, 2)], { price: minorUnits(price) });
  const shop = catalogueOf([box('quay', 2000), supplyOf('nine', [bankFrom(1, 1)], { price: minorUnits(500) })]);
  const board = boardOf([pedalOf('echo'), pedalOf('drive')]);
  const kit = kitOf(board, shop);
  const comparison = await compare(kit);
  const wirings = comparison.options.flatMap((option) => (option.kind === 'plan' ? [option.wiring] : []));
  const quay = wirings.find(({ buy }) => buy.supplies.some(({ id }) => id === 'quay'));
  if (quay === undefined) throw new Error('the box is no choice');
  const crossed = quay.feeds.map((feed) => ({ ...feed, outputs: feed.outputs.map((output) => 3 - output) }));
  const answer = planOf(board, shop, crossed);

  const found = wiredAsAnswered(kit, comparison, answer);
  const now = found.options.flatMap((option): readonly JudgedPlan[] => (option.kind === 'plan' ? [option.wiring] : []));
  expect(now).toEqual(wirings.map((wiring) => (wiring === quay ? answer : wiring)));
  const rows = toldChoices(kit, found, answer).choices.find(({ isAnswer }) => isAnswer)?.plan.rows;
  expect(rows?.map(({ outputs, pedal }) => `${pedal} ${outputs}`)).toEqual(['drive 1', 'echo 2']);
});

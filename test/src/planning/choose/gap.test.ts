import { kitOf } from '../../../../src/domain/kit.js';
import { expect, test } from 'vitest';

import { choose } from '../../../../src/planning/choose/choose.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  currentTotal,
  euros,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';

test('the gap of a plan that is not proven is told in money, not in the steps of the search', async () => {
  // Two pedals of 600 mA. A unit for 50 gives 1000 mA in all, so 1.2 of them would do if they could be cut: 60. Whole ones
  // cost 100; the supply for 70 feeds both.
  const outputs = bankOf(2, [settingOf(9, 600)]);
  const board = boardOf([pedalOf('one', 600), pedalOf('two', 600)]);
  const catalogue = catalogueOf([
    supplyOf('small', 50, [outputs], { total: currentTotal(1000) }),
    supplyOf('large', 70, [outputs], { total: currentTotal(1200) }),
  ]);
  const bounds: (number | null)[] = [];
  for (let most = 0; most < 8; most += 1) {
    let asked = 0;
    const answer = await choose(kitOf(board, catalogue), { remainingMs: () => ((asked += 1) > most ? 0 : 60_000) });
    if (answer.kind !== 'plan' || answer.gap === null) continue;
    expect(answer.gap.value).toBe(answer.gap.tier === 'cost' ? 7000 : 1);
    if (answer.gap.tier === 'cost') bounds.push(answer.gap.bound);
  }
  expect(bounds.length).toBeGreaterThan(0);
  for (const bound of bounds) expect(bound ?? 0).toBeLessThan(7000);
});

test('where time runs out and no quick plan keeps the budget, a partial plan leaves every pedal out', async () => {
  const board = boardOf([pedalOf('one', 100)], { policy: policyOf({ budget: euros(1) }) });
  const catalogue = catalogueOf([supplyOf('dear', 50, [bankOf(1, [settingOf(9, 100)])])]);
  const answer = await choose(kitOf(board, catalogue), { partial: true, remainingMs: () => 0 });
  expect(answer).toMatchObject({ kind: 'plan', wiring: { feeds: [], unpowered: ['one'] } });
});

import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { tiersOf } from '../../../../src/domain/aim.js';
import type { Policy } from '../../../../src/domain/board.js';
import { ownBatteryOf } from '../../../../src/domain/own-battery.js';
import { microampHours, pedalId } from '../../../../src/domain/quantities.js';
import { compactSearch } from '../../../../bench/rival/formulation/compact-search.js';
import type { Progress } from '../../../../src/formulation/optimiser.js';
import { questionOf } from '../../../../src/formulation/question.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  factor,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { sharedEngines } from '../../../support/engines.js';
import { indivisible } from '../../../support/indivisible.js';

const engines = sharedEngines();
const tiers = tiersOf('cost', policyOf()).slice(1);
const nine = [settingOf(9, 100)];

/** The least cost in euros, bricks, parts and pedals off their volts; or that it is impossible. */
async function best(
  board: ReturnType<typeof boardOf>,
  catalogue: ReturnType<typeof catalogueOf>,
  onProgress?: (progress: Progress) => void,
) {
  const question = questionOf(kitOf(board, catalogue), { tiers, partial: false });
  const outcome = await compactSearch(question, { engines, remainingMs: () => Infinity, onProgress });
  if (outcome.kind === 'stopped') throw new Error('it stopped without any reason to');
  return outcome.kind === 'impossible' ? 'impossible' : [...outcome.values.values()];
}

const pedalsOf = (...draws: readonly number[]) => draws.map((draw, index) => pedalOf(`pedal-${index}`, draw));

it.each(indivisible)(
  'what is pooled at first is told apart where it must be: $what',
  async ({ board, catalogue, best: expected }) => {
    expect(await best(board, catalogue)).toEqual(expected);
  },
);

describe('a search', () => {
  const single = supplyOf('single', 10, [bankOf(1, nine)], { stock: 1 });

  it('finds out that there is nothing', async () => {
    expect(await best(boardOf(pedalsOf(50, 60)), catalogueOf([single]))).toBe('impossible');
  });

  it('says how far it has come, and never more than is true', async () => {
    const told: Progress[] = [];
    const supply = supplyOf('single', 10, [bankOf(1, nine)]);
    const found = await best(boardOf(pedalsOf(50, 60)), catalogueOf([supply]), (progress) => told.push(progress));
    expect(found).toEqual([2000, 2, 0, 0]);
    expect(told.length).toBeGreaterThan(0);
    for (const { tier, value, bound } of told) {
      expect(tier).toBe('cost');
      if (value !== null) expect(value).toBeGreaterThanOrEqual(2000);
      if (bound !== null) expect(bound).toBeLessThanOrEqual(2000);
    }
  });
});

it('refuses a board with a pedal that may run on batteries, of which the program knows nothing', async () => {
  const wah = pedalOf('wah', 5, { battery: { type: 'block', count: 1, of: pedalId('wah') } });
  const block = partOf('block', 3, {
    kind: 'battery',
    type: 'block',
    millivolts: volts(9),
    microampHours: microampHours(500_000),
  });
  const set = ownBatteryOf(wah, block);
  if (set === null) throw new RangeError('a battery that the pedal takes');
  const board = (batteries: Policy['batteries']) =>
    boardOf([wah], {
      policy: policyOf({ batteries }),
      gear: { supplies: [set], parts: [] },
      owned: { supplies: new Map([[set.id, 1]]), parts: new Map() },
    });
  const shop = catalogueOf([supplyOf('single', 10, [bankOf(1, nine)])], [block]);
  await expect(best(board({ change: factor(8), pay: factor(100) }), shop)).rejects.toThrow(RangeError);
  // Where the policy allows none, there is nothing to refuse.
  expect(await best(board(null), shop)).toEqual([1000, 1, 0, 0]);
});

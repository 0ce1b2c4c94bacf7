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
  currentTotal,
  factor,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { sharedEngines } from '../../../support/engines.js';

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

describe('what is pooled at first is told apart where it must be', () => {
  const pairLead = partOf('pair', 1, { kind: 'chain', tails: 2 });
  const single = supplyOf('single', 10, [bankOf(1, nine)]);

  it('chains that together have the room, but not one by one', async () => {
    // Two chains of 100 mA would do for 200 mA in all, were it not for the three of 60 mA.
    const found = await best(boardOf(pedalsOf(60, 60, 60, 20)), catalogueOf([single], [pairLead]));
    expect(found).toEqual([3100, 3, 1, 0]);
  });

  it('chains on which no two may start that are slow', async () => {
    const start = { startup: milliamps(70) };
    const slow = ['a', 'b'].map((id) => pedalOf(id, 40, start));
    const found = await best(boardOf([...slow, ...pedalsOf(30, 25)]), catalogueOf([single], [pairLead]));
    // 70 + 30 and 70 + 25; two slow ones together would take 140.
    expect(found).toEqual([2200, 2, 2, 0]);
    const slower = slow.map((pedal) => ({ ...pedal, startup: milliamps(71) }));
    expect(await best(boardOf([...slower, ...pedalsOf(30, 25)]), catalogueOf([single], [pairLead]))).toEqual([
      3100, 3, 1, 0,
    ]);
  });

  it('units whose totals hold together, but not one by one', async () => {
    const box = supplyOf('box', 10, [bankOf(2, nine)], { total: currentTotal(100) });
    // Three of 60 mA and one of 20 mA: 200 mA for two units, but no two of the three fit on one.
    expect(await best(boardOf(pedalsOf(60, 60, 60, 20)), catalogueOf([box]))).toEqual([3000, 3, 0, 0]);
    expect(await best(boardOf(pedalsOf(60, 60, 40, 40)), catalogueOf([box]))).toEqual([2000, 2, 0, 0]);
  });

  it('units that cannot be cut in two for a join', async () => {
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const three = supplyOf('three', 10, [bankOf(3, nine, { joins: ['series'] })]);
    const high = ['a', 'b', 'c'].map((id) => pedalOf(id, 50, { accepts: listed(18) }));
    expect(await best(boardOf(high), catalogueOf([three], [stack]))).toEqual([5700, 3, 3, 0]);
  });

  it('switches that are set for a whole unit', async () => {
    const both = [settingOf(9, 100), settingOf(12, 100)];
    const together = supplyOf('together', 10, [bankOf(2, both, { switching: 'together' })]);
    const twelve = ['a', 'b', 'c'].map((id) => pedalOf(id, 50, { accepts: listed(12) }));
    // Six outputs on three units, but three pedals at 9 V and three at 12 V take two units each.
    expect(await best(boardOf([...pedalsOf(50, 50, 50), ...twelve]), catalogueOf([together]))).toEqual([4000, 4, 0, 0]);
  });
});

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

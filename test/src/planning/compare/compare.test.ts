import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { ownAdapterOf } from '../../../../src/domain/own-adapter.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { compare, type BoughtUnits, type CompareOptions } from '../../../../src/planning/compare/compare.js';
import type { FailedOption, Option, PlannedOption } from '../../../../src/planning/compare/comparison.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../../support/builders.js';

const sideBySide = (board: Board, catalogue: Catalogue, options: CompareOptions = {}) =>
  compare(kitOf(board, catalogue), { remainingMs: () => Infinity, ...options });

const buying = (units: Readonly<Record<string, number>>): BoughtUnits =>
  new Map(Object.entries(units).map(([id, count]) => [supplyId(id), count]));

const nine = (milliampsEach: number) => [settingOf(9, milliampsEach)];

/** A digital pedal and two high-gain ones. */
const trio = boardOf([
  pedalOf('echo', 200, { digital: true, startup: milliamps(240) }),
  pedalOf('fuzz', 5, { highGain: true }),
  pedalOf('drive', 10, { highGain: true }),
]);

const shop = catalogueOf([
  // All on one ground: two exposed pedals.
  supplyOf('raft', 30, [bankOf(4, nine(300), { isolated: false })]),
  supplyOf('quay', 90, [bankOf(4, nine(300))]),
  supplyOf('pier', 95, [bankOf(6, nine(300))], { stock: 1 }),
  supplyOf('dory', 12, [bankOf(1, nine(250))]),
]);

const planned = (option: Option | undefined): PlannedOption => {
  if (option?.kind !== 'plan') throw new Error('the option gives no plan');
  return option;
};
const failed = (option: Option | undefined): FailedOption => {
  if (option?.kind !== 'fails') throw new Error('the option gives a plan');
  return option;
};
const idsOf = ({ supplies }: Option) => supplies.map(({ id, units }) => `${units} ${id}`).join(' + ');

describe('the best purchases', () => {
  it('come in order, none of them with more than it needs', async () => {
    const { options, best } = await sideBySide(trio, shop, { best: 9 });
    // 36; 30 + 12 with the echo apart, 30 + 30 likewise; 30 + 2 × 20 for noise; 90; 95.
    expect(options.map(idsOf)).toEqual(['3 dory', '1 raft + 1 dory', '2 raft', '1 raft', '1 quay', '1 pier']);
    expect(options.map((option) => planned(option).score.money)).toEqual([36, 42, 60, 30, 90, 95].map(euros));
    expect(best).toEqual({ wanted: 9, end: 'all' });
  });

  it('are as many as are asked for', async () => {
    const { options, best } = await sideBySide(trio, shop, { best: 2 });
    expect(options.map(({ rank }) => rank)).toEqual([1, 2]);
    expect(best).toEqual({ wanted: 2, end: 'enough' });
  });

  it('are just one where nothing has to be bought', async () => {
    const owner = boardOf(trio.pedals, { owned: { supplies: new Map([[supplyId('quay'), 1]]), parts: new Map() } });
    const { options, best } = await sideBySide(owner, shop);
    expect(options).toHaveLength(1);
    expect(planned(options[0])).toMatchObject({ supplies: [], preference: { kind: 'best' }, score: { money: 0 } });
    expect(best.end).toBe('all');
  });

  it('follow the aim', async () => {
    const quiet = await sideBySide(trio, shop, { aim: 'quiet', best: 2 });
    expect(quiet.options.map(idsOf)).toEqual(['3 dory', '1 raft + 1 dory']);
    const bricks = await sideBySide(trio, shop, { aim: 'bricks', best: 2 });
    expect(bricks.options.map(idsOf)).toEqual(['1 raft', '1 quay']);
  });
});

describe('figures of an option', () => {
  it('count sockets, spare outputs and the output nearest to its limit', async () => {
    const { options } = await sideBySide(trio, shop, { best: 9 });
    const dories = planned(options[0]).figures;
    expect(dories).toMatchObject({
      sockets: 3,
      spareOutputs: 0,
      tightest: { moment: 'startup', place: { supply: 'dory' } },
    });
    expect(dories.tightest?.numbers.planned).toEqual({ numerator: 240_000n, denominator: 1n });
    expect(planned(options[4]).figures).toMatchObject({ sockets: 1, spareOutputs: 1 });
  });

  it('name no tightest output where every pedal runs on its own adapter', async () => {
    const amp = pedalOf('amp', 50);
    const own = ownAdapterOf(amp, null);
    const pedal = { ...amp, adapter: { supply: own.id, only: true } };
    const board = boardOf([pedal], {
      gear: { supplies: [own], parts: [] },
      owned: { supplies: new Map([[own.id, 1]]), parts: new Map() },
    });
    const { options } = await sideBySide(board, shop);
    expect(options).toHaveLength(1);
    expect(planned(options[0]).figures).toEqual({ sockets: 1, spareOutputs: 0, tightest: null });
  });
});

describe('what it takes to prefer an option', () => {
  it('is told of each', async () => {
    const { options } = await sideBySide(trio, shop, { best: 9 });
    expect(options.map((option) => planned(option).preference)).toEqual([
      { kind: 'best' },
      { kind: 'price', at: euros(36), below: euros(6) },
      { kind: 'price', at: euros(36), below: euros(24) },
      // Even for nothing, 40 of noise is more than 36.
      { kind: 'never', tier: 'cost', behind: euros(34) },
      { kind: 'price', at: euros(36), below: euros(54) },
      { kind: 'price', at: euros(36), below: euros(59) },
    ]);
  });
});

describe('an option that is asked for', () => {
  it('is the row that is there already', async () => {
    const { options } = await sideBySide(trio, shop, { best: 5, asked: [buying({ quay: 1 })] });
    expect(options.map(({ rank }) => rank)).toEqual([1, 2, 3, 4, 5]);
    expect(options.map(({ asked }) => asked)).toEqual([false, false, false, false, true]);
  });

  it('stands in the order of the aim, and is paid for whether it is needed or not', async () => {
    const { options } = await sideBySide(trio, shop, { best: 1, asked: [buying({ quay: 1, dory: 2 })] });
    const option = planned(options[1]);
    expect(option.score.money).toBe(euros(114));
    expect(option.idle).toEqual([{ id: 'dory', units: 2, price: euros(12) }]);
    // Three of quay's are in use; one is left there, and one on each dory.
    expect(option.figures).toMatchObject({ sockets: 1, spareOutputs: 3 });
  });

  it('uses what is paid for where it helps', async () => {
    const { options } = await sideBySide(trio, shop, { best: 1, asked: [buying({ raft: 1, dory: 1 })] });
    expect(planned(options[1])).toMatchObject({ idle: [], score: { exposed: 0, bricks: 2, money: euros(42) } });
  });

  it('buys leads as they are needed', async () => {
    const jack = boardOf([pedalOf('organ', 20, { inlet: 'jack-3.5' })]);
    const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' });
    const { options } = await sideBySide(jack, catalogueOf(shop.supplies, [mini]), {
      best: 1,
      asked: [buying({ pier: 1 })],
    });
    expect(planned(options[1])).toMatchObject({
      score: { money: euros(100), parts: 1 },
      wiring: { buy: { parts: [{ id: 'mini' }] } },
    });
  });

  it('comes last with its reasons where it cannot power the board', async () => {
    const asked = [buying({ dory: 2 }), buying({ pier: 2 })];
    const { options, isProven } = await sideBySide(trio, shop, { best: 1, asked });
    expect(isProven).toBe(true);
    expect(options.map(({ kind }) => kind)).toEqual(['plan', 'fails', 'fails']);
    expect(failed(options[1])).toMatchObject({ price: euros(24), reasons: [{ kind: 'together', smallest: true }] });
    expect(failed(options[2]).reasons).toEqual([
      { kind: 'stock', supply: 'pier', units: 2, inStock: 1, message: 'this takes 2 × pier, and the shop has 1' },
    ]);
  });

  it('is judged whole, whatever the budget, and told how far it is over', async () => {
    const poor = boardOf(trio.pedals, { policy: policyOf({ budget: euros(92) }) });
    const asked = [buying({ quay: 1 }), buying({ pier: 1 }), buying({ quay: 1, dory: 1 })];
    const { options } = await sideBySide(poor, shop, { best: 1, asked });
    expect(options.map(idsOf)).toEqual(['3 dory', '1 quay', '1 pier', '1 quay + 1 dory']);
    expect(options.map((option) => planned(option).overBudget)).toEqual([0, 0, 3, 10].map(euros));
  });

  it('must be for sale', async () => {
    await expect(sideBySide(trio, shop, { asked: [buying({ ghost: 1 })] })).rejects.toThrow(RangeError);
  });
});

describe('choices that differ in kind', () => {
  it('are the best, the quietest and the one with the fewest supplies, each with what it is best at', async () => {
    const { options, best, unbeaten, listing } = await sideBySide(trio, shop);
    // Nothing beats 42 with two supplies, or 90 with one, where nobody may hum.
    expect(options.map(idsOf)).toEqual(['3 dory', '1 raft + 1 dory', '1 raft', '1 quay']);
    expect(options.map((option) => planned(option).merits)).toEqual([
      ['aim', 'quiet'],
      ['between'],
      ['bricks', 'money'],
      ['between'],
    ]);
    expect(options.map((option) => planned(option).wiring.exposures.length)).toEqual([0, 0, 2, 0]);
    expect(best).toEqual({ wanted: 4, end: 'all' });
    expect({ listing, complete: unbeaten.complete }).toEqual({ listing: 'kinds', complete: true });
  });

  it('are told how far they are over the budget, and which is the best within it', async () => {
    const poor = boardOf(trio.pedals, { policy: policyOf({ budget: euros(32) }) });
    const { options } = await sideBySide(poor, shop);
    expect(options.map(idsOf)).toEqual(['3 dory', '1 raft + 1 dory', '1 raft', '1 quay']);
    expect(options.map((option) => planned(option).overBudget)).toEqual([4, 10, 0, 58].map(euros));
    expect(planned(options[2]).merits).toEqual(['bricks', 'money', 'budget']);
  });
});

describe('what money buys', () => {
  it('is every choice that nothing beats, and options know whether they are among them', async () => {
    const { tradeOffs, options } = await sideBySide(trio, shop, { best: 9 });
    const curve = tradeOffs.map(({ against, points, complete }) => ({
      against,
      complete,
      points: points.map(({ money, amount }) => [money, amount]),
    }));
    expect(curve).toEqual([
      {
        against: 'exposed',
        complete: true,
        points: [
          [euros(30), 2],
          [euros(36), 0],
        ],
      },
      { against: 'bricks', complete: true, points: [[euros(30), 1]] },
    ]);
    expect(options.map((option) => planned(option).unbeaten)).toEqual([
      { exposed: true, bricks: false },
      { exposed: false, bricks: false },
      { exposed: false, bricks: false },
      { exposed: true, bricks: true },
      { exposed: false, bricks: false },
      { exposed: false, bricks: false },
    ]);
  });
});

describe('what was asked for and cannot do it alone', () => {
  it('comes with the best to buy beside it, and the price of all of it', async () => {
    // A third dory for 12 keeps all apart; a raft for 30 would do, too.
    const { options } = await sideBySide(trio, shop, { asked: [buying({ dory: 2 })] });
    expect(failed(options.find(({ rank }) => rank === null)).beside).toMatchObject({
      supplies: [{ id: 'dory', units: 1 }],
      parts: [],
      price: euros(36),
      isProven: true,
    });
  });

  it('asks the shop for no more than it has left, and is judged whatever the budget', async () => {
    const few = { ...shop, supplies: shop.supplies.map((each) => (each.id === 'dory' ? { ...each, stock: 2 } : each)) };
    const poor = { ...trio, policy: policyOf({ budget: euros(20) }) };
    const { options } = await sideBySide(poor, few, { asked: [buying({ dory: 2 })] });
    // The echo and one more on a dory each, and two on the raft at most: 24 + 30.
    expect(failed(options.find(({ rank }) => rank === null)).beside).toMatchObject({
      supplies: [{ id: 'raft', units: 1 }],
      price: euros(54),
    });
  });

  it('comes with nothing where nothing helps, or the shop has too few of it', async () => {
    const hungry = boardOf([pedalOf('furnace', 5000)]);
    const none = await sideBySide(hungry, shop, { asked: [buying({ quay: 1 })] });
    const short = await sideBySide(trio, shop, { asked: [buying({ pier: 2 })] });
    for (const { options } of [none, short])
      expect(failed(options.find(({ kind }) => kind === 'fails')).beside).toBeNull();
  });
});

describe('a comparison that ends early', () => {
  it('says so, and gives no more than it knows', async () => {
    const comparison = await sideBySide(trio, shop, { remainingMs: () => 0, asked: [buying({ quay: 1 })] });
    expect(comparison.isProven).toBe(false);
    expect(comparison.best.end).toBe('stopped');
    for (const option of comparison.options)
      if (option.kind === 'plan') expect(option.preference).toEqual({ kind: 'unknown' });
  });
});

describe('a board that nothing can power', () => {
  it('has reasons and no options but those that were asked for', async () => {
    const hungry = boardOf([pedalOf('furnace', 5000)]);
    const comparison = await sideBySide(hungry, shop, { asked: [buying({ quay: 1 })] });
    expect(comparison).toMatchObject({ isProven: true, tradeOffs: [], best: { end: 'all' } });
    expect(comparison.reasons).toMatchObject([{ kind: 'pedal', pedal: 'furnace' }]);
    expect(comparison.options).toMatchObject([{ kind: 'fails', reasons: [{ kind: 'pedal' }] }]);
  });
});

it('at least one purchase must be sought', async () => {
  await expect(sideBySide(trio, shop, { best: 0 })).rejects.toThrow(RangeError);
});

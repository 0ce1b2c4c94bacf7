import { describe, expect, it } from 'vitest';

import type { ChoosingAim } from '../../../../src/domain/aim.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import type { Wiring } from '../../../../src/domain/plan.js';
import type { ChooseOptions } from '../../../../src/planning/choose/choose.js';
import { sharedChoose } from '../../../support/choosing.js';
import {
  bankOf,
  euros,
  listed,
  partOf,
  pedalOf,
  powerTotal,
  scoreWith,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { adapter, box, caseOf, fan, flip, one, pairWith, type Given } from '../given.js';

const choose = sharedChoose();

/** The plan for a case. @throws Error when there is none, or when it is not proven best. */
async function planFor(given: Given, options: ChooseOptions = {}): Promise<Wiring> {
  const { board, catalogue } = caseOf(given);
  const answer = await choose(board, catalogue, options);
  if (answer.kind !== 'plan' || answer.gap !== null) throw new Error(`no proven plan: ${JSON.stringify(answer)}`);
  return answer.wiring;
}

/** What is bought, as "2 × box". */
async function bought(given: Given, options: ChooseOptions = {}): Promise<readonly string[]> {
  const { buy } = await planFor(given, options);
  return [...buy.supplies, ...buy.parts].map(({ id, units }) => `${units} × ${id}`);
}

const nine = [settingOf(9, 100)];
const shelf = (id: string, price: number, outputs: number, more: Parameters<typeof bankOf>[2] = {}) =>
  supplyOf(id, price, [bankOf(outputs, nine, more)]);

describe('a plan', () => {
  it('says for every pedal where it is plugged in and through what', async () => {
    const plan = await planFor({
      pedals: [
        pedalOf('echo', 60, { prefers: volts(18), accepts: listed(9, 18) }),
        pedalOf('fuzz', 5, { polarity: 'centre-positive', inlet: 'jack-3.5' }),
      ],
      supplies: [supplyOf('pair', 20, [bankOf(1, nine), bankOf(1, [settingOf(9, 100), settingOf(18, 60)])])],
      parts: [flip, adapter('mini', 'barrel-2.1', 'jack-3.5')],
    });
    expect(plan.feeds).toEqual([
      {
        pedal: 'echo',
        supply: 'pair',
        unit: 1,
        outputs: [2],
        settings: [18000],
        polarity: 'centre-negative',
        join: null,
        chain: null,
        adapters: [],
      },
      {
        pedal: 'fuzz',
        supply: 'pair',
        unit: 1,
        outputs: [1],
        settings: [9000],
        polarity: 'centre-positive',
        join: null,
        chain: null,
        adapters: ['flip', 'mini'],
      },
    ]);
    expect(plan.score).toEqual(scoreWith({ money: euros(26), bricks: 1, parts: 2 }));
  });

  it('buys as many units of one model as it takes, numbered from 1', async () => {
    const plan = await planFor({ pedals: [...pairWith(), pedalOf('three', 30)], supplies: [box(1)] });
    expect(plan.buy.supplies).toEqual([{ id: 'box', units: 3, price: 1000 }]);
    expect(plan.feeds.map(({ unit }) => unit)).toEqual([1, 2, 3]);
  });

  it('takes owned units and leads first, and buys the rest', async () => {
    const positive = pairWith().map((pedal): Pedal => ({ ...pedal, polarity: 'centre-positive' }));
    const given = { pedals: positive, supplies: [box(1)], parts: [flip] };
    expect(await bought(given)).toEqual(['2 × box', '2 × flip']);
    expect(await bought({ ...given, owned: { box: 1, flip: 1 } })).toEqual(['1 × box', '1 × flip']);
    expect(await bought({ ...given, owned: { box: 2, flip: 2 } })).toEqual([]);
  });

  it('uses gear that no catalogue lists, as far as it is owned', async () => {
    const gear = { supplies: [{ ...box(1), price: null, stock: 0 }] };
    const plan = await planFor({ pedals: pairWith(), supplies: [shelf('shop', 30, 1)], gear, owned: { box: 1 } });
    expect(plan.buy.supplies).toEqual([{ id: 'shop', units: 1, price: 3000 }]);
    expect(plan.feeds.map(({ supply }) => supply).sort()).toEqual(['box', 'shop']);
  });

  it('exposes a high-gain pedal on the ground of another that is digital, and none by itself', async () => {
    const both = { digital: true, highGain: true };
    const common = { supplies: [box(2, { isolated: false })], policy: { budget: euros(10) } };
    expect((await planFor({ ...common, pedals: pairWith(both) })).exposed).toEqual([]);
    expect(
      (await planFor({ ...common, pedals: [pedalOf('echo', 40, both), pedalOf('amp', 40, both)] })).exposed,
    ).toEqual(['echo', 'amp']);
  });
});

describe('a plan is proven', () => {
  it('although totals let pooled units carry what no single one can', async () => {
    // At 9 V, 2.16 W are 240 mA: no unit feeds the first pedal, four of them have the room for all.
    const total = powerTotal(2.16);
    const given: Given = {
      pedals: [pedalOf('big', 300), ...pairWith(), pedalOf('positive', 40, { ground: 'positive' })],
      supplies: [supplyOf('box', 20, [bankOf(1, [settingOf(9, 300)], { isolated: false })], { total })],
    };
    for (const aim of ['cost', 'bricks', 'quiet'] as const) {
      const plan = await planFor(given, { aim, partial: true });
      expect(plan.unpowered).toEqual(['big']);
      expect(plan.score).toMatchObject({ money: 6000, bricks: 3 });
    }
  });

  it('although a chain hangs beside the digital pedal that exposes it', async () => {
    const given: Given = {
      pedals: [
        pedalOf('echo', 40, { digital: true, alone: true }),
        pedalOf('boost', 40),
        pedalOf('fuzz', 40, { highGain: true }),
      ],
      supplies: [box(2, { isolated: false }), shelf('single', 10, 1)],
      parts: [fan],
      policy: { noisePrice: euros(20) },
    };
    // One box, one chain, the fuzz exposed: 11 and 20 for the noise. Two boxes expose nobody: 20.
    expect((await planFor(given, { aim: 'bricks' })).score).toMatchObject({ bricks: 1, money: 1100, exposed: 1 });
    expect((await planFor(given, { aim: 'cost' })).score).toMatchObject({ bricks: 2, money: 2000, exposed: 0 });
  });

  it('although two pedals that would expose each other must be kept apart', async () => {
    const both = { digital: true, highGain: true };
    const given: Given = {
      pedals: [pedalOf('echo', 40, both), pedalOf('amp', 40, both), ...pairWith()],
      supplies: [box(2, { isolated: false })],
    };
    const plan = await planFor(given);
    expect(plan.score).toMatchObject({ bricks: 2, money: 2000, exposed: 0 });
    expect(plan.feeds.slice(0, 2).map(({ unit }) => unit)).toEqual([1, 2]);
  });
});

describe('the three aims', () => {
  const pedals = [
    pedalOf('echo', 40, { digital: true }),
    ...['first', 'second', 'third'].map((id) => pedalOf(id, 40, { highGain: true })),
  ];
  const given: Given = {
    pedals,
    supplies: [shelf('two', 10, 2, { isolated: false }), shelf('four', 40, 4, { isolated: false })],
    policy: { noisePrice: euros(5) },
  };

  // Two of `two` expose one pedal: 20 + 5. One of `four` exposes three: 40 + 15. Three of `two` expose none: 30.
  it.each<[ChoosingAim, readonly string[], number, number]>([
    ['cost', ['2 × two'], 20, 1],
    ['bricks', ['1 × four'], 40, 3],
    ['quiet', ['3 × two'], 30, 0],
  ])('lead to three purchases on one board: %s', async (aim, purchase, money, exposed) => {
    expect(await bought(given, { aim })).toEqual(purchase);
    expect((await planFor(given, { aim })).score).toMatchObject({ money: money * 100, exposed });
  });
});

describe('ties are broken', () => {
  it.each<[string, Given, readonly string[]]>([
    [
      'by bricks where the cost is equal',
      { pedals: pairWith(), supplies: [shelf('single', 10, 1), shelf('double', 20, 2)] },
      ['1 × double'],
    ],
    [
      'by noise that is worth as much as money',
      // Two singles cost 30; one double 10 and 20 for the fuzz beside the echo.
      {
        pedals: [pedalOf('echo', 40, { digital: true }), pedalOf('fuzz', 40, { highGain: true })],
        supplies: [shelf('single', 15, 1), shelf('double', 10, 2, { isolated: false })],
        policy: { noisePrice: euros(20), bricks: 2 },
      },
      ['2 × double'],
    ],
    [
      'by leads where cost and bricks are equal',
      { pedals: pairWith(), supplies: [shelf('single', 9, 1), shelf('double', 10, 2)], parts: [fan] },
      ['1 × double'],
    ],
    [
      'by preferred volts where all else is equal',
      {
        pedals: one(40, { accepts: listed(9, 18), prefers: volts(18) }),
        supplies: [shelf('low', 10, 1), supplyOf('high', 10, [bankOf(1, [settingOf(18, 100)])])],
      },
      ['1 × high'],
    ],
    [
      'not by preferred volts that cost a cent more',
      {
        pedals: one(40, { accepts: listed(9, 18), prefers: volts(18) }),
        supplies: [shelf('low', 10, 1), supplyOf('high', 10.01, [bankOf(1, [settingOf(18, 100)])])],
      },
      ['1 × low'],
    ],
  ])('under the aim of cost: %s', async (_, given, expected) => {
    expect(await bought(given)).toEqual(expected);
  });

  it('under the aim of bricks by cost, noise included', async () => {
    const given: Given = {
      pedals: [pedalOf('echo', 40, { digital: true }), pedalOf('fuzz', 40, { highGain: true })],
      supplies: [shelf('noisy', 10, 2, { isolated: false }), shelf('clean', 29.99, 2)],
      policy: { noisePrice: euros(20) },
    };
    expect(await bought(given, { aim: 'bricks' })).toEqual(['1 × clean']);
    expect(await bought({ ...given, policy: { noisePrice: euros(19.98) } }, { aim: 'bricks' })).toEqual(['1 × noisy']);
  });

  it('under the aim of quiet by money, then by bricks, then by leads', async () => {
    const given: Given = { pedals: pairWith(), supplies: [shelf('single', 10, 1), shelf('double', 20, 2)] };
    expect(await bought(given, { aim: 'quiet' })).toEqual(['1 × double']);
    expect(await bought({ ...given, parts: [fan] }, { aim: 'quiet' })).toEqual(['1 × single', '1 × fan']);
    const dearer = { ...fan, price: euros(10) };
    expect(await bought({ ...given, parts: [dearer] }, { aim: 'quiet' })).toEqual(['1 × double']);
  });
});

describe('a partial plan', () => {
  const partial = { partial: true };

  it('leaves as few pedals unpowered as can be, whatever that costs', async () => {
    const given: Given = {
      pedals: [...pairWith(), pedalOf('three', 90)],
      supplies: [box(1, {}, { stock: 1 }), { ...shelf('dear', 500, 1), stock: 1 }],
    };
    const plan = await planFor(given, partial);
    expect(plan.score).toMatchObject({ unpowered: 1, money: 51_000 });
    expect(plan.unpowered).toHaveLength(1);
    expect(plan.feeds).toHaveLength(2);
  });

  it('is the whole plan where there is one', async () => {
    const given: Given = { pedals: pairWith(), supplies: [box(1)] };
    expect((await planFor(given, partial)).score).toEqual((await planFor(given)).score);
  });

  it('powers nothing, and buys nothing, where nothing can be powered', async () => {
    const plan = await planFor({ pedals: pairWith(), supplies: [] }, partial);
    expect(plan).toMatchObject({ feeds: [], unpowered: ['one', 'two'], buy: { supplies: [], parts: [] } });
    expect(plan.score).toMatchObject({ unpowered: 2, money: 0, bricks: 0 });
  });

  it('counts no unpowered pedal as off its preferred volts, or as exposed', async () => {
    const echo = pedalOf('echo', 400, { digital: true, prefers: volts(9) });
    const plan = await planFor(
      { pedals: [echo, ...one(40, { highGain: true })], supplies: [box(2, { isolated: false })] },
      partial,
    );
    expect(plan.unpowered).toEqual(['echo']);
    expect(plan.score).toMatchObject({ unpowered: 1, exposed: 0, offPreferred: 0 });
  });

  it('is no plan unless it is asked for', async () => {
    const { board, catalogue } = caseOf({ pedals: [...one(40), pedalOf('hungry', 400)], supplies: [box(1)] });
    expect((await choose(board, catalogue)).kind).toBe('impossible');
    const answer = await choose(board, catalogue, partial);
    expect(answer).toMatchObject({ kind: 'plan', wiring: { unpowered: ['hungry'] } });
    expect(answer.kind === 'plan' && answer.reasons.map((reason) => reason.kind)).toEqual(['pedal']);
  });

  it('keeps the limits', async () => {
    const given: Given = { pedals: pairWith(), supplies: [box(1)], policy: { budget: euros(19) } };
    expect((await planFor(given, partial)).score).toMatchObject({ unpowered: 1, money: 1000 });
  });

  it('chooses the cheapest pedals to leave out', async () => {
    const pedals = [pedalOf('low', 40), pedalOf('high', 40, { accepts: listed(18) })];
    const supplies = [box(1), supplyOf('tall', 15, [bankOf(1, [settingOf(18, 100)])])];
    const plan = await planFor({ pedals, supplies, policy: { bricks: 1 } }, partial);
    expect(plan.unpowered).toEqual(['high']);
  });
});

describe('a chain', () => {
  it('shares one lead, and says so for every pedal', async () => {
    const plan = await planFor({ pedals: pairWith(), supplies: [box(1)], parts: [fan] });
    expect(plan.feeds.map(({ outputs, chain, unit }) => [unit, ...outputs, chain])).toEqual([
      [1, 1, 'fan'],
      [1, 1, 'fan'],
    ]);
    expect(plan.buy.parts).toEqual([{ id: 'fan', units: 1, price: 100 }]);
  });

  it('takes the cheapest lead with tails enough', async () => {
    const pedals = [...pairWith().map((pedal) => ({ ...pedal, draw: pedalOf('x', 20).draw })), pedalOf('three', 20)];
    const parts = [
      partOf('two-way', 1, { kind: 'chain', tails: 2 }),
      partOf('five-way', 3, { kind: 'chain', tails: 5 }),
      partOf('four-way', 2.5, { kind: 'chain', tails: 4 }),
    ];
    expect(await bought({ pedals, supplies: [box(1)], parts })).toEqual(['1 × box', '1 × four-way']);
  });
});

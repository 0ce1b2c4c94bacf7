import { describe, expect, it } from 'vitest';

import type { Wiring } from '../../../../src/domain/plan.js';
import type { ChooseOptions } from '../../../../src/planning/choose/choose.js';
import { sharedChoose } from '../../../support/choosing.js';
import {
  bankOf,
  euros,
  listed,
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

describe('ties are broken', () => {
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

  it('is the whole plan where there is one', async () => {
    const given: Given = { pedals: pairWith(), supplies: [box(1)] };
    expect((await planFor(given, partial)).score).toEqual((await planFor(given)).score);
  });

  it('powers nothing, and buys nothing, where nothing can be powered', async () => {
    const plan = await planFor({ pedals: pairWith(), supplies: [] }, partial);
    expect(plan).toMatchObject({ feeds: [], unpowered: ['one', 'two'], buy: { supplies: [], parts: [] } });
    expect(plan.score).toMatchObject({ unpowered: 2, money: 0, bricks: 0 });
  });

  it('is no plan unless it is asked for', async () => {
    const { board, catalogue } = caseOf({ pedals: [...one(40), pedalOf('hungry', 400)], supplies: [box(1)] });
    expect((await choose(board, catalogue)).kind).toBe('impossible');
    const answer = await choose(board, catalogue, partial);
    expect(answer).toMatchObject({ kind: 'plan', wiring: { unpowered: ['hungry'] } });
    expect(answer.kind === 'plan' && answer.reasons.map((reason) => reason.kind)).toEqual(['pedal']);
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
});

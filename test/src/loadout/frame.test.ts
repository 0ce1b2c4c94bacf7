import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Supply, Total } from '../../../src/domain/supply.js';
import { framesOf, type UnitFrame } from '../../../src/loadout/frame.js';
import { benchOf, usesOf } from '../../support/bench.js';
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  partOf,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';

const nine = settingOf(9, 100);
const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });
const two = [pedalOf('one', 10), pedalOf('two', 20)];

type Given = {
  readonly pedals?: readonly Pedal[];
  readonly parts?: readonly Part[];
  readonly policy?: Partial<Policy>;
};

/** The frames of a supply, with the ids of the pedals that may hang there by themselves and in each sort of chain. */
function setUp(supply: Supply, { pedals = two, parts = [], policy = {} }: Given = {}) {
  const bench = benchOf(pedals, parts, policyOf(policy));
  const frames = framesOf(usesOf(supply, bench), bench);
  const idsOf = (options: readonly { readonly pedal: number }[]): readonly string[] =>
    options.map(({ pedal }) => bench.classes[pedal]?.like.id ?? '').sort();
  const shown = frames.map(({ mode, solos, chains }: UnitFrame) => ({
    mode: mode === null ? null : `${mode.ground} ${mode.noise}`,
    solos: idsOf(solos),
    chains: chains.map(({ places }) => idsOf(places)),
  }));
  return { frames, shown };
}

const supplyWith = (...banks: Parameters<typeof supplyOf>[2]): Supply => supplyOf('supply', 10, banks);

describe('the frames of a supply', () => {
  it('are one where there is nothing to set up', () => {
    const { frames, shown } = setUp(supplyWith(bankOf(3, [nine]), bankOf(1, [nine])), { parts: [fan] });
    expect(shown).toEqual([
      {
        mode: null,
        solos: ['one', 'one', 'two', 'two'],
        chains: [
          ['one', 'two'],
          ['one', 'two'],
        ],
      },
    ]);
    expect(frames).toMatchObject([{ outputs: [3, 1], capacities: [], exact: true }]);
  });

  describe('that is switched', () => {
    const settings = [nine, settingOf(12, 100), settingOf(18, 100)];
    const pedals = [
      ...two,
      pedalOf('twelve', 30, { accepts: listed(12) }),
      pedalOf('either', 5, { accepts: listed(9, 12) }),
    ];

    it('output by output are one', () => {
      const { shown } = setUp(supplyWith(bankOf(2, settings)), { pedals });
      expect(shown.map(({ solos }) => solos)).toEqual([['either', 'one', 'twelve', 'two']]);
    });

    it('bank by bank are one for each setting that is of use', () => {
      const { shown } = setUp(supplyWith(bankOf(2, settings, { switching: 'together' })), { pedals });
      expect(shown.map(({ solos }) => solos)).toEqual([
        ['either', 'one', 'two'],
        ['either', 'twelve'],
      ]);
    });

    it('in two banks are one for each pair of settings', () => {
      const together = bankOf(2, settings.slice(0, 2), { switching: 'together' });
      expect(setUp(supplyWith(together, together), { pedals }).frames).toHaveLength(4);
      // All at 9 V: there is one setting of use, so there is nothing to choose.
      expect(setUp(supplyWith(together, together)).frames).toHaveLength(1);
    });

    it('have chains at their own setting', () => {
      const { shown } = setUp(supplyWith(bankOf(1, settings, { switching: 'together' })), { pedals, parts: [fan] });
      expect(shown.map(({ chains }) => chains)).toEqual([[['either', 'one', 'two']], [['either', 'twelve']]]);
    });
  });

  describe('with a common ground', () => {
    const common = bankOf(2, [nine], { isolated: false });
    const echo = pedalOf('echo', 10, { digital: true });
    const fuzz = pedalOf('fuzz', 20, { highGain: true });
    const loop = pedalOf('loop', 30, { digital: true, highGain: true });
    const boost = pedalOf('boost', 40);

    it('are one for each mode, with the pedals that it admits', () => {
      const { shown } = setUp(supplyWith(common), {
        pedals: [echo, fuzz, loop, boost, pedalOf('old', 5, { ground: 'positive' })],
      });
      expect(shown.map(({ mode, solos }) => [mode, solos])).toEqual([
        ['negative quiet', ['boost', 'fuzz']],
        ['negative noisy', ['boost', 'echo', 'fuzz', 'loop']],
        ['negative sole', ['boost', 'fuzz', 'loop']],
        ['positive any', ['old']],
      ]);
    });

    it('say who is exposed, and hold one digital pedal in a sole mode', () => {
      const { frames } = setUp(supplyWith(common), { pedals: [fuzz, loop, boost] });
      const told = frames.map(({ mode, solos, capacities }) => ({
        noise: mode?.noise,
        exposed: solos.reduce((sum, { exposed }) => sum + exposed, 0),
        weights: solos.map(({ weights }) => weights),
        capacities,
      }));
      expect(told).toEqual([
        { noise: 'quiet', exposed: 0, weights: [[], []], capacities: [] },
        { noise: 'noisy', exposed: 2, weights: [[], [], []], capacities: [] },
        { noise: 'sole', exposed: 1, weights: [[0], [1], [0]], capacities: [1] },
      ]);
    });

    it('leave isolated outputs as they are', () => {
      const { shown } = setUp(supplyWith(common, bankOf(1, [nine])), { pedals: [echo, fuzz], parts: [fan] });
      expect(shown).toEqual([
        // Alone on the isolated output hangs either; a chain there has a mode of its own.
        { mode: 'negative quiet', solos: ['echo', 'fuzz', 'fuzz'], chains: [['echo', 'fuzz']] },
        {
          mode: 'negative noisy',
          solos: ['echo', 'echo', 'fuzz', 'fuzz'],
          chains: [
            ['echo', 'fuzz'],
            ['echo', 'fuzz'],
          ],
        },
      ]);
    });
  });

  it('have joins only where there are two outputs for them', () => {
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const high = [pedalOf('high', 10, { accepts: listed(18) })];
    const joins = (outputs: number) => {
      const joined = { joins: ['series' as const] };
      // The second bank feeds the pedal by itself, so that the supply is of use.
      return setUp(supplyWith(bankOf(outputs, [nine], joined), bankOf(1, [settingOf(18, 5)], joined)), {
        pedals: [...high, pedalOf('low', 1, { accepts: listed(18) })],
        parts: [stack],
      }).frames.flatMap(({ solos }) => solos.filter(({ banks }) => banks.length > 1).map(({ banks }) => banks));
    };
    expect(joins(1)).toEqual([]);
    expect(joins(2)).toContainEqual([0, 0]);
  });
});

describe('in a frame', () => {
  it('a limit bears just what it bears in the supply', () => {
    const supply = supplyOf('supply', 10, [bankOf(3, [nine], { total: powerTotal(0.9) })], { total: currentTotal(75) });
    const pedals = [pedalOf('a', 25), pedalOf('b', 40), pedalOf('c', 60)];
    const { frames } = setUp(supply, {
      pedals,
      policy: { headroom: { alone: factor(1), chained: factor(1), supply: factor(1.2) } },
    });
    const [frame] = frames;
    const weightsOf = (pedal: number) => frame?.solos.find((option) => option.pedal === pedal)?.weights ?? [];
    const fits = (...used: readonly number[]): readonly boolean[] =>
      (frame?.capacities ?? []).map(
        (capacity, at) => used.reduce((sum, pedal) => sum + (weightsOf(pedal)[at] ?? NaN), 0) <= capacity,
      );
    // 0.9 W at 9 V are 100 mA, 83.3 with headroom; 75 mA are 62.5.
    expect(fits(2)).toEqual([true, true]);
    expect(fits(0, 1)).toEqual([true, false]);
    expect(fits(0, 2)).toEqual([false, false]);
    expect(frame?.exact).toBe(true);
  });

  it('a chain bears loads with headroom and startups without', () => {
    const pedals = [pedalOf('a', 20, { startup: milliamps(70) }), pedalOf('b', 30), pedalOf('c', 31)];
    const { frames } = setUp(supplyWith(bankOf(1, [nine])), {
      pedals,
      parts: [pair, fan],
      policy: { headroom: { alone: factor(1), chained: factor(1.5), supply: factor(1) } },
    });
    const [chain] = frames.flatMap(({ chains }) => chains);
    if (chain === undefined) throw new RangeError('there is no chain');
    const { places, mostLoad, mostSurge, mostTails } = chain;
    const sum = (of: 'load' | 'surge', ...used: readonly number[]): number =>
      used.reduce((all, at) => all + (places[at]?.[of] ?? NaN), 0);
    expect(mostTails).toBe(5);
    // 100 mA / 1.5 are 66.6 mA.
    expect([sum('load', 1, 2) <= mostLoad, sum('load', 0, 1, 2) <= mostLoad]).toEqual([true, false]);
    // 70 + 30 mA are just the rating; 70 + 31 are not.
    expect(places.map(({ load, surge }) => surge > load)).toEqual([true, false, false]);
    expect([sum('surge', 0, 1) <= mostSurge, sum('surge', 0, 2) <= mostSurge]).toEqual([true, false]);
  });

  it('a chain bears no more than the totals of its bank and its supply', () => {
    const mostOf = (bankTotal: Total | null, total: Total | null, startup: number | null = null) => {
      const pedals = [pedalOf('a', 1, { startup: startup === null ? null : milliamps(startup) }), pedalOf('b', 30)];
      const supply = supplyOf('supply', 10, [bankOf(1, [nine], { total: bankTotal })], { total });
      const headroom = { alone: factor(1), chained: factor(1.5), supply: factor(1.2) };
      const [chain] = setUp(supply, { pedals, parts: [fan], policy: { headroom } }).frames.flatMap(
        (each) => each.chains,
      );
      // In milliamps, rounded down.
      const unit = (chain?.places[1]?.load ?? NaN) / 30;
      return [chain?.mostLoad ?? NaN, chain?.mostSurge ?? NaN].map((most) => Math.floor(most / unit));
    };
    expect(mostOf(null, null)).toEqual([66, 100]);
    expect(mostOf(currentTotal(60), null)).toEqual([50, 100]);
    expect(mostOf(currentTotal(60), currentTotal(48))).toEqual([40, 100]);
    // 0.27 W at 9 V are 30 mA.
    expect(mostOf(currentTotal(60), powerTotal(0.27))).toEqual([25, 100]);
    expect(mostOf(currentTotal(60), null, 50)).toEqual([50, 60]);
  });

  it('a pedal alone or in a chain has its leads, its volts and its exposure', () => {
    const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' });
    const pedals = [
      pedalOf('a', 10, { inlet: 'jack-3.5', accepts: listed(9, 12), prefers: volts(12), highGain: true }),
      pedalOf('b', 20, { digital: true }),
    ];
    const { frames } = setUp(supplyWith(bankOf(2, [nine])), { pedals, parts: [mini, fan] });
    const [frame] = frames;
    expect(frame?.solos.map(({ leads, offPreferred, exposed }) => [leads, offPreferred, exposed])).toEqual([
      [[0], 1, 0],
      [[], 0, 0],
    ]);
    expect(
      frame?.chains.map(({ places }) =>
        places.map(({ leads, offPreferred, exposed }) => [leads, offPreferred, exposed]),
      ),
    ).toEqual([
      [
        [[0], 1, 1],
        [[], 0, 0],
      ],
    ]);
  });

  it('numbers that are too large are rounded so that all that fits still fits', () => {
    // Steps of the guess times steps of the volts: hardly anything in common.
    const policy = { guess: { numerator: 1_000_003, denominator: 999_983 } };
    const accepts = { kind: 'range', from: volts(9), to: volts(9.1) } as const;
    const pedals = [
      pedalOf('a', 49.993, { accepts, figure: 'guess' }),
      pedalOf('b', 49.999, { accepts }),
      pedalOf('c', 49.989, { accepts }),
    ];
    const banks = [bankOf(2, [settingOf(9.001, 100)]), bankOf(1, [settingOf(9.002, 100)])];
    const { frames } = setUp(supplyOf('supply', 10, banks, { total: powerTotal(1) }), { pedals, policy });
    const [frame] = frames;
    expect(frame?.exact).toBe(false);
    const [capacity = NaN] = frame?.capacities ?? [];
    const weights =
      frame?.solos.filter(({ banks: [bank] }) => bank === 0).map(({ weights: [weight = NaN] }) => weight) ?? [];
    expect(weights).toHaveLength(3);
    // Two of them draw some 0.9 W, three 1.35 W.
    expect((weights[0] ?? NaN) + (weights[1] ?? NaN)).toBeLessThanOrEqual(capacity);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeGreaterThan(capacity);
  });
});

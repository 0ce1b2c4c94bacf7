import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Pedal } from '../../../src/domain/pedal.js';
import type { Total } from '../../../src/domain/supply.js';
import { microamps, milliwatts } from '../../../src/domain/quantities.js';
import { mostOn, totalLimits, weightsOf, type OutputTaken, type TotalLimit } from '../../../src/loadout/totals.js';
import {
  bankOf,
  currentTotal,
  factor,
  milliamps,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';

const policy = policyOf({
  headroom: { alone: factor(1), chained: factor(1), supply: factor(1.2) },
  guess: factor(1.5),
});

const setting = settingOf(9, 500);
const bankOfTotal = (total: Total | null) => bankOf(2, [setting], { total });

/** Loads count in halves of a microamp, as guesses are multiplied by 3/2. */
const load = (milliamps: number): bigint => BigInt(milliamps * 2000);

const onOutput = (bank: number, running: number, atVolts = 9, starting = running): OutputTaken => ({
  bank,
  millivolts: atVolts * 1000,
  load: load(running),
  surge: load(starting),
  repeats: false,
});

const calm = [pedalOf('calm', 50)];

/** Which limits the loads keep, of the banks first and then of the supply. */
function kept(
  banks: readonly (Total | null)[],
  whole: Total | null,
  loads: readonly OutputTaken[],
  pedals: readonly Pedal[] = calm,
): readonly boolean[] {
  const limits = totalLimits(supplyOf('supply', 10, banks.map(bankOfTotal), { total: whole }), policy, pedals);
  const weights = weightsOf(limits, loads, policy);
  return limits.map(({ capacity }, index) => (weights[index] ?? 0n) <= capacity);
}

describe('totals', () => {
  it('stand for the banks that state one, and then for the supply', () => {
    const banks = [bankOfTotal(null), bankOfTotal(powerTotal(3))];
    const limits = totalLimits(supplyOf('supply', 10, banks, { total: currentTotal(300) }), policy, calm);
    expect(limits.map(({ bank, total }) => [bank, total])).toEqual([
      [1, powerTotal(3)],
      [null, currentTotal(300)],
    ]);
  });

  it('hold for load × 1.2 in milliamps, to the microamp', () => {
    // 100 mA × 1.2 = 120 mA.
    expect(kept([], currentTotal(120), [onOutput(0, 100)])).toEqual([true]);
    expect(kept([], { kind: 'current', microamps: microamps(119_999) }, [onOutput(0, 100)])).toEqual([false]);
    expect(kept([], currentTotal(120), [onOutput(0, 60), onOutput(0, 40)])).toEqual([true]);
    expect(kept([], currentTotal(120), [onOutput(0, 60), onOutput(0, 40.001)])).toEqual([false]);
  });

  it('hold for volts × load × 1.2 in watts, to the milliwatt', () => {
    // 9 V × 100 mA × 1.2 = 1.08 W, and 12 V × 100 mA × 1.2 = 1.44 W.
    expect(kept([], powerTotal(1.08), [onOutput(0, 100)])).toEqual([true]);
    expect(kept([], { kind: 'power', milliwatts: milliwatts(1079) }, [onOutput(0, 100)])).toEqual([false]);
    expect(kept([], powerTotal(2.52), [onOutput(0, 100), onOutput(1, 100, 12)])).toEqual([true]);
    expect(kept([], powerTotal(2.519), [onOutput(0, 100), onOutput(1, 100, 12)])).toEqual([false]);
    expect(kept([], powerTotal(1.08), [onOutput(0, 100.001)])).toEqual([false]);
  });

  it('of a bank count that bank alone', () => {
    const loads = [onOutput(0, 100), onOutput(1, 50)];
    expect(kept([currentTotal(120), currentTotal(60)], null, loads)).toEqual([true, true]);
    expect(kept([currentTotal(119), currentTotal(60)], currentTotal(180), loads)).toEqual([false, true, true]);
    expect(kept([currentTotal(120), currentTotal(59)], currentTotal(179), loads)).toEqual([true, false, false]);
  });
});

describe('totals at switch-on', () => {
  const slow = [pedalOf('slow', 50, { startup: milliamps(61) })];

  it('stand beside the others where a startup exceeds load × the factor', () => {
    const rules = (...pedals: readonly Pedal[]): readonly string[] => {
      const supply = supplyOf('supply', 10, [bankOfTotal(powerTotal(3))], { total: currentTotal(300) });
      return totalLimits(supply, policy, pedals).map(({ rule, bank }) => `${rule} ${bank ?? 'all'}`);
    };
    const both = ['total 0', 'startup 0', 'total all', 'startup all'];
    expect(rules(...calm, ...slow)).toEqual(both);
    // 50 mA × 1.2 = 60 mA, and a guess is half as much again.
    expect(rules(pedalOf('quick', 50, { startup: milliamps(60) }))).toEqual(['total 0', 'total all']);
    expect(rules(pedalOf('quick', 50, { startup: milliamps(90), figure: 'guess' }))).toEqual(['total 0', 'total all']);
    expect(rules(pedalOf('slow', 50, { startup: milliamps(90.001), figure: 'guess' }))).toEqual(both);
    const figures = (nine: number, twelve: number) =>
      ({ kind: 'per voltage', microamps: new Map([[volts(9), milliamps(nine)], [volts(12), milliamps(twelve)]]) }) as const; // prettier-ignore
    expect(rules(pedalOf('quick', 0, { draw: figures(60, 50), startup: milliamps(60) }))).toHaveLength(2);
    expect(rules(pedalOf('slow', 0, { draw: figures(60, 49), startup: milliamps(60) }))).toEqual(both);
  });

  it('hold for what is taken then, without the factor', () => {
    const loads = [onOutput(0, 10, 9, 61), onOutput(0, 10, 12, 50)];
    expect(kept([currentTotal(111)], powerTotal(1.149), loads, slow)).toEqual([true, true, true, true]);
    expect(kept([currentTotal(110.999)], powerTotal(1.148), loads, slow)).toEqual([true, false, true, false]);
  });

  it('count a join as its load does', () => {
    const of = (mode: 'series' | 'parallel') => [
      onOutput(0, 10, 9, 100),
      { ...onOutput(0, 10, 9, 100), repeats: mode === 'parallel' },
    ];
    expect(kept([currentTotal(200)], powerTotal(1.799), of('series'), slow)).toEqual([true, true, true, false]);
    expect(kept([currentTotal(100)], powerTotal(0.899), of('parallel'), slow)).toEqual([true, true, true, false]);
  });
});

describe('joined outputs', () => {
  const series = (first: number, second: number): readonly OutputTaken[] => [
    onOutput(first, 100),
    onOutput(second, 100),
  ];
  const parallel = (first: number, second: number): readonly OutputTaken[] => [
    onOutput(first, 100),
    { ...onOutput(second, 100), repeats: true },
  ];

  it('count their load on both outputs in series', () => {
    expect(kept([currentTotal(240)], currentTotal(240), series(0, 0))).toEqual([true, true]);
    expect(kept([currentTotal(239)], currentTotal(239), series(0, 0))).toEqual([false, false]);
    expect(kept([currentTotal(120), currentTotal(119)], currentTotal(240), series(0, 1))).toEqual([true, false, true]);
  });

  it('count their own volts × load in watts in series', () => {
    const loads = [onOutput(0, 100), onOutput(1, 100, 12)];
    expect(kept([powerTotal(1.08), powerTotal(1.44)], powerTotal(2.52), loads)).toEqual([true, true, true]);
    expect(kept([powerTotal(1.079), powerTotal(1.439)], powerTotal(2.519), loads)).toEqual([false, false, false]);
  });

  it('count their load once in parallel, in each bank that has a part in it', () => {
    expect(kept([currentTotal(120)], currentTotal(120), parallel(0, 0))).toEqual([true, true]);
    expect(kept([currentTotal(119)], currentTotal(119), parallel(0, 0))).toEqual([false, false]);
    const apart = kept([currentTotal(120), currentTotal(119)], currentTotal(120), parallel(0, 1));
    expect(apart).toEqual([true, false, true]);
  });
});

describe('what limits leave one output', () => {
  const totals = fc.constantFrom(null, null, currentTotal(100), currentTotal(250), powerTotal(0.9), powerTotal(3));
  const surging = [pedalOf('surging', 50, { startup: milliamps(100) })];

  it('is just what they bear', () => {
    const seen = { none: 0, load: 0, surge: 0, within: 0, beyond: 0 };
    const figures = fc.record({
      banks: fc.tuple(totals, totals),
      total: totals,
      bank: fc.constantFrom(0, 1),
      atVolts: fc.constantFrom(9, 12, 18),
      pedals: fc.constantFrom(calm, surging),
      over: fc.tuple(fc.constantFrom(-1n, 0n, 1n), fc.constantFrom(-1n, 0n, 1n)),
    });
    fc.assert(
      fc.property(figures, ({ banks, total, bank, atVolts, pedals, over }) => {
        const limits = totalLimits(supplyOf('supply', 10, banks.map(bankOfTotal), { total }), policy, pedals);
        const output = { bank, millivolts: volts(atVolts) };
        const most = (rule: TotalLimit['rule']) => mostOn(output, rule, limits, policy);
        const [mostLoad, mostSurge] = [most('total'), most('startup')];
        const taken = {
          ...output,
          load: (mostLoad ?? 10n ** 15n) + over[0],
          surge: (mostSurge ?? 10n ** 15n) + over[1],
        };
        const weights = weightsOf(limits, [{ ...taken, repeats: false }], policy);
        const borne = weights.every((weight, at) => weight <= (limits[at]?.capacity ?? 0n));
        const within = (mostLoad === null || over[0] <= 0n) && (mostSurge === null || over[1] <= 0n);
        expect(borne).toBe(within);
        seen[within ? 'within' : 'beyond'] += 1;
        seen[mostSurge !== null ? 'surge' : mostLoad !== null ? 'load' : 'none'] += 1;
      }),
      trying(400),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
  });
});

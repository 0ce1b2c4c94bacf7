import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { JoinMode, Supply } from '../../../src/domain/supply.js';
import { soloUses } from '../../../src/loadout/solo-uses.js';
import { totalLimits } from '../../../src/loadout/totals.js';
import type { SoloUse } from '../../../src/loadout/uses.js';
import { benchOf, idsOf } from '../../support/bench.js';
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

const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
const twin = partOf('twin', 9, { kind: 'join', mode: 'parallel' });
const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true });

/**
 * Every use as a line: bank and volts of its outputs, its leads. A use that is not at the preferred volts ends with an
 * exclamation mark.
 */
function uses(supply: Supply, pedal: Pedal, parts: readonly Part[] = [], policy: Policy = policyOf()) {
  const bench = benchOf([pedal], parts, policy);
  const line = ({ outputs, join, route, offPreferred }: SoloUse): string => {
    const places = outputs.map(
      ({ bank, setting }) => `${bank}@${(supply.banks[bank]?.settings[setting]?.millivolts ?? 0) / 1000}`,
    );
    const leads = [...idsOf(join === null ? [] : [join.lead], bench.kinds), ...idsOf(route, bench.kinds)];
    return `${[places.join('+'), ...leads].join(' ')}${offPreferred ? '!' : ''}`;
  };
  return soloUses(supply, totalLimits(supply, policy, [pedal]), bench)
    .map(line)
    .sort();
}

const nine = settingOf(9, 100);
const twelve = settingOf(12, 100);
const eighteen = settingOf(18, 100);
const anyVolts = pedalOf('any', 50, { accepts: { kind: 'range', from: volts(9), to: volts(18) } });
const joinable = (modes: readonly JoinMode[], more: Parameters<typeof bankOf>[2] = {}) =>
  bankOf(2, [nine], { joins: modes, ...more });

describe('a pedal alone on an output', () => {
  it('may hang on every bank that suits it', () => {
    const supply = supplyOf('supply', 10, [bankOf(1, [nine]), bankOf(1, [twelve]), bankOf(1, [settingOf(9, 49.999)])]);
    expect(uses(supply, pedalOf('pedal', 50))).toEqual(['0@9']);
    expect(uses(supply, anyVolts)).toEqual(['0@9', '1@12']);
  });

  it('goes through the leads that it needs', () => {
    const supply = supplyOf('supply', 10, [bankOf(1, [nine]), bankOf(1, [nine], { polarity: 'either' })]);
    const pedal = pedalOf('pedal', 50, { polarity: 'centre-positive' });
    expect(uses(supply, pedal, [flip])).toEqual(['0@9 flip', '1@9']);
    expect(uses(supply, pedal)).toEqual(['1@9']);
  });
});

describe('uses that another one makes needless', () => {
  it('are the other settings of a bank that is set output by output', () => {
    expect(uses(supplyOf('supply', 10, [bankOf(2, [nine, twelve, eighteen])]), anyVolts)).toHaveLength(1);
  });

  it('are none of the settings of a bank that is switched together', () => {
    const bank = bankOf(2, [nine, twelve, eighteen], { switching: 'together' });
    expect(uses(supplyOf('supply', 10, [bank]), anyVolts)).toEqual(['0@12', '0@18', '0@9']);
  });

  it('are the ones off the preferred volts, as long as they are no lighter on a total', () => {
    const pedal = { ...anyVolts, prefers: volts(18) };
    const bank = bankOf(2, [nine, eighteen]);
    expect(uses(supplyOf('supply', 10, [bank]), pedal)).toEqual(['0@18']);
    expect(uses(supplyOf('supply', 10, [bank], { total: currentTotal(90) }), pedal)).toEqual(['0@18']);
    expect(uses(supplyOf('supply', 10, [bank], { total: powerTotal(2) }), pedal)).toEqual(['0@18', '0@9!']);
  });

  it('are the ones heavier on a total, as long as they are not nearer to the preferred volts', () => {
    const bank = bankOf(2, [nine, eighteen], { total: powerTotal(2) });
    expect(uses(supplyOf('supply', 10, [bank]), anyVolts)).toEqual(['0@9']);
    // At 12 V it draws less than at 9 V: lighter in milliamps, heavier in watts.
    const figures = new Map([
      [volts(9), milliamps(50)],
      [volts(12), milliamps(40)],
    ]);
    const pedal = pedalOf('pedal', 0, { accepts: listed(9, 12), draw: { kind: 'per voltage', microamps: figures } });
    const both = bankOf(2, [nine, twelve], { total: powerTotal(2) });
    expect(uses(supplyOf('supply', 10, [both], { total: currentTotal(90) }), pedal)).toEqual(['0@12', '0@9']);
    expect(uses(supplyOf('supply', 10, [both]), pedal)).toEqual(['0@9']);
  });

  it('are none on another bank, which may be full when this one is free', () => {
    const banks = [bankOf(1, [nine]), bankOf(1, [nine], { total: currentTotal(50) })];
    expect(uses(supplyOf('supply', 10, banks), pedalOf('pedal', 50))).toEqual(['0@9', '1@9']);
  });
});

describe('a join', () => {
  const high = pedalOf('high', 50, { accepts: listed(18) });
  const strong = pedalOf('strong', 200);

  it('adds volts in series and milliamps in parallel, exactly', () => {
    expect(uses(supplyOf('supply', 10, [joinable(['series'])]), high, [stack])).toEqual(['0@9+0@9 stack']);
    expect(uses(supplyOf('supply', 10, [joinable(['parallel'])]), strong, [twin])).toEqual(['0@9+0@9 twin']);
    const tooStrong = pedalOf('strong', 200.001);
    expect(uses(supplyOf('supply', 10, [joinable(['parallel'])]), tooStrong, [twin])).toEqual([]);
    const policy = policyOf({ headroom: { alone: factor(1.2), chained: factor(1), supply: factor(1) } });
    const most = pedalOf('most', 166.666);
    expect(uses(supplyOf('supply', 10, [joinable(['parallel'])]), most, [twin], policy)).toHaveLength(1);
    expect(uses(supplyOf('supply', 10, [joinable(['parallel'])]), { ...strong }, [twin], policy)).toEqual([]);
  });

  it.each<[string, Parameters<typeof bankOf>[2], readonly Part[]]>([
    ['its maker does not allow it', { joins: ['parallel'] }, [stack, twin]],
    ['it is not isolated', { isolated: false }, [stack]],
    ['there is but one output', { outputs: 1 }, [stack]],
    ['the right lead is missing', {}, [twin]],
    ['the lead does not fit', {}, [partOf('stack', 9, { kind: 'join', mode: 'series' }, { fits: 'jack-3.5' })]],
    ['the lead gives another plug', {}, [partOf('stack', 9, { kind: 'join', mode: 'series' }, { gives: 'jack-3.5' })]],
  ])('is none where %s', (_, more, parts) => {
    expect(uses(supplyOf('supply', 10, [joinable(['series'], more)]), high, parts)).toEqual([]);
  });

  it('goes through adapters behind the join lead', () => {
    const reversing = { ...stack, reverses: true };
    expect(uses(supplyOf('supply', 10, [joinable(['series'])]), high, [reversing])).toEqual([]);
    const turned = uses(supplyOf('supply', 10, [joinable(['series'])]), high, [reversing, flip]);
    expect(turned).toEqual(['0@9+0@9 stack flip']);
  });

  it('stands in two banks that agree in power, plug and polarity', () => {
    const across = (more: Parameters<typeof bankOf>[2]) =>
      uses(
        supplyOf('supply', 10, [joinable(['series'], { outputs: 1 }), joinable(['series'], { outputs: 1, ...more })]),
        high,
        [stack],
      );
    expect(across({})).toEqual(['0@9+1@9 stack']);
    expect(across({ settings: [settingOf(9, 49.999)] })).toEqual([]);
    expect(across({ plug: 'jack-3.5' })).toEqual([]);
    expect(across({ polarity: 'centre-positive' })).toEqual([]);
    expect(across({ polarity: 'either' })).toEqual(['0@9+1@9 stack']);
    expect(across({ power: 'AC', polarity: null })).toEqual([]);
    expect(across({ joins: ['parallel'] })).toEqual([]);
  });

  it('has one setting in a bank that is switched together, and may have two in others', () => {
    const mixed = pedalOf('mixed', 50, { accepts: listed(21) });
    const bank = (switching: 'each' | 'together') => joinable(['series'], { settings: [nine, twelve], switching });
    expect(uses(supplyOf('supply', 10, [bank('each')]), mixed, [stack])).toEqual(['0@9+0@12 stack']);
    expect(uses(supplyOf('supply', 10, [bank('together')]), mixed, [stack])).toEqual([]);
    const doubled = { ...mixed, accepts: listed(24) };
    expect(uses(supplyOf('supply', 10, [bank('together')]), doubled, [stack])).toEqual(['0@12+0@12 stack']);
  });

  it('stands at the same volts in parallel', () => {
    const banks = [joinable(['parallel'], { outputs: 1 }), joinable(['parallel'], { outputs: 1, settings: [twelve] })];
    const pedal = { ...strong, accepts: listed(9, 12) };
    expect(uses(supplyOf('supply', 10, banks), pedal, [twin])).toEqual([]);
    const agreeing = joinable(['parallel'], { outputs: 1, settings: [nine, twelve] });
    const supply = supplyOf('supply', 10, [banks[0] ?? agreeing, agreeing]);
    expect(uses(supply, pedal, [twin])).toEqual(['0@9+1@9 twin']);
  });

  it('is needless where one of its outputs will do, and only there', () => {
    const small = pedalOf('small', 50);
    const bank = joinable(['parallel']);
    expect(uses(supplyOf('supply', 10, [bank]), small, [twin])).toEqual(['0@9']);
    // The join over both banks is needless; each output by itself is not.
    expect(uses(supplyOf('supply', 10, [bank, bank]), small, [twin])).toEqual(['0@9', '1@9']);
    const series = joinable(['series'], { settings: [nine, eighteen] });
    expect(uses(supplyOf('supply', 10, [series]), high, [stack])).toEqual(['0@18']);
    const apart = [joinable(['series']), bankOf(1, [eighteen])];
    expect(uses(supplyOf('supply', 10, apart), high, [stack])).toEqual(['0@9+0@9 stack', '1@18']);
  });

  it('is not needless where the single output is switched together at other volts', () => {
    const bank = joinable(['series'], { settings: [nine, eighteen], switching: 'together' });
    expect(uses(supplyOf('supply', 10, [bank]), high, [stack])).toEqual(['0@18', '0@9+0@9 stack']);
  });

  it('is not needless where it alone gives the preferred volts, or where it needs no adapter', () => {
    const preferring = { ...anyVolts, prefers: volts(18) };
    const supply = supplyOf('supply', 10, [joinable(['series'])]);
    expect(uses(supply, preferring, [stack])).toEqual(['0@9!', '0@9+0@9 stack']);
    const positive = pedalOf('positive', 50, { polarity: 'centre-positive' });
    const turning = { ...twin, reverses: true };
    const both = uses(supplyOf('supply', 10, [joinable(['parallel'])]), positive, [turning, flip]);
    expect(both).toEqual(['0@9 flip', '0@9+0@9 twin']);
  });
});

describe('the weights of a use', () => {
  it('count a join in every total that it touches', () => {
    const bank = joinable(['series'], { outputs: 1, total: currentTotal(300) });
    const supply = supplyOf('supply', 10, [bank, bank], { total: powerTotal(9) });
    const weightsFor = (pedal: Pedal) => {
      const bench = benchOf([pedal], [stack]);
      return soloUses(supply, totalLimits(supply, bench.policy, [pedal]), bench).map(({ weights }) => weights);
    };
    const high = pedalOf('high', 50, { accepts: listed(18) });
    // 50 mA on both banks, and 9 V × 50 mA twice, in nanowatts; at switch-on 90 mA, too.
    expect(weightsFor(high)).toEqual([[50_000n, 50_000n, 900_000_000n]]);
    expect(weightsFor({ ...high, startup: milliamps(90) })).toEqual([
      [50_000n, 90_000n, 50_000n, 90_000n, 900_000_000n, 1_620_000_000n],
    ]);
  });

  it('keep a way that takes less of a total at switch-on', () => {
    const figures = [
      [volts(9), milliamps(100)],
      [volts(12), milliamps(60)],
    ] as const;
    const pedal = pedalOf('either', 0, {
      accepts: listed(9, 12),
      draw: { kind: 'per voltage', microamps: new Map(figures) },
      startup: milliamps(100),
    });
    const supply = supplyOf('supply', 10, [
      bankOf(1, [settingOf(9, 100), settingOf(12, 100)], { total: powerTotal(2) }),
    ]);
    // 12 V × 60 mA is less than 9 V × 100 mA, but 12 V × 100 mA at switch-on is more.
    expect(uses(supply, pedal)).toEqual(['0@12', '0@9']);
    expect(uses(supply, { ...pedal, startup: null })).toEqual(['0@12']);
  });
});

import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Feed } from '../../../../src/domain/plan.js';
import { supplyId } from '../../../../src/domain/quantities.js';
import { rules, rulesBySeverity } from '../../../../src/domain/rules.js';
import { check, type Check } from '../../../../src/planning/check/check.js';
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  pedalOf,
  policyOf,
  settingOf,
  volts,
} from '../../../support/builders.js';
import { ofOneOutput } from '../plugged/of-one-output.js';
import { ofOneUnit } from '../plugged/of-one-unit.js';
import { ofTheWhole } from '../plugged/of-the-whole.js';
import { plug, pluggedCase, type PluggedCase } from '../plugged/plugged-case.js';
import { box, boxOf, fan, flip, one, pairWith, stack } from '../given.js';

const ruleCases = [...ofOneOutput, ...ofOneUnit, ...ofTheWhole];

function checked(given: PluggedCase): Check {
  const { board, catalogue } = pluggedCase(given);
  return check(kitOf(board, catalogue));
}

const rulesOf = ({ findings }: Check): readonly string[] => findings.map(({ rule }) => rule);

describe.each(rules)('the rule %s', (rule) => {
  const ofRule = ruleCases.filter((each) => each.rule === rule);

  it('is tried', () => {
    expect(ofRule.length).toBeGreaterThanOrEqual(2);
  });

  it.each(ofRule)('bites, and spares what is a shade better: $what', ({ bites, spares }) => {
    expect(checked(bites).status).toBe('unsafe');
    expect(rulesOf(checked(bites))).toEqual([rule]);
    expect(checked(spares)).toMatchObject({ status: 'safe', findings: [] });
  });
});

describe('findings', () => {
  it('say where, who and by which numbers', () => {
    const policy = { headroom: { ...policyOf().headroom, alone: factor(1.2) } };
    const { findings } = checked({ pedals: one(100), supplies: [box(1)], policy, wiring: [plug('one')] });
    expect(findings).toEqual([
      {
        rule: 'current',
        pedals: ['one'],
        place: { supply: 'box', unit: 1, outputs: [1] },
        message: 'one draws 100 mA × 1.2 = 120 mA; output 1 of box (unit 1) gives 100 mA at 9 V',
        numbers: {
          kind: 'load',
          unit: 'mA',
          load: { numerator: 100_000n, denominator: 1n },
          factor: { numerator: 6, denominator: 5 },
          planned: { numerator: 600_000n, denominator: 5n },
          limit: 100_000,
        },
      },
    ]);
  });

  it('come the worst first, whatever order the pedals have', () => {
    const all = {
      pedals: [
        pedalOf('loud', 150),
        pedalOf('odd-plug', 10, { inlet: 'jack-3.5' }),
        pedalOf('reversed', 10, { polarity: 'centre-positive' }),
        pedalOf('starving', 10, { accepts: listed(18) }),
        pedalOf('roasting', 10, { accepts: listed(6) }),
        pedalOf('surging', 10, { startup: milliamps(101) }),
      ],
      supplies: [box(6)],
      policy: { mains: [volts(230)], bricks: 0 },
    };
    const wiring = all.pedals.map(({ id }, at) => plug(id, { outputs: [at + 1] }));
    const { findings } = checked({ ...all, wiring });
    const worst = ['mains', 'polarity', 'voltage', 'current', 'startup', 'voltage', 'plug', 'limit'];
    expect(findings.map(({ rule }) => rule)).toEqual(worst);
    const volted = findings.filter(({ rule }) => rule === 'voltage').map(({ pedals }) => pedals);
    expect(volted).toEqual([['roasting'], ['starving']]);
    const reversed = checked({ ...all, pedals: [...all.pedals].reverse(), wiring: [...wiring].reverse() });
    expect(reversed.findings.map(({ rule }) => rule)).toEqual(worst);
  });

  it('of one rule come by how far they are beyond it', () => {
    const pedals = [pedalOf('little', 101), pedalOf('most', 300), pedalOf('more', 150)];
    const wiring = pedals.map(({ id }, at) => plug(id, { outputs: [at + 1] }));
    const { findings } = checked({ pedals, supplies: [box(3)], wiring });
    expect(findings.map((finding) => finding.pedals)).toEqual([['most'], ['more'], ['little']]);
  });

  it('know every rule', () => {
    expect([...rulesBySeverity].sort()).toEqual([...rules].sort());
  });
});

describe('what breaks no rule', () => {
  const softOf = (given: PluggedCase) => {
    const { status, soft } = checked(given);
    return { status, soft: soft.map(({ kind }) => kind) };
  };

  it('a pedal without a feed is said, and safe', () => {
    const result = checked({ pedals: pairWith(), supplies: [box(1)], wiring: [plug('one')] });
    expect(result).toMatchObject({ status: 'safe', soft: [{ kind: 'unfed', pedal: 'two' }] });
    expect(checked({ pedals: one(), supplies: [box(1)], wiring: [] })).toMatchObject({
      status: 'safe',
      soft: [{ kind: 'unfed', pedal: 'one' }],
    });
  });

  it('an exposed pedal is named with those that expose it', () => {
    const pedals = [
      pedalOf('lead', 10, { highGain: true, digital: true }),
      pedalOf('looper', 10, { digital: true }),
      pedalOf('echo', 10, { digital: true }),
      pedalOf('wah', 10),
    ];
    const wiring = pedals.map(({ id }, at) => plug(id, { outputs: [at + 1] }));
    const common = checked({ pedals, supplies: [box(4, { isolated: false })], wiring });
    expect(common.soft).toEqual([{ kind: 'exposed', pedal: 'lead', by: ['looper', 'echo'] }]);
    expect(checked({ pedals, supplies: [box(4)], wiring }).soft).toEqual([]);
  });

  it('an output is nearly full above nine tenths of what the headroom leaves', () => {
    const policy = { headroom: { ...policyOf().headroom, alone: factor(1.2) } };
    const drawing = (draw: number) => softOf({ pedals: one(draw), supplies: [box(1)], policy, wiring: [plug('one')] });
    expect(drawing(75)).toEqual({ status: 'safe', soft: [] });
    expect(drawing(75.001)).toEqual({ status: 'safe', soft: ['tight'] });
    expect(drawing(83.333)).toEqual({ status: 'safe', soft: ['tight'] });
    // What is beyond the limit is broken, not nearly full.
    expect(drawing(83.334)).toEqual({ status: 'unsafe', soft: [] });
  });

  it('so is a total', () => {
    const withTotal = (total: number) =>
      checked({ pedals: one(45), supplies: [box(1, {}, { total: currentTotal(total) })], wiring: [plug('one')] }).soft;
    expect(withTotal(50)).toEqual([]);
    expect(withTotal(49.999)).toMatchObject([{ kind: 'tight', of: 'supply', place: { outputs: [] }, pedals: ['one'] }]);
    const ofBank = checked({ pedals: one(45), supplies: [box(2, { total: currentTotal(49) })], wiring: [plug('one')] });
    expect(ofBank.soft).toMatchObject([{ kind: 'tight', of: 'bank', place: { outputs: [1, 2] } }]);
  });

  it('a pedal off its preferred volts is told, unless the volts are wrong altogether', () => {
    const at9 = (accepts: ReturnType<typeof listed>) =>
      softOf({ pedals: one(50, { accepts, prefers: volts(18) }), supplies: [box(1)], wiring: [plug('one')] });
    expect(at9(listed(9, 18))).toEqual({ status: 'safe', soft: ['off preferred'] });
    expect(at9(listed(18))).toEqual({ status: 'unsafe', soft: [] });
  });

  it('a lead beyond the owned ones is told with its price', () => {
    const pedals = one(50, { polarity: 'centre-positive' });
    const given = { pedals, supplies: [box(1)], parts: [flip], wiring: [plug('one', { adapters: ['flip'] })] };
    expect(checked(given).soft).toEqual([
      { kind: 'not owned', thing: 'part', purchase: { id: 'flip', units: 1, price: 400 } },
    ]);
    expect(checked({ ...given, owned: { box: 1, flip: 1 } }).soft).toEqual([]);
  });
});

describe('the numbers of every outlet and total', () => {
  it('are there, in order or not', () => {
    const { wiring } = checked({
      pedals: pairWith({ startup: milliamps(70) }),
      supplies: [box(1, {}, { total: currentTotal(1000) })],
      parts: [fan],
      policy: { headroom: { ...policyOf().headroom, chained: factor(2) } },
      wiring: [plug('one', { chain: 'fan' }), plug('two', { chain: 'fan' })],
    });
    expect(wiring.outlets).toMatchObject([
      {
        place: { supply: 'box', unit: 1, outputs: [1] },
        pedals: ['one', 'two'],
        current: { load: { numerator: 80_000n }, planned: { numerator: 160_000n }, limit: 100_000 },
        startup: { planned: { numerator: 110_000n }, limit: 100_000 },
      },
    ]);
    expect(wiring.totals).toMatchObject([{ of: 'supply', place: { outputs: [] }, numbers: { limit: 1_000_000 } }]);
  });
});

describe('what a wiring leaves open', () => {
  const deliveredTo = (feeds: readonly Feed[]) => feeds.map(({ settings, polarity }) => ({ settings, polarity }));

  it('a polarity switch stands as most of its pedals need it', () => {
    const pedals = one(50, { polarity: 'centre-positive' });
    const supplies = [box(1, { polarity: 'either' })];
    const straight = checked({ pedals, supplies, wiring: [plug('one')] });
    expect(straight.status).toBe('safe');
    expect(deliveredTo(straight.wiring.feeds)).toEqual([{ settings: [9000], polarity: 'centre-positive' }]);
    const reversed = checked({ pedals, supplies, parts: [flip], wiring: [plug('one', { adapters: ['flip'] })] });
    expect(reversed.status).toBe('safe');
    expect(deliveredTo(reversed.wiring.feeds)).toEqual([{ settings: [9000], polarity: 'centre-positive' }]);
  });

  /** 21 V from two banks that can each give 9 or 12 V; the second feeds another pedal, and is switched together. */
  const series = (second: number) => ({
    pedals: [pedalOf('one', 50, { accepts: listed(21) }), pedalOf('two', 50, { accepts: listed(9, 12) })],
    supplies: [
      boxOf([
        bankOf(1, [settingOf(9, 100), settingOf(12, 100)], { joins: ['series'] }),
        bankOf(2, [settingOf(9, 100), settingOf(12, 100)], { joins: ['series'], switching: 'together' }),
      ]),
    ],
    parts: [stack],
    wiring: [
      plug('one', { outputs: [1, 2], volts: 21, join: ['series', 'stack'] }),
      plug('two', { outputs: [3], volts: second }),
    ],
  });

  it.each([9, 12])('outputs in series share the volts as the rest of the wiring allows: %d V', (second) => {
    const result = checked({ ...series(second), owned: { box: 1, stack: 1 } });
    expect(result.status).toBe('safe');
    const settings = [volts(21 - second), volts(second)];
    expect(result.wiring.feeds[0]).toMatchObject({ pedal: 'one', settings });
    expect(result.soft).toMatchObject([{ kind: 'open setting', pedal: 'one', place: { outputs: [1, 2] }, settings }]);
  });

  it('is nothing where there is one way only', () => {
    const given = series(9);
    const [joined] = given.wiring;
    const at24 = { ...given, pedals: [pedalOf('one', 50, { accepts: listed(24) })] };
    const wiring = joined === undefined ? [] : [{ ...joined, millivolts: volts(24) }];
    expect(checked({ ...at24, owned: { box: 1, stack: 1 }, wiring })).toMatchObject({ status: 'safe', soft: [] });
  });
});

describe('without a catalogue', () => {
  it('the gear is enough', () => {
    const { board } = pluggedCase({ pedals: one(), supplies: [box(1)], wiring: [plug('one')] });
    const supply = { ...box(1), price: null, stock: 0 };
    const owned = { supplies: new Map([[supplyId('box'), 1]]), parts: new Map() };
    const alone = { ...board, gear: { supplies: [supply], parts: [] }, owned };
    expect(check(kitOf(alone, null))).toMatchObject({ status: 'safe', soft: [] });
  });
});

it('a board that plugs a pedal twice, which none that was read does, is refused', () => {
  const given = pluggedCase({
    pedals: one(),
    supplies: [box(2)],
    wiring: [plug('one'), plug('one', { outputs: [2] })],
  });
  expect(() => check(kitOf(given.board, given.catalogue))).toThrow(RangeError);
});

import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import type { Pedal } from '../../../../src/domain/pedal.js';
import type { Rule } from '../../../../src/domain/rules.js';
import { refusalsOf } from '../../../../src/planning/refusals/refusals.js';
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  onMains,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../../support/builders.js';
import { bankHolding, onBlocks } from '../../../support/impossible-sources.js';
import { adapter, box, boxOf, caseOf, flip, one, stack, twin, type Given } from '../given.js';

function refusals(given: Given) {
  const { board, catalogue } = caseOf(given);
  const [pedal] = board.pedals;
  if (pedal === undefined) throw new Error('no pedal');
  return refusalsOf(pedal, kitOf(board, catalogue));
}

const rulesOf = (given: Given): readonly Rule[] => refusals(given).map(({ rule }) => rule);
const { headroom } = policyOf();
const alternating = { power: 'AC', polarity: null } as const;

describe('why an output does not feed a pedal', () => {
  it.each<[Rule, Given, RegExp]>([
    ['mains', { pedals: one(), supplies: [box(1)], policy: { mains: [volts(230)] } }, /does not state.*230 V/],
    [
      'mains',
      {
        pedals: one(),
        supplies: [box(1, {}, onMains(100, 120))],
        policy: { mains: [volts(230)] },
      },
      /100 V.*120 V.*230 V/,
    ],
    [
      'mains',
      {
        pedals: one(),
        supplies: [box(1, {}, onMains(100, 127))],
        policy: { mains: [volts(120), volts(230), volts(240)] },
      },
      /100 V to 127 V; venues have 230 V and 240 V/,
    ],
    ['power', { pedals: one(50, alternating), supplies: [box(1)] }, /AC.*DC/],
    ['voltage', { pedals: one(50, { accepts: listed(12, 18) }), supplies: [box(1)] }, /12 V.*18 V.*9 V/],
    ['voltage', { pedals: one(), supplies: [boxOf([bankOf(1, [settingOf(9, 100, 13.5)])])] }, /9 V.*13\.5 V/],
    [
      'voltage',
      { pedals: one(50, { survives: volts(13) }), supplies: [boxOf([bankOf(1, [settingOf(9, 100, 13.5)])])] },
      /13\.5 V.*survives 13 V/,
    ],
    ['plug', { pedals: one(50, { inlet: 'jack-3.5' }), supplies: [box(1)] }, /jack-3\.5.*barrel-2\.1/],
    [
      'polarity',
      { pedals: one(50, { polarity: 'centre-positive' }), supplies: [box(1)] },
      /centre-positive.*centre-negative/,
    ],
    ['current', { pedals: one(100.5), supplies: [box(1)] }, /100\.5 mA.*100 mA/],
    [
      'current',
      {
        pedals: one(90, { figure: 'guess' }),
        supplies: [box(1)],
        policy: { guess: factor(1.5), headroom: { ...headroom, alone: factor(1.2) } },
      },
      /90 mA × 1\.5.*× 1\.2 = 162 mA.*100 mA/,
    ],
    ['startup', { pedals: one(50, { startup: milliamps(350) }), supplies: [box(1)] }, /350 mA.*100 mA/],
    [
      'startup',
      { pedals: one(50, { startup: milliamps(95) }), supplies: [box(1, {}, { total: currentTotal(90) })] },
      /takes 95 mA to start at 9 V; all outputs of box together give 90 mA/,
    ],
    [
      'startup',
      { pedals: one(50, { startup: milliamps(95) }), supplies: [box(1, { total: powerTotal(0.854) })] },
      /takes 95 mA to start at 9 V; the outputs of that bank of box together give 0\.854 W/,
    ],
    ['total', { pedals: one(90), supplies: [box(1, {}, { total: currentTotal(80) })] }, /90 mA.*80 mA/],
    ['total', { pedals: one(90), supplies: [box(1, { total: powerTotal(0.8) })] }, /90 mA.*0\.8 W/],
    ['stock', { pedals: one(), supplies: [box(1, {}, { stock: 0 })] }, /none is owned or in stock/],
    [
      'stock',
      { pedals: one(50, { polarity: 'centre-positive' }), supplies: [box(1)], parts: [{ ...flip, stock: 0 }] },
      /lead.*neither owned nor in stock/,
    ],
  ])('%s: with place and figures', (rule, given, message) => {
    const found = refusals(given);
    expect(found.map((refusal) => refusal.rule)).toEqual([rule]);
    expect(found[0]).toMatchObject({ rule, at: { supply: 'box', outputs: [1] } });
    expect(found[0]?.message).toMatch(message);
  });

  it('may be that nobody says how long a power bank or batteries must last', () => {
    const [bank] = refusals({ pedals: one(), supplies: [bankHolding(10)] });
    expect(bank?.message).toBe('bank is a power bank; to plan with it, the board must say how long it has to last');
    const [set] = refusals(onBlocks(2, 100, { policy: {} }));
    expect(set?.message).toMatch(/might do; to plan with batteries, the board must say how long a set has to last$/);
  });

  it('is a join that would do but for its lead', () => {
    const given: Given = { pedals: one(50, { accepts: listed(18) }), supplies: [box(2, { joins: ['series'] })] };
    expect(rulesOf(given)).toContain('join');
    expect(refusals({ ...given, parts: [stack] })).not.toContainEqual(expect.objectContaining({ rule: 'join' }));
  });
});

describe('the nearest miss', () => {
  it('comes first: what fails last in the order of the rules', () => {
    const supplies = [
      supplyOf('plug', 10, [bankOf(1, [settingOf(9, 100)], { plug: 'jack-3.5' })]),
      supplyOf('weak', 10, [bankOf(1, [settingOf(9, 40)])]),
      supplyOf('gone', 10, [bankOf(1, [settingOf(9, 100)])], { stock: 0 }),
      supplyOf('low', 10, [bankOf(1, [settingOf(6, 100)])]),
    ];
    const found = refusals({ pedals: one(), supplies });
    expect(found.map(({ rule, at }) => [rule, at?.supply])).toEqual([
      ['stock', 'gone'],
      ['current', 'weak'],
      ['plug', 'plug'],
      ['voltage', 'low'],
    ]);
  });

  it('is the strongest of the weak outputs, wherever it stands', () => {
    const weak = [150, 250, 200].map((rating) => supplyOf(`gives-${rating}`, 10, [bankOf(1, [settingOf(9, rating)])]));
    expect(refusals({ pedals: one(300), supplies: weak })).toMatchObject([{ at: { supply: 'gives-250' } }]);
    const banks = [bankOf(3, [settingOf(9, 150)]), bankOf(2, [settingOf(9, 250)])];
    expect(refusals({ pedals: one(300), supplies: [boxOf(banks)] })).toMatchObject([{ at: { outputs: [4, 5] } }]);
  });

  it('is the output that lacks least, where the pedal draws more at other volts', () => {
    const draw: Pedal['draw'] = {
      kind: 'per voltage',
      microamps: new Map([
        [volts(9), milliamps(300)],
        [volts(18), milliamps(100)],
      ]),
    };
    // 200 of 300 mA at 9 V; 99 of 100 mA at 18 V.
    const supplies = [
      supplyOf('nine', 10, [bankOf(1, [settingOf(9, 200)])]),
      supplyOf('eighteen', 10, [bankOf(1, [settingOf(18, 99)])]),
    ];
    const pedals = [pedalOf('one', 0, { accepts: listed(9, 18), draw })];
    expect(refusals({ pedals, supplies })).toMatchObject([{ rule: 'current', at: { supply: 'eighteen' } }]);
  });

  it('is the output whose volts are nearest, and one that only rises too far is nearer still', () => {
    const at = (id: string, setting: ReturnType<typeof settingOf>) => supplyOf(id, 10, [bankOf(1, [setting])]);
    const far = [at('five', settingOf(5, 100)), at('twelve', settingOf(12, 100)), at('eighteen', settingOf(18, 100))];
    expect(refusals({ pedals: one(), supplies: far })).toMatchObject([{ rule: 'voltage', at: { supply: 'twelve' } }]);
    const rising = [...far, at('rising', settingOf(9, 100, 17))];
    expect(refusals({ pedals: one(), supplies: rising })).toMatchObject([{ at: { supply: 'rising' } }]);
  });

  it('is at the setting that comes nearest, for an output gives either', () => {
    const pedals = one(50, { inlet: 'jack-3.5' });
    const both = bankOf(2, [settingOf(9, 100), settingOf(18, 100)]);
    expect(rulesOf({ pedals, supplies: [boxOf([both])] })).toEqual(['plug']);
    const found = refusals({ pedals, supplies: [boxOf([both, bankOf(1, [settingOf(18, 100)])])] });
    expect(found).toMatchObject([
      { rule: 'plug', at: { outputs: [1, 2] } },
      { rule: 'voltage', at: { outputs: [3] } },
    ]);
    // Two in series give 18 V, so their volts are not in the way.
    const weak = {
      pedals: one(150, { accepts: listed(18) }),
      supplies: [box(2, { joins: ['series'] })],
      parts: [stack],
    };
    expect(rulesOf(weak)).toEqual(['current']);
  });

  it('is, of those that fail a rule alike, the output that fails the fewest others', () => {
    const pedals = one(150);
    const supplies = [box(2, { joins: ['parallel'] })];
    const found = refusals({ pedals, supplies, parts: [{ ...twin, reverses: true }] });
    expect(found).toMatchObject([
      { rule: 'current', message: expect.stringContaining('100 mA') as string },
      {
        rule: 'polarity',
        message: expect.stringMatching(/two outputs of box in parallel give centre-positive/) as string,
      },
    ]);
    const weakFirst = [bankOf(1, [settingOf(9, 50)]), bankOf(1, [settingOf(9, 100)])];
    const positive = one(80, { polarity: 'centre-positive' });
    expect(refusals({ pedals: positive, supplies: [boxOf(weakFirst)] })).toMatchObject([
      { rule: 'polarity', at: { outputs: [2] } },
    ]);
  });

  it('takes two leads into account, and stops at three', () => {
    const leads = [adapter('a', 'barrel-2.1', 'clip'), adapter('b', 'clip', 'stud'), adapter('c', 'stud', 'jack-3.5')];
    expect(rulesOf({ pedals: one(500, { inlet: 'stud' }), supplies: [box(1)], parts: leads })).toEqual(['current']);
    expect(rulesOf({ pedals: one(500, { inlet: 'jack-3.5' }), supplies: [box(1)], parts: leads })).toEqual(['plug']);
  });
});

import { describe, expect, it } from 'vitest';

import { milliwatts, minorUnits } from '../../../src/domain/quantities.js';
import {
  bank,
  chainLead,
  draws,
  feed,
  judge,
  listed,
  milliamps,
  part,
  pedal,
  setting,
  supply,
  times,
  volts,
  type Case,
} from './cases.js';

const one: Case = { pedals: [pedal('echo')], supplies: [supply('quay', [bank()])], feeds: [feed('echo', 1)] };
const found = (of: Partial<Case>) => judge({ ...one, ...of }).violations;
const quay = (outputs: readonly number[], unit = 1) => ({ supply: 'quay', unit, outputs });

describe('the place and the numbers of a violation', () => {
  it('of volts: what is given, what it rises to, what is accepted and survived', () => {
    const supplies = [supply('quay', [bank({ settings: [setting(9, 500, 13)] })])];
    const [violation] = found({ supplies, pedals: [pedal('echo', { survives: volts(12) })] });
    expect(violation).toMatchObject({
      rule: 'voltage',
      place: quay([1]),
      numbers: { kind: 'volts', given: 9000, openCircuit: 13_000, accepted: listed(9), survives: 12_000 },
    });
  });

  it('of a total in watts: milliwatts, exactly', () => {
    const total = { kind: 'power', milliwatts: milliwatts(1000) } as const;
    const supplies = [supply('quay', [bank({ total })])];
    const [violation] = found({ supplies, pedals: [pedal('echo', draws(111.112))], headroom: { supply: times(1.2) } });
    expect(violation).toMatchObject({
      rule: 'total',
      place: quay([1, 2]),
      numbers: { kind: 'load', unit: 'W', limit: 1000 },
    });
    const { numbers } = violation ?? {};
    if (numbers?.kind !== 'load') throw new Error('a total compares loads');
    // 111.112 mA at 9 V are 1000.008 mW.
    expect(numbers.load.numerator * 1000n).toBe(1_000_008n * numbers.load.denominator);
    expect(numbers.planned.numerator * 10_000n).toBe(12_000_096n * numbers.planned.denominator);
  });

  it('of mains, counts and money', () => {
    expect(found({ policy: { mains: [volts(230)] } })).toMatchObject([
      { rule: 'mains', place: quay([]), numbers: { kind: 'mains', venue: 230_000, accepted: null } },
    ]);
    expect(found({ policy: { budget: minorUnits(1), bricks: 0, sockets: 0 } })).toMatchObject([
      { rule: 'limit', place: null, numbers: { kind: 'money', needed: 10_000, allowed: 1 } },
      { rule: 'limit', numbers: { kind: 'count', used: 1, allowed: 0 } },
      { rule: 'limit', numbers: { kind: 'count', used: 1, allowed: 0 } },
    ]);
    expect(found({ supplies: [supply('quay', [bank()], { stock: 0 })] })).toMatchObject([
      { rule: 'stock', place: quay([]), numbers: { kind: 'count', used: 1, allowed: 0 } },
    ]);
  });

  it('of tails and adapters', () => {
    const pedals = ['echo', 'fuzz', 'drive'].map((id) => pedal(id));
    const feeds = pedals.map(({ id }) => feed(id, 1, { chain: 'fan' }));
    expect(found({ pedals, feeds, parts: [chainLead('fan', 2)] })).toMatchObject([
      { rule: 'chain', place: quay([1]), numbers: { kind: 'count', used: 3, allowed: 2 } },
    ]);
    const adapters = ['straight', 'straight', 'straight'];
    expect(found({ parts: [part('straight')], feeds: [feed('echo', 1, { adapters })] })).toMatchObject([
      { rule: 'plug', place: quay([1]), numbers: { kind: 'count', used: 3, allowed: 2 } },
    ]);
  });

  it('of grounds that meet: every output that they meet on', () => {
    const pedals = [pedal('echo'), pedal('fuzz', { ground: 'positive' })];
    const supplies = [supply('quay', [bank({ isolated: false })])];
    expect(found({ pedals, supplies, feeds: [feed('echo', 2), feed('fuzz', 1)] })).toMatchObject([
      { rule: 'ground', place: quay([1, 2]), numbers: null },
    ]);
  });
});

describe('the loads of an audit', () => {
  it('are those of every outlet, with what all take at once when they are switched on', () => {
    const pedals = [
      pedal('echo', { ...draws(30), startup: milliamps(40) }),
      pedal('fuzz', { ...draws(20), startup: milliamps(200), figure: 'guess' }),
      pedal('drive', draws(10)),
    ];
    const feeds = [feed('echo', 1, { chain: 'fan' }), feed('fuzz', 1, { chain: 'fan' }), feed('drive', 2)];
    const report = judge({
      ...one,
      ...{ pedals, feeds, parts: [chainLead('fan', 2)] },
      policy: { guess: times(1.5) },
      headroom: { chained: times(2) },
    });
    expect(report.wiring.outlets.map(({ place, pedals: ids }) => ({ place, ids }))).toEqual([
      { place: quay([1]), ids: ['echo', 'fuzz'] },
      { place: quay([2]), ids: ['drive'] },
    ]);
    const [chained, single] = report.wiring.outlets;
    const value = (exact?: { readonly numerator: bigint; readonly denominator: bigint }) =>
      exact === undefined ? null : Number(exact.numerator) / Number(exact.denominator);
    expect(value(chained?.current?.load)).toBe(60_000);
    expect(value(chained?.current?.planned)).toBe(120_000);
    expect(value(chained?.startup?.planned)).toBe(240_000);
    expect(single).toMatchObject({ startup: null, current: { limit: 500_000 } });
  });

  it('are those of every total, with what all take at once where some startup exceeds its load', () => {
    const slow = pedal('echo', { ...draws(30), startup: milliamps(200) });
    const totals = (startup: typeof slow) => {
      const supplies = [
        supply('quay', [bank({ total: { kind: 'current', microamps: milliamps(900) } }), bank()], {
          total: { kind: 'power', milliwatts: milliwatts(9000) },
        }),
      ];
      const feeds = [feed('echo', 1), feed('fuzz', 3)];
      const report = judge({ ...one, pedals: [startup, pedal('fuzz', draws(20))], supplies, feeds });
      return report.wiring.totals.map(({ of, startup: numbers }) => [
        of,
        numbers === null ? null : Number(numbers.planned.numerator) / Number(numbers.planned.denominator),
      ]);
    };
    expect(totals(slow)).toEqual([
      ['bank', 200_000],
      ['supply', 1980],
    ]);
    expect(totals({ ...slow, startup: milliamps(30) })).toEqual([
      ['bank', null],
      ['supply', null],
    ]);
  });

  it('name those who expose a pedal, in the order of the board', () => {
    const pedals = [
      pedal('echo', { digital: true }),
      pedal('drive', { highGain: true }),
      pedal('looper', { digital: true, highGain: true }),
      pedal('wah'),
    ];
    const supplies = [supply('quay', [bank({ outputs: 4, isolated: false })])];
    const feeds = pedals.map(({ id }, at) => feed(id, 4 - at));
    expect(judge({ pedals, supplies, feeds }).wiring.exposures).toEqual([
      { pedal: 'drive', by: ['echo', 'looper'] },
      { pedal: 'looper', by: ['echo'] },
    ]);
  });
});

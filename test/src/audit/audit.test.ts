import { describe, expect, it } from 'vitest';

import { audit, isSound } from '../../../src/audit/audit.js';
import { partId, supplyId } from '../../../src/domain/quantities.js';
import { scoreWith } from '../../support/builders.js';
import {
  bank,
  boardOf,
  chainLead,
  draws,
  faults,
  feed,
  joinLead,
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

/** Six outputs of which only 5 and 6 can feed an echo of 180 mA. */
const tideway: Case = {
  pedals: [
    pedal('echo', { ...draws(180), startup: milliamps(350), digital: true }),
    pedal('fuzz', { ...draws(4), ground: 'positive', highGain: true, figure: 'measured' }),
    pedal('drive', {
      ...draws(15),
      accepts: listed(9, 18),
      prefers: volts(18),
      survives: volts(20),
      highGain: true,
      alone: true,
    }),
  ],
  supplies: [
    supply(
      'quay',
      [
        bank({ outputs: 4, settings: [setting(9, 100)] }),
        bank({ outputs: 2, settings: [setting(9, 400), setting(12, 300), setting(18, 200)], joins: ['series'] }),
      ],
      {
        stock: 3,
        source: { kind: 'mains', volts: { from: volts(100), to: volts(240) } },
        total: { kind: 'current', microamps: milliamps(1800) },
      },
    ),
  ],
  parts: [part('flip', { reverses: true }), chainLead('fan', 5), joinLead('stack', 'series')],
  feeds: [feed('echo', 5), feed('fuzz', 1), feed('drive', 6, { volts: [18] })],
  headroom: { alone: times(1.2), chained: times(2), supply: times(1.2) },
  policy: { guess: times(1.5), mains: [volts(230)], sockets: 4, bricks: 2 },
  owned: { quay: 1 },
};

describe('audit', () => {
  it('passes a sound wiring and measures it', () => {
    const report = judge(tideway);
    expect(isSound(report)).toBe(true);
    expect(report.wiring).toMatchObject({
      feeds: tideway.feeds,
      unpowered: [],
      exposed: [],
      buy: { supplies: [], parts: [] },
      score: scoreWith({ bricks: 1 }),
      exposures: [],
    });
    expect(report.wiring.outlets.map(({ pedals }) => pedals)).toEqual([['echo'], ['fuzz'], ['drive']]);
  });

  it('tells every rule that one feed breaks', () => {
    const spoiled = { ...tideway, feeds: [feed('echo', 3), feed('fuzz', 1), feed('drive', 6, { volts: [12] })] };
    expect(faults(spoiled)).toEqual(['voltage', 'current', 'startup']);
    expect(isSound(judge(spoiled))).toBe(false);
    expect(judge(spoiled).violations[1]).toEqual({
      rule: 'current',
      pedals: ['echo'],
      place: { supply: 'quay', unit: 1, outputs: [3] },
      numbers: {
        kind: 'load',
        unit: 'mA',
        load: { numerator: 180_000n, denominator: 1n },
        factor: { numerator: 6, denominator: 5 },
        planned: { numerator: 1_080_000n, denominator: 5n },
        limit: 100_000,
      },
      message: 'Echo draws 180 mA × 1.2 = 216 mA; output 3 of Quay (unit 1) gives 100 mA at 9 V',
    });
  });

  it('works from gear alone, without a catalogue', () => {
    const board = boardOf(tideway);
    const ofGear = {
      ...board,
      gear: {
        supplies: tideway.supplies.map((each) => ({ ...each, price: null, stock: 0 })),
        parts: [part('flip', { price: null, stock: 0, reverses: true })],
      },
    };
    expect(isSound(audit(ofGear, null, tideway.feeds, { partial: false }))).toBe(true);
    const unowned = {
      ...ofGear,
      owned: { supplies: new Map([[supplyId('quay'), 0]]), parts: new Map([[partId('flip'), 0]]) },
    };
    const report = audit(unowned, null, tideway.feeds, { partial: false });
    expect(report.violations.map((violation) => violation.rule)).toEqual(['stock']);
    expect(report.wiring.buy.supplies).toEqual([]);
  });

  it('lists feeds in the order of the board', () => {
    const report = judge({ ...tideway, feeds: [...tideway.feeds].reverse() });
    expect(report.wiring.feeds.map((each) => each.pedal)).toEqual(['echo', 'fuzz', 'drive']);
  });
});

describe('a pedal without power', () => {
  const without = { ...tideway, feeds: tideway.feeds.slice(0, 2) };

  it('is missing, unless the plan may be partial', () => {
    expect(judge(without).missing).toEqual(['drive']);
    expect(judge(without).violations).toEqual([]);
    expect(isSound(judge(without))).toBe(false);
    expect(isSound(judge({ ...without, partial: true }))).toBe(true);
  });

  it('is counted, and is not off its preferred volts', () => {
    expect(judge(without).wiring.unpowered).toEqual(['drive']);
    expect(judge(without).wiring.score).toMatchObject({ unpowered: 1, offPreferred: 0 });
    const at9 = { ...tideway, feeds: [...without.feeds, feed('drive', 6)] };
    expect(judge(at9).wiring.score).toMatchObject({ unpowered: 0, offPreferred: 1 });
  });
});

describe('a malformed feed', () => {
  const withFeed = (changed: Partial<Case['feeds'][number]>): readonly string[] =>
    faults({ ...tideway, feeds: [{ ...feed('echo', 5), ...changed }, ...tideway.feeds.slice(1)] });

  it('names no pedal of the board', () => {
    expect(faults({ ...tideway, feeds: [...tideway.feeds, feed('organ', 2)] })).toEqual(['malformed']);
  });

  it('feeds a pedal that has a feed already', () => {
    const twice = { ...tideway, feeds: [...tideway.feeds, feed('fuzz', 2)] };
    expect(faults(twice)).toEqual(['malformed']);
    expect(judge(twice).malformed).toEqual([
      { pedals: ['fuzz'], message: 'the pedal "fuzz" has 2 feeds; it takes one' },
    ]);
  });

  it.each([0, -1, 1.5, NaN, Infinity])('has the unit number %d', (unit) => {
    expect(withFeed({ unit })).toEqual(['malformed', 'missing']);
  });

  it.each([[[]], [[0]], [[1.5]], [[1, 2, 3]]])('has the outputs %j', (outputs) => {
    const settings = outputs.map(() => volts(9));
    expect(withFeed({ outputs, settings })).toEqual(['malformed', 'missing']);
  });

  it('has settings that do not match its outputs or are no volts', () => {
    expect(withFeed({})).toEqual([]);
    expect(withFeed({ settings: [] })).toEqual(['malformed', 'missing']);
    expect(withFeed({ settings: [volts(9), volts(9)] })).toEqual(['malformed', 'missing']);
    for (const value of [0, -9000, 9000.5, NaN]) {
      // A plan may come from anywhere, whatever its types say.
      const settings = [value as ReturnType<typeof volts>];
      expect(withFeed({ settings })).toEqual(['malformed', 'missing']);
    }
  });
});

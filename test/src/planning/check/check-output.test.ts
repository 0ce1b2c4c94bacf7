import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { partId, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import { checkOutput, type OutputAnswer } from '../../../../src/planning/check/check-output.js';
import { resolveQuestion } from '../../../../src/planning/check/output-question.js';
import {
  bankOf,
  currentTotal,
  listed,
  milliamps,
  partOf,
  pedalOf,
  settingOf,
  volts,
} from '../../../support/builders.js';
import { plug, pluggedCase, type PluggedCase } from '../plugged/plugged-case.js';
import { adapter, box, boxOf, fan, flip, one, pairWith, stack } from '../given.js';

type Asked = { readonly pedal?: string; readonly unit?: number; readonly output?: number };

function asked(given: PluggedCase, { pedal = 'one', unit = 1, output = 1 }: Asked = {}): OutputAnswer {
  const { board, catalogue } = pluggedCase(given);
  return checkOutput(kitOf(board, catalogue), { pedal: pedalId(pedal), supply: supplyId('box'), unit, output });
}

const rulesOf = ({ trials }: OutputAnswer): readonly (readonly string[])[] =>
  trials.map(({ findings }) => findings.map(({ rule }) => rule));

const positive = { polarity: 'centre-positive' } as const;
const switched = boxOf([bankOf(2, [settingOf(9, 400), settingOf(12, 300), settingOf(18, 200)])]);

describe('a pedal on an output by itself', () => {
  it('is tried at every setting, its preferred volts first of those that cost the same', () => {
    const pedals = one(150, { accepts: listed(9, 18), prefers: volts(18) });
    const answer = asked({ pedals, supplies: [switched], wiring: [] });
    expect(answer).toMatchObject({ fits: true, inPlace: false, company: [] });
    expect(answer.trials.map(({ millivolts }) => millivolts)).toEqual([18_000, 9000, 12_000]);
    expect(rulesOf(answer)).toEqual([[], [], ['voltage']]);
    expect(answer.trials[0]).toMatchObject({
      position: null,
      feed: { pedal: 'one', outputs: [1], settings: [18_000], polarity: 'centre-negative', chain: null, adapters: [] },
      money: 0,
      outlet: { current: { limit: 200_000 } },
    });
  });

  it('is refused by every rule that forbids it, the worst first', () => {
    const pedals = one(500, { ...positive, accepts: listed(6), inlet: 'jack-3.5', startup: milliamps(600) });
    const answer = asked({ pedals, supplies: [box(1)], wiring: [] });
    expect(answer.fits).toBe(false);
    expect(rulesOf(answer)).toEqual([['polarity', 'voltage', 'current', 'startup', 'plug']]);
  });

  it('takes owned leads before those that must be bought, and the cheapest of these', () => {
    const pedals = one(50, positive);
    const dear = partOf('dear', 9, { kind: 'adapter' }, { reverses: true });
    const given = { pedals, supplies: [box(1)], parts: [dear, flip], wiring: [] };
    const bought = asked(given).trials[0];
    expect(bought).toMatchObject({
      feed: { adapters: ['flip'], polarity: 'centre-positive' },
      buy: { supplies: [], parts: [{ id: 'flip', units: 1, price: 400 }] },
      money: 400,
    });
    const owned = asked({ ...given, owned: { box: 1, dear: 1 } }).trials[0];
    expect(owned).toMatchObject({ feed: { adapters: ['dear'] }, buy: { parts: [] }, money: 0 });
  });

  it('takes two adapters where one does not do', () => {
    const pedals = one(50, { ...positive, inlet: 'jack-3.5' });
    const parts = [flip, adapter('mini', 'barrel-2.1', 'jack-3.5')];
    const [trial] = asked({ pedals, supplies: [box(1)], parts, wiring: [] }).trials;
    expect([...(trial?.feed.adapters ?? [])].sort()).toEqual(['flip', 'mini']);
    expect(trial).toMatchObject({ findings: [], money: 600 });
  });

  it('is tried at both positions of a polarity switch', () => {
    const supplies = [box(1, { polarity: 'either' })];
    const answer = asked({ pedals: one(50, positive), supplies, parts: [flip], wiring: [] });
    expect(answer.trials.map(({ position, feed }) => ({ position, adapters: feed.adapters }))).toEqual([
      { position: 'centre-positive', adapters: [] },
      { position: 'centre-negative', adapters: ['flip'] },
    ]);
    const without = asked({ pedals: one(50, positive), supplies, wiring: [] });
    expect(rulesOf(without)).toEqual([[], ['polarity']]);
  });

  it('may be asked of a supply that is not owned, which then must be bought', () => {
    const answer = asked({ pedals: one(), supplies: [box(1)], owned: {}, wiring: [] });
    expect(answer.trials[0]).toMatchObject({ findings: [], money: 1000, buy: { supplies: [{ id: 'box', units: 1 }] } });
    const soldOut = asked({ pedals: one(), supplies: [box(1, {}, { stock: 0 })], owned: {}, wiring: [] });
    expect(rulesOf(soldOut)).toEqual([['stock']]);
  });

  it('may be asked of a second unit', () => {
    const given = { pedals: pairWith(), supplies: [box(1, {}, { stock: 0 })], wiring: [plug('two')] };
    expect(asked({ ...given, owned: { box: 2 } }, { unit: 2 })).toMatchObject({ fits: true, inPlace: false });
    expect(rulesOf(asked(given, { unit: 2 }))).toEqual([['stock']]);
  });

  it('gets no lead that another pedal uses elsewhere', () => {
    const pedals = pairWith(positive).map((pedal) => ({ ...pedal, ...positive }));
    const given = {
      pedals,
      supplies: [box(1)],
      parts: [{ ...flip, stock: 0 }],
      wiring: [plug('two', { unit: 2, adapters: ['flip'] })],
    };
    expect(rulesOf(asked({ ...given, owned: { box: 2, flip: 1 } }))).toEqual([['stock']]);
    expect(asked({ ...given, owned: { box: 2, flip: 2 } }).fits).toBe(true);
  });
});

describe("with the rest of today's wiring in place", () => {
  it('a total counts what hangs there already', () => {
    const withTotal = (total: number) =>
      asked(
        { pedals: pairWith(), supplies: [box(2, {}, { total: currentTotal(total) })], wiring: [plug('two')] },
        { output: 2 },
      );
    expect(withTotal(80)).toMatchObject({ fits: true, inPlace: true, company: [] });
    expect(rulesOf(withTotal(79))).toEqual([['total']]);
  });

  it('a bank that is switched together keeps its volts', () => {
    const settings = [settingOf(9, 100), settingOf(12, 100)];
    const supplies = [boxOf([bankOf(2, settings, { switching: 'together' })])];
    const pedals = pairWith().map((pedal) => ({ ...pedal, accepts: listed(9, 12) }));
    const answer = asked({ pedals, supplies, wiring: [plug('two', { outputs: [2], volts: 12 })] });
    expect(answer.trials.map(({ millivolts }) => millivolts)).toEqual([12_000, 9000]);
    expect(rulesOf(answer)).toEqual([[], ['setting']]);
  });

  it('grounds meet, and noise is told', () => {
    const common = [box(2, { isolated: false })];
    const pedals = [pedalOf('one', 10, { highGain: true }), pedalOf('two', 10, { digital: true })];
    const wiring = [plug('two', { outputs: [2] })];
    expect(asked({ pedals, supplies: common, wiring }).trials[0]).toMatchObject({
      findings: [],
      exposures: [{ pedal: 'one', by: ['two'] }],
    });
    const sour = [pedalOf('one', 10, { ground: 'positive' }), pedalOf('two', 10)];
    expect(rulesOf(asked({ pedals: sour, supplies: common, wiring }))).toEqual([['ground']]);
  });

  it('moves the pedal from where it hangs today', () => {
    const given = { pedals: one(60), supplies: [box(2, {}, { total: currentTotal(60) })], wiring: [plug('one')] };
    expect(asked(given, { output: 2 })).toMatchObject({ fits: true, inPlace: false });
  });

  it('what is broken already forbids nothing', () => {
    const pedals = [...one(10), pedalOf('broken', 10, positive)];
    const answer = asked({ pedals, supplies: [box(2)], wiring: [plug('broken', { outputs: [2] })] });
    expect(answer).toMatchObject({ fits: true, inPlace: true });
  });

  it('joined outputs are not free', () => {
    const pedals = [...one(10), pedalOf('big', 10, { accepts: listed(18) })];
    const supplies = [box(2, { joins: ['series'] })];
    const wiring = [plug('big', { outputs: [1, 2], volts: 18, join: ['series', 'stack'] })];
    expect(rulesOf(asked({ pedals, supplies, parts: [stack], wiring }, { output: 2 }))).toEqual([['join']]);
  });
});

describe('in company on the output', () => {
  const wiring = [plug('two')];

  it('both go on a chain lead, with the adapters that they need behind it', () => {
    const turning = partOf('turning', 1, { kind: 'chain', tails: 3 }, { reverses: true });
    const given = { pedals: pairWith(), supplies: [box(1)], wiring };
    const straight = asked({ ...given, parts: [fan] });
    expect(straight).toMatchObject({ fits: true, inPlace: true, company: ['two'] });
    expect(straight.trials[0]).toMatchObject({
      feed: { chain: 'fan', adapters: [] },
      changed: [{ pedal: 'two', chain: 'fan', adapters: [] }],
      money: 100,
      outlet: { pedals: ['one', 'two'] },
    });
    const turned = asked({ ...given, parts: [turning, flip] }).trials[0];
    expect(turned).toMatchObject({
      findings: [],
      feed: { chain: 'turning', adapters: ['flip'] },
      changed: [{ pedal: 'two', chain: 'turning', adapters: ['flip'] }],
      money: 900,
    });
    expect(rulesOf(asked({ ...given, parts: [turning] }))).toEqual([['polarity', 'polarity']]);
    expect(rulesOf(asked(given))).toEqual([['chain']]);
  });

  it('a free tail is taken and nothing else changes', () => {
    const pedals = [...pairWith(), pedalOf('three', 10)];
    const chain = [plug('two', { chain: 'fan' }), plug('three', { chain: 'fan' })];
    const [trial] = asked({
      pedals,
      supplies: [box(1)],
      parts: [fan],
      owned: { box: 1, fan: 1 },
      wiring: chain,
    }).trials;
    expect(trial).toMatchObject({ findings: [], feed: { chain: 'fan' }, changed: [], money: 0 });
  });

  it('a chain lead without a free tail is replaced by one with more', () => {
    const small = partOf('small', 1, { kind: 'chain', tails: 2 });
    const pedals = [...pairWith(), pedalOf('three', 10)];
    const chain = [plug('two', { chain: 'small' }), plug('three', { chain: 'small' })];
    const given = { pedals, supplies: [box(1)], owned: { box: 1, small: 1 }, wiring: chain };
    const [trial] = asked({ ...given, parts: [small, fan] }).trials;
    expect(trial).toMatchObject({ findings: [], feed: { chain: 'fan' }, money: 100 });
    expect(trial?.changed.map(({ pedal }) => pedal)).toEqual(['two', 'three']);
    expect(rulesOf(asked({ ...given, parts: [small] }))).toEqual([['chain']]);
  });

  it('counts together', () => {
    const pedals = [...one(70), pedalOf('two', 40)];
    expect(rulesOf(asked({ pedals, supplies: [box(1)], parts: [fan], wiring }))).toEqual([['current']]);
  });

  it('takes the volts of the output along to all of them', () => {
    const supplies = [boxOf([bankOf(1, [settingOf(9, 100), settingOf(12, 100)])])];
    const pedals = [...one(10, { accepts: listed(12) }), pedalOf('two', 10, { accepts: listed(9, 12) })];
    const answer = asked({ pedals, supplies, parts: [fan], wiring });
    expect(rulesOf(answer)).toEqual([[], ['voltage']]);
    expect(answer.trials[0]).toMatchObject({ millivolts: 12_000, changed: [{ pedal: 'two', settings: [12_000] }] });
  });

  it('shares scarce leads so that all get what they need', () => {
    // Only one flip is left: the pedal with a jack inlet can be turned on the way by another lead.
    const pedals = [pedalOf('one', 10, positive), pedalOf('two', 10, { ...positive, inlet: 'jack-3.5' })];
    const parts = [
      fan,
      { ...flip, stock: 1 },
      adapter('mini', 'barrel-2.1', 'jack-3.5'),
      partOf('turning-mini', 8, { kind: 'adapter' }, { gives: 'jack-3.5', reverses: true }),
    ];
    const wired = [plug('two', { adapters: ['turning-mini'] })];
    const [trial] = asked({ pedals, supplies: [box(1)], parts, owned: { box: 1 }, wiring: wired }).trials;
    expect(trial).toMatchObject({
      findings: [],
      feed: { adapters: ['flip'] },
      changed: [{ adapters: ['turning-mini'] }],
    });
  });
});

describe('a question in typed words', () => {
  const { board, catalogue } = pluggedCase({ pedals: pairWith(), supplies: [box(2)], wiring: [] });
  const said = { pedal: 'one', supply: 'box', unit: 1, output: 2 };
  const faultsOf = (of: Partial<typeof said>, of2: typeof catalogue | null = catalogue) => {
    const resolved = resolveQuestion(kitOf(board, of2), { ...said, ...of });
    return resolved.kind === 'unknown' ? resolved.faults : [];
  };

  it('names what there is', () => {
    expect(resolveQuestion(kitOf(board, catalogue), said)).toEqual({ kind: 'question', question: said });
  });

  it('may name things by the names that only they have', () => {
    const pedals = board.pedals.map((pedal) => ({ ...pedal, name: `The ${pedal.id}` }));
    const named = kitOf({ ...board, pedals }, catalogue);
    expect(resolveQuestion(named, { ...said, pedal: 'the ONE' })).toEqual({ kind: 'question', question: said });
    const alike = kitOf({ ...board, pedals: pedals.map((pedal) => ({ ...pedal, name: 'Twin' })) }, catalogue);
    expect(resolveQuestion(alike, { ...said, pedal: 'Twin' })).toMatchObject({
      kind: 'unknown',
      faults: [expect.stringMatching(/^"Twin" is the name of 2 things\. Write the id of the one that is meant: /)],
    });
  });

  it('is told what is not there, and what is near', () => {
    expect(faultsOf({ pedal: 'ome' })).toEqual(['the board has no pedal "ome". Did you mean one?']);
    expect(faultsOf({ supply: 'b' })).toEqual([
      'neither the gear nor the catalogue describes a supply "b". Did you mean box?',
    ]);
    expect(faultsOf({ pedal: 'organ' })).toEqual(['the board has no pedal "organ". It has one and two.']);
    expect(faultsOf({ supply: 'bix' })).toEqual([
      'neither the gear nor the catalogue describes a supply "bix". Did you mean box?',
    ]);
    expect(faultsOf({}, null)).toEqual([
      'the gear does not describe a supply "box", and no catalogue is given. Give the catalogue that lists it.',
    ]);
    expect(faultsOf({ output: 3 })).toEqual(['"box" has no output 3; it has the outputs 1 to 2.']);
    expect(faultsOf({ pedal: 'ome', supply: 'bix' })).toHaveLength(2);
  });

  it('is refused by the library when it names nothing', () => {
    const question = { pedal: pedalId('one'), supply: supplyId('box'), unit: 1, output: 3 };
    expect(() => checkOutput(kitOf(board, catalogue), question)).toThrow(RangeError);
    expect(() => checkOutput(kitOf(board, null), { ...question, output: 1 })).toThrow(RangeError);
  });
});

it('a part that is described by the gear alone serves as well', () => {
  const gear = { parts: [{ ...flip, price: null, stock: 0 }] };
  const { board, catalogue } = pluggedCase({ pedals: one(50, positive), supplies: [box(1)], gear, wiring: [] });
  const owned = { ...board.owned, parts: new Map([[partId('flip'), 1]]) };
  const question = { pedal: pedalId('one'), supply: supplyId('box'), unit: 1, output: 1 };
  expect(checkOutput(kitOf({ ...board, owned }, catalogue), question).fits).toBe(true);
  const without = checkOutput(kitOf(board, catalogue), question);
  expect(rulesOf(without)).toEqual([['stock']]);
});

import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import type { Feed } from '../../../../src/domain/plan.js';
import { millivolts, partId, pedalId } from '../../../../src/domain/quantities.js';
import { feedHazards, leadHazards, outputHazards, type Hazard } from '../../../../src/report/words/hazards.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, planOf, settingOf, supplyOf } from '../samples.js';

const switchable = { settings: [settingOf(9, 300), settingOf(12, 200)], joins: ['series'] } as const;
const catalogue = catalogueOf(
  [
    supplyOf('apart', [bankFrom(1, 4, switchable), bankFrom(5, 1, { power: 'AC', polarity: null })]),
    supplyOf('tied', [bankFrom(1, 3, { isolated: false })]),
  ],
  [
    partOf('flip', { kind: 'adapter' }, { reverses: true }),
    partOf('mini', { kind: 'adapter' }, { gives: 'jack-3.5' }),
    partOf('fan', { kind: 'chain', tails: 3 }),
    partOf('turn-fan', { kind: 'chain', tails: 3 }, { reverses: true }),
    partOf('stack', { kind: 'join', mode: 'series' }),
  ],
);

type Case = { readonly feed: Partial<Feed>; readonly at?: readonly [string, number]; readonly pedal?: Partial<Pedal> };

/** The marks of the pedal `one`, fed like this, with a plain neighbour on output 2 of the same supply. */
function marksOf({ feed, at: [supply, output] = ['apart', 1], pedal = {} }: Case): readonly Hazard[] {
  const board = boardOf([pedalOf('one', pedal), pedalOf('other')]);
  const one = feedOf('one', supply, output, feed);
  const wiring = planOf(board, catalogue, [one, feedOf('other', supply, 2, output === 2 ? feed : {})]);
  return feedHazards(speechOf(kitOf(board, catalogue)), wiring, one);
}

const fan = { chain: partId('fan') };
const twelve = { settings: [millivolts(12_000)] };
const series = {
  outputs: [3, 4],
  settings: [millivolts(9000), millivolts(9000)],
  join: { mode: 'series', part: partId('stack') },
} as const;

describe('a hazard', () => {
  const cases: Readonly<Record<Hazard, { readonly bites: readonly Case[]; readonly not: readonly Case[] }>> = {
    AC: {
      bites: [{ feed: { polarity: null }, at: ['apart', 5], pedal: { power: 'AC', polarity: null } }],
      not: [{ feed: {} }],
    },
    'over 9 V': { bites: [{ feed: twelve }, { feed: series }], not: [{ feed: {} }, { feed: {}, at: ['tied', 1] }] },
    'plus pin': {
      bites: [{ feed: { polarity: 'centre-positive' } }],
      not: [
        { feed: { polarity: 'unknown', readings: { 'centre-negative': [], 'centre-positive': [partId('flip')] } } },
      ],
    },
    reverses: {
      bites: [
        { feed: { adapters: [partId('mini'), partId('flip')] } },
        { feed: { chain: partId('turn-fan') }, at: ['apart', 2] },
      ],
      not: [{ feed: { adapters: [partId('mini')] } }],
    },
    chain: { bites: [{ feed: fan, at: ['apart', 2] }], not: [{ feed: series }] },
    'positive ground': {
      bites: [{ feed: {}, pedal: { ground: 'positive' } }],
      not: [{ feed: {}, pedal: { ground: 'unknown' } }],
    },
    'shared ground': {
      bites: [
        { feed: {}, at: ['tied', 1] },
        { feed: fan, at: ['apart', 2] },
      ],
      not: [{ feed: {} }, { feed: series }],
    },
    kept: {
      bites: [
        { feed: {}, pedal: { kept: 'later' } },
        { feed: {}, pedal: { kept: 'spare' } },
      ],
      not: [{ feed: {} }],
    },
  };

  it.each(Object.entries(cases))('%s is told where it bites, and nowhere else', (hazard, { bites, not }) => {
    for (const one of bites) expect(marksOf(one)).toContain(hazard);
    for (const one of not) expect(marksOf(one)).not.toContain(hazard);
  });

  it('is none of a plain pedal on an isolated output of 9 V', () => {
    expect(marksOf({ feed: {} })).toEqual([]);
  });
});

describe('a lead', () => {
  it('has the marks of all that hangs on it, and is kept only where all of it is', () => {
    const board = boardOf([
      pedalOf('one', { kept: 'later', ground: 'positive' }),
      pedalOf('two', { kept: 'spare' }),
      pedalOf('plain'),
    ]);
    const feeds = ['one', 'two', 'plain'].map((id) => feedOf(id, 'apart', 1, fan));
    const [one, two] = feeds as [Feed, Feed];
    const speech = speechOf(kitOf(board, catalogue));
    const none = { grounds: [] };
    expect(leadHazards(speech, none, [one, two])).toEqual(['chain', 'positive ground', 'kept']);
    expect(leadHazards(speech, none, feeds)).toEqual(['chain', 'positive ground']);
  });
});

describe('an output', () => {
  const at = (...volts: number[]) => volts.map((value) => millivolts(value * 1000));

  it('is marked for AC, more than 9 V and plus on the pin of its own lead', () => {
    expect(outputHazards(bankFrom(1, 1), at(9))).toEqual([]);
    expect(outputHazards(bankFrom(1, 1), at(6, 9))).toEqual([]);
    expect(outputHazards(bankFrom(1, 1, { power: 'AC', polarity: null }), at(9))).toEqual(['AC']);
    expect(outputHazards(bankFrom(1, 1, { polarity: 'centre-positive' }), at(9, 18))).toEqual(['over 9 V', 'plus pin']);
    expect(outputHazards(bankFrom(1, 1, { polarity: 'either' }), at(9))).toEqual([]);
  });
});

it('names pedals of the plan alone', () => {
  const board = boardOf([pedalOf('one')]);
  const speech = speechOf(kitOf(board, catalogue));
  expect(() => feedHazards(speech, { grounds: [] }, { ...feedOf('one', 'apart', 1), pedal: pedalId('gone') })).toThrow(
    RangeError,
  );
});

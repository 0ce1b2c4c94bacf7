import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { partId } from '../../../src/domain/quantities.js';
import { namedFeeds, type LoadedUnit } from '../../../src/formulation/named-feeds.js';
import { questionOf } from '../../../src/formulation/question.js';
import type { ChainPlace, ChainPool, SoloUse } from '../../../src/loadout/uses.js';
import { bankOf, boardOf, catalogueOf, listed, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const supply = supplyOf('supply', 10, [
  bankOf(2, [settingOf(9, 100), settingOf(12, 100)]),
  bankOf(2, [settingOf(18, 100)]),
]);

const solo = (pedal: number, bank: number, more: Partial<SoloUse> = {}): SoloUse => ({
  pedal,
  outputs: [{ bank, setting: 0 }],
  join: null,
  exit: { plug: 'barrel-2.1', polarities: ['centre-negative'] },
  route: [],
  ...perPedalTier(() => false),
  weights: [],
  ...more,
});

const unitOf = (...uses: readonly SoloUse[]): LoadedUnit => ({
  supply,
  unit: null,
  hung: uses.map((use) => ({ kind: 'solo', use })),
});

type Setup = { readonly parts?: readonly Part[]; readonly owned?: Readonly<Record<string, number>> };

function feeds(pedals: readonly Pedal[], units: readonly LoadedUnit[], { parts = [], owned = {} }: Setup = {}) {
  const ownedParts = new Map(Object.entries(owned).map(([id, count]) => [partId(id), count]));
  const board = boardOf(pedals, { owned: { supplies: new Map(), parts: ownedParts } });
  const of = questionOf(kitOf(board, catalogueOf([supply], parts)), { tiers: [], partial: true });
  return namedFeeds(units, of);
}

const lines = (...given: Parameters<typeof feeds>): readonly string[] =>
  feeds(...given).map((feed) =>
    [feed.pedal, feed.unit, feed.outputs.join('+'), feed.join?.part, feed.chain, ...feed.adapters]
      .filter((each) => each !== undefined && each !== null)
      .join(' '),
  );

const one = pedalOf('one', 10);
const two = pedalOf('two', 20);
const same = ['a', 'b', 'c'].map((id) => pedalOf(id, 10));

describe('named feeds', () => {
  it('stand in the order of the board; units and outputs are numbered by their first pedals', () => {
    const units = [unitOf(solo(1, 1), solo(1, 0)), unitOf(solo(0, 1), solo(1, 0))];
    const pedals = [one, ...['x', 'y', 'z'].map((id) => pedalOf(id, 20))];
    // The second unit holds the board's first pedal, and so becomes unit 1.
    const found = lines(pedals, units);
    expect(found[0]).toBe('one 1 3');
    expect(found.map((line) => line.split(' ')[0])).toEqual(['one', 'x', 'y', 'z']);
    expect(found.map((line) => line.slice(line.indexOf(' ') + 1)).sort()).toEqual(['1 1', '1 3', '2 1', '2 3']);
  });

  it('have the outputs of a bank in the order of the board, whatever that of the loadout', () => {
    expect(lines([one, two], [unitOf(solo(1, 0), solo(0, 0))])).toEqual(['one 1 1', 'two 1 2']);
    const three = pedalOf('three', 30);
    const units = [unitOf(solo(2, 0), solo(1, 0)), unitOf(solo(0, 0))];
    expect(lines([one, two, three], units)).toEqual(['one 1 1', 'two 2 1', 'three 2 2']);
  });

  it('give every output of a bank once', () => {
    expect(lines(same, [unitOf(solo(0, 0), solo(0, 1), solo(0, 0))])).toHaveLength(3);
    const outputs = feeds(same, [unitOf(solo(0, 0), solo(0, 1), solo(0, 0))]).flatMap((feed) => feed.outputs);
    expect([...outputs].sort()).toEqual([1, 2, 3]);
  });

  it('leave out units on which nothing hangs', () => {
    expect(lines([one], [unitOf(), unitOf(solo(0, 0))])).toEqual(['one 1 1']);
  });

  it('say at which volts each output stands', () => {
    const join = {
      outputs: [
        { bank: 0, setting: 1 },
        { bank: 1, setting: 0 },
      ],
      join: { mode: 'series', lead: 0 },
    } as const;
    const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
    const pedal = pedalOf('high', 10, { accepts: listed(30) });
    expect(feeds([pedal], [unitOf(solo(0, 0, join))], { parts: [stack] })).toMatchObject([
      { outputs: [1, 3], settings: [12000, 18000], join: { mode: 'series', part: 'stack' } },
    ]);
  });

  it('take owned leads first, then the cheapest', () => {
    const lead = (id: string, price: number, stock: number | null = null): Part =>
      partOf(id, price, { kind: 'adapter' }, { gives: 'jack-3.5', stock });
    const parts = [lead('dear', 9), lead('cheap', 3, 1), lead('owned', 20)];
    const units = [unitOf(...[0, 0, 1].map((bank) => solo(0, bank, { route: [0] })))];
    const found = feeds(same, units, { parts, owned: { owned: 1 } }).flatMap(({ adapters }) => adapters);
    expect(found).toEqual(['owned', 'cheap', 'dear']);
  });

  it('share the lead of a chain', () => {
    const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
    const place = (pedal: number): ChainPlace => ({
      pedal,
      route: [],
      ...perPedalTier(() => false),
      load: 1n,
      surge: 1n,
      weights: [],
    });
    const pool: ChainPool = {
      output: { bank: 1, setting: 0 },
      exit: { plug: 'barrel-2.1', polarities: ['centre-negative'] },
      mode: { ground: 'negative', noise: 'any' },
      rating: 100n,
      leads: [{ kind: 0, tails: 5 }],
      places: [],
    };
    const unit: LoadedUnit = {
      supply,
      unit: null,
      hung: [{ kind: 'chain', pool, lead: 0, places: [place(1), place(0)] }],
    };
    expect(lines([one, two], [unit], { parts: [fan] })).toEqual(['one 1 3 fan', 'two 1 3 fan']);
  });

  it('are refused where more is used than there is', () => {
    expect(() => feeds([one], [unitOf(solo(0, 0), solo(0, 0))])).toThrow(RangeError);
    const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true, stock: 1 });
    const units = [unitOf(solo(0, 0, { route: [0] }), solo(0, 0, { route: [0] }))];
    expect(() => feeds(same, units, { parts: [flip] })).toThrow(RangeError);
  });
});

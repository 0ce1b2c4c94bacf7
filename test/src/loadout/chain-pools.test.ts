import { describe, expect, it } from 'vitest';

import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Bank } from '../../../src/domain/supply.js';
import { chainPools } from '../../../src/loadout/chain-pools.js';
import { totalLimits } from '../../../src/loadout/totals.js';
import type { ChainPool } from '../../../src/loadout/uses.js';
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

const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });
const flip = partOf('flip', 4, { kind: 'adapter' }, { reverses: true });
const two = [pedalOf('one', 10), pedalOf('two', 20)];

type Setup = {
  readonly pedals?: readonly Pedal[];
  readonly parts?: readonly Part[];
  readonly bank?: Partial<Bank>;
  readonly policy?: Policy;
};

const settings = [settingOf(9, 100)];

function setUp({ pedals = two, parts = [fan], bank = {}, policy = policyOf() }: Setup) {
  const bench = benchOf(pedals, parts, policy);
  const supply = supplyOf('supply', 10, [bankOf(2, settings, bank)]);
  const pools = chainPools(supply, totalLimits(supply, policy, pedals), bench);
  const idOf = (pedal: number) => bench.classes[pedal]?.like.id ?? '';
  const placesOf = (pool: ChainPool): readonly string[] =>
    pool.places.map(({ pedal, route }) => [idOf(pedal), ...idsOf(route, bench.kinds)].join(' '));
  return { pools, bench, places: pools.map(placesOf) };
}

describe('chains', () => {
  it('carry the pedals that suit their output', () => {
    const { pools, places } = setUp({});
    expect(places).toEqual([['one', 'two']]);
    expect(pools).toMatchObject([
      { output: { bank: 0, setting: 0 }, rating: 100_000n, leads: [{ kind: 0, tails: 5 }] },
    ]);
  });

  it.each<[string, Setup]>([
    ['the player wants none', { policy: policyOf({ chains: 'never' }) }],
    ['there is no chain lead', { parts: [flip] }],
    ['the chain lead does not fit', { parts: [{ ...fan, fits: 'jack-3.5' }] }],
    ['the output gives AC', { bank: { power: 'AC', polarity: null } }],
    ['there is but one pedal', { pedals: two.slice(0, 1) }],
    ['one of two wants an output of its own', { pedals: [pedalOf('one', 10), pedalOf('two', 20, { alone: true })] }],
    ['one of two wants other volts', { pedals: [pedalOf('one', 10), pedalOf('two', 20, { accepts: listed(12) })] }],
    [
      'one of two wants the other polarity',
      { pedals: [pedalOf('one', 10), pedalOf('two', 9, { polarity: 'centre-positive' })] },
    ],
    ['one of two has the other ground', { pedals: [pedalOf('one', 10), pedalOf('two', 9, { ground: 'positive' })] }],
    ['one of two is too much by itself', { pedals: [pedalOf('one', 10), pedalOf('two', 100.001)] }],
    [
      'one of two takes too much to start',
      { pedals: [pedalOf('one', 10), pedalOf('two', 9, { startup: milliamps(100.001) })] },
    ],
  ])('are none where %s', (_, given) => {
    expect(setUp(given).pools).toEqual([]);
  });

  it('may be made of two pedals that are alike', () => {
    expect(setUp({ pedals: [pedalOf('one', 10), pedalOf('same', 10)] }).places).toEqual([['one']]);
  });

  it('admit a pedal whose load × chained is the whole rating, and no more', () => {
    const policy = policyOf({ headroom: { alone: factor(1), chained: factor(2), supply: factor(1) } });
    const with50 = (more: number) => [...two, pedalOf('three', 50 + more)];
    expect(setUp({ pedals: with50(0), policy }).places).toEqual([['one', 'two', 'three']]);
    expect(setUp({ pedals: with50(0.001), policy }).places).toEqual([['one', 'two']]);
  });

  it('tell the settings of an output apart', () => {
    const pedals = two.map((pedal) => ({ ...pedal, accepts: listed(9, 12), prefers: volts(12) }));
    const { pools } = setUp({ pedals, bank: { settings: [settingOf(9, 100), settingOf(12, 80)] } });
    expect(pools.map(({ output, rating }) => [output.setting, rating])).toEqual([
      [0, 100_000n],
      [1, 80_000n],
    ]);
    expect(pools.map(({ places }) => places.map(({ offPreferred }) => offPreferred))).toEqual([
      [true, true],
      [false, false],
    ]);
  });

  it('of one exit share a pool, whatever their tails', () => {
    const { pools } = setUp({ parts: [fan, pair] });
    expect(pools.map(({ leads }) => leads)).toEqual([
      [
        { kind: 0, tails: 5 },
        { kind: 1, tails: 2 },
      ],
    ]);
  });

  it('behind a reversing lead have the other polarity', () => {
    const positive = two.map((pedal): Pedal => ({ ...pedal, polarity: 'centre-positive' }));
    expect(setUp({ pedals: positive }).pools).toEqual([]);
    const turned = setUp({ pedals: positive, parts: [fan, { ...pair, reverses: true }] });
    expect(turned.pools.map(({ leads }) => leads)).toEqual([[{ kind: 1, tails: 2 }]]);
  });

  it('see one position of a polarity switch together, and adapters on their tails', () => {
    const mixed = [pedalOf('one', 10), pedalOf('two', 20), pedalOf('three', 5, { polarity: 'centre-positive' })];
    const plain = setUp({ pedals: mixed, bank: { polarity: 'either' } });
    expect(plain.places).toEqual([['one', 'two']]);
    const { places } = setUp({ pedals: mixed, parts: [fan, flip], bank: { polarity: 'either' } });
    expect(places).toEqual([
      ['one', 'two', 'three flip'],
      ['one flip', 'two flip', 'three'],
    ]);
  });

  it('take the larger of startup and load for the moment of switching on', () => {
    const pedals = [pedalOf('one', 10, { startup: milliamps(90) }), pedalOf('two', 20, { startup: milliamps(5) })];
    const [pool] = setUp({ pedals }).pools;
    expect(pool?.places.map(({ load, surge }) => [load, surge])).toEqual([
      [10_000n, 90_000n],
      [20_000n, 20_000n],
    ]);
  });

  it('weigh every pedal on the totals', () => {
    const bench = benchOf(two, [fan]);
    const supply = supplyOf('supply', 10, [bankOf(2, settings, { total: powerTotal(1) })], { total: currentTotal(90) });
    const [pool] = chainPools(supply, totalLimits(supply, bench.policy, two), bench);
    expect(pool?.places.map(({ weights }) => weights)).toEqual([
      [90_000_000n, 10_000n],
      [180_000_000n, 20_000n],
    ]);
  });

  it('have a ground each, in the modes that a chain can be of', () => {
    const pedals = [
      pedalOf('echo', 10, { digital: true }),
      pedalOf('fuzz', 20, { highGain: true }),
      pedalOf('boost', 5),
    ];
    const { pools, places } = setUp({ pedals });
    expect(pools.map(({ mode }) => mode.noise)).toEqual(['quiet', 'noisy']);
    expect(places).toEqual([
      ['fuzz', 'boost'],
      ['echo', 'fuzz', 'boost'],
    ]);
  });

  it('on a common ground may be without the digital pedal that exposes them from another output', () => {
    const echo = pedalOf('echo', 10, { digital: true, alone: true });
    const pedals = [echo, pedalOf('fuzz', 20, { highGain: true }), pedalOf('boost', 5)];
    const isolated = setUp({ pedals });
    expect(isolated.pools.map(({ mode }) => mode.noise)).toEqual(['quiet']);
    const common = setUp({ pedals, bank: { isolated: false } });
    expect(common.pools.map(({ mode }) => mode.noise)).toEqual(['quiet', 'noisy']);
    expect(common.places).toEqual([
      ['fuzz', 'boost'],
      ['fuzz', 'boost'],
    ]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../../src/domain/pedal-tier.js';
import type { Policy } from '../../../../src/domain/board.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { chainHolds, packChains } from '../../../../bench/rival/formulation/chain-packing.js';
import type { GroundMode } from '../../../../src/loadout/ground-mode.js';
import type { ChainPlace, ChainPool } from '../../../../src/loadout/uses.js';
import { factor, pedalOf, policyOf } from '../../../support/builders.js';
import { share, trying } from '../../../support/runs.js';

const analogue = pedalOf('analogue', 10);
const digital = pedalOf('digital', 10, { digital: true, highGain: true });
const kinds: readonly Pedal[] = [analogue, digital];

const poolOf = (rating: number, noise: GroundMode['noise'] = 'noisy'): ChainPool => ({
  output: { bank: 0, setting: 0 },
  exit: { plug: 'barrel-2.1', polarities: ['centre-negative'] },
  mode: { ground: 'negative', noise },
  rating: BigInt(rating),
  leads: [],
  places: [],
});

const place = (load: number, surge = load, pedal = 0): ChainPlace => ({
  pedal,
  route: [],
  ...perPedalTier(() => false),
  load: BigInt(load),
  surge: BigInt(surge),
  weights: [],
});

const chainedAt = (value: number): Policy =>
  policyOf({ headroom: { alone: factor(1), chained: factor(value), supply: factor(1) } });

const pack = (pool: ChainPool, tails: readonly number[], places: readonly ChainPlace[], chained = 1) =>
  packChains(pool, tails, places, ({ pedal }) => kinds[pedal] ?? analogue, chainedAt(chained));

describe('a chain', () => {
  it('carries loads up to the rating over the headroom', () => {
    const pair = [place(30), place(20)];
    expect(chainHolds(pair, poolOf(100), chainedAt(2))).toBe(true);
    expect(chainHolds(pair, poolOf(99), chainedAt(2))).toBe(false);
  });

  it('starts all pedals at once, without headroom', () => {
    const pair = [place(10, 60), place(40)];
    expect(chainHolds(pair, poolOf(100), chainedAt(1))).toBe(true);
    expect(chainHolds(pair, poolOf(99), chainedAt(1))).toBe(false);
    expect(chainHolds([place(10, 60), place(10, 60)], poolOf(120), chainedAt(1))).toBe(true);
    expect(chainHolds([place(10, 60), place(10, 60)], poolOf(119), chainedAt(1))).toBe(false);
  });
});

describe('packing chains', () => {
  it('gives every chain two pedals or more, and none more than it has tails', () => {
    const four = [place(1), place(1), place(1), place(1)];
    expect(pack(poolOf(10), [2, 2], four)?.map(({ length }) => length)).toEqual([2, 2]);
    expect(pack(poolOf(10), [4, 2], four)).not.toBeNull();
    expect(pack(poolOf(10), [3], four)).toBeNull();
    expect(pack(poolOf(10), [4, 4, 4], four)).toBeNull();
    expect(pack(poolOf(10), [4], [place(1)])).toBeNull();
    expect(pack(poolOf(10), [], [])).toEqual([]);
  });

  it('finds the one way where the largest do not go together', () => {
    // 6 + 4 and 5 + 5; 6 + 5 is too much.
    const packed = pack(poolOf(10), [2, 2], [place(5), place(4), place(6), place(5)]);
    const loads = packed?.map((chain) => chain.map(({ load }) => Number(load)).sort());
    expect(loads?.sort()).toEqual([
      [4, 6],
      [5, 5],
    ]);
    expect(pack(poolOf(9), [2, 2], [place(5), place(4), place(6), place(5)])).toBeNull();
  });

  it('puts one digital pedal on a chain that is meant for one', () => {
    const places = [place(1, 1, 1), place(1), place(1, 1, 1), place(1)];
    const packed = pack(poolOf(10, 'sole'), [3, 3], places);
    expect(packed?.map((chain) => chain.filter(({ pedal }) => pedal === 1).length)).toEqual([1, 1]);
    expect(pack(poolOf(10, 'sole'), [4], places)).toBeNull();
    expect(pack(poolOf(10, 'noisy'), [4], places)).not.toBeNull();
  });
});

type Tiny = {
  readonly rating: number;
  readonly tails: readonly number[];
  readonly places: readonly ChainPlace[];
  readonly chained: number;
  readonly noise: GroundMode['noise'];
};

const tiny: fc.Arbitrary<Tiny> = fc.record({
  rating: fc.integer({ min: 10, max: 30 }),
  tails: fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 1, maxLength: 3 }),
  places: fc.array(
    fc
      .record({
        load: fc.integer({ min: 1, max: 8 }),
        extra: fc.constantFrom(0, 0, 3, 8),
        pedal: fc.constantFrom(0, 0, 1),
      })
      .map(({ load, extra, pedal }) => place(load, load + extra, pedal)),
    { minLength: 2, maxLength: 6 },
  ),
  chained: fc.constantFrom(1, 1.5),
  noise: fc.constantFrom<GroundMode['noise']>('noisy', 'sole', 'any'),
});

/** Counted anew from nothing, in the plain numbers of the case. */
function holds(chain: readonly ChainPlace[], tails: number, { rating, chained, noise }: Tiny): boolean {
  const load = chain.reduce((sum, each) => sum + Number(each.load), 0);
  return (
    chain.length >= 2 &&
    chain.length <= tails &&
    load * chained <= rating &&
    chain.reduce((sum, each) => sum + Number(each.surge), 0) <= rating &&
    (noise !== 'sole' || chain.filter(({ pedal }) => pedal === 1).length <= 1)
  );
}

/** Tries every chain for every place. */
function canPack(of: Tiny): boolean {
  const tryFrom = (rest: readonly ChainPlace[], chains: readonly (readonly ChainPlace[])[]): boolean => {
    const [first, ...others] = rest;
    if (first === undefined) return chains.every((chain, index) => holds(chain, of.tails[index] ?? 0, of));
    return chains.some((chain, index) => tryFrom(others, chains.with(index, [...chain, first])));
  };
  return tryFrom(
    of.places,
    of.tails.map(() => []),
  );
}

describe('a packing', () => {
  it('is found exactly when trying every chain for every pedal finds one, and holds what it says', () => {
    const seen = { packed: 0, impossible: 0 };
    fc.assert(
      fc.property(tiny, (of) => {
        const packed = pack(poolOf(of.rating, of.noise), of.tails, of.places, of.chained);
        const possible = canPack(of);
        seen[possible ? 'packed' : 'impossible'] += 1;
        expect(packed !== null).toBe(possible);
        if (packed === null) return;
        expect(packed.map((chain, index) => holds(chain, of.tails[index] ?? 0, of))).toEqual(of.tails.map(() => true));
        expect(packed.flat()).toHaveLength(of.places.length);
        expect(new Set(packed.flat())).toEqual(new Set(of.places));
      }),
      trying(1500),
    );
    expect(seen.packed).toBeGreaterThan(share(200));
    expect(seen.impossible).toBeGreaterThan(share(200));
  });
});

import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { candidatesOf, leadCostsOf, placeValue } from '../../../src/loadout/chain-pattern.js';
import { framesOf } from '../../../src/loadout/frame.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, listed, partOf, pedalOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const fan = partOf('fan', 8, { kind: 'chain', tails: 5 });
const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });
const triple = partOf('triple', 6, { kind: 'chain', tails: 3 });

type Given = {
  readonly pedals?: readonly Pedal[];
  readonly parts?: readonly Part[];
  /** By the ids of pedals and parts. */
  readonly duals: Readonly<Record<string, number>>;
  readonly more?: Partial<LoadoutDuals>;
};

/** The only sort of chain of a 9 V supply with a common ground, in its last mode. */
function setUp({
  pedals = [pedalOf('a', 10), pedalOf('b', 20)],
  parts = [fan, pair, triple],
  duals,
  more = {},
}: Given) {
  const bench = benchOf(pedals, parts);
  const frames = framesOf(
    usesOf(supplyOf('box', 10, [bankOf(2, [settingOf(9, 100)], { isolated: false })]), bench),
    bench,
  );
  const chain = frames.at(-1)?.chains[0];
  if (chain === undefined) throw new RangeError('there is no chain');
  const all: LoadoutDuals = {
    pedals: Float64Array.from(bench.classes, ({ like }) => duals[like.id] ?? 0),
    leads: Float64Array.from(bench.kinds, ({ supplyOf: [first] }) => duals[first?.part ?? ''] ?? 0),
    ...perPedalTier(() => 0),
    exposed: 0,
    newlyExposed: 0,
    moved: 0,
    ...more,
  };
  const idOf = (pedal: number) => bench.classes[pedal]?.like.id ?? '';
  return { chain, all, bench, idOf };
}

it('a place is worth what its pedal gains by taking a lead on top', () => {
  const bench = benchOf(
    ['a', 'b'].map((id) => pedalOf(id, 10, { inlet: 'jack-3.5' })),
    [partOf('mini', 3, { kind: 'adapter' }, { gives: 'jack-3.5' })],
  );
  const [frame] = framesOf(usesOf(supplyOf('box', 10, [bankOf(2, [settingOf(9, 100)])]), bench), bench);
  const [option] = frame?.solos ?? [];
  if (option === undefined) throw new RangeError('no pedal hangs by itself');
  const zero = { ...perPedalTier(() => 0), exposed: 0, newlyExposed: 0, moved: 0 };
  const duals = { ...zero, pedals: Float64Array.of(50), leads: Float64Array.of(3) };
  expect(placeValue(option, duals)).toBe(47);
  expect(placeValue(option, { ...duals, taking: new Map([[0, Float64Array.of(-7)]]) })).toBe(40);
  expect(placeValue(option, { ...duals, taking: new Map([[1, Float64Array.of(-7)]]) })).toBe(47);
});

describe('the lead of a chain', () => {
  const costs = (duals: Given['duals'], parts?: readonly Part[]) => {
    const { chain, all, bench } = setUp({ duals, ...(parts === undefined ? {} : { parts }) });
    return leadCostsOf(chain, all).map(({ kind, cost }) => [bench.kinds[kind]?.supplyOf[0]?.part ?? null, cost]);
  };

  it('is the cheapest that has tails enough', () => {
    expect(costs({ pair: 3, triple: 4, fan: 9 }).slice(2)).toEqual([
      ['pair', 3],
      ['triple', 4],
      ['fan', 9],
      ['fan', 9],
    ]);
    expect(
      costs({ pair: 7, triple: 4, fan: 4 })
        .slice(2)
        .map(([, cost]) => cost),
    ).toEqual([4, 4, 4, 4]);
    expect(
      costs({ pair: 5, triple: 6, fan: 1 })
        .slice(2)
        .map(([part]) => part),
    ).toEqual(['fan', 'fan', 'fan', 'fan']);
  });

  it('may be worth having', () => {
    expect(costs({ pair: -3 }, [pair]).slice(2)).toEqual([['pair', -3]]);
  });

  it('goes as far as the longest lead', () => {
    expect(costs({}, [pair])).toHaveLength(3);
    expect(costs({}, [pair, triple])).toHaveLength(4);
  });
});

describe('a place in a chain', () => {
  // None of them is there without end: then any route may be needed.
  const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5', stock: 9 });
  const clip = partOf('clip', 5, { kind: 'adapter' }, { gives: 'snap-clip', stock: 1 });
  const unclip = partOf('unclip', 5, { kind: 'adapter' }, { fits: 'snap-clip', gives: 'jack-3.5', stock: 1 });

  it("is worth the pedal's dual less its leads, its volts and its company", () => {
    const pedals = [
      pedalOf('echo', 10, { digital: true, accepts: listed(9, 12), prefers: volts(12) }),
      pedalOf('fuzz', 20, { highGain: true, inlet: 'jack-3.5' }),
    ];
    const more = { offPreferred: 5, exposed: 20, newlyExposed: 10 };
    const { chain, all, idOf } = setUp({ pedals, parts: [fan, mini], duals: { echo: 100, fuzz: 50, mini: 7 }, more });
    const worth = Object.fromEntries(chain.places.map((place) => [idOf(place.pedal), placeValue(place, all)]));
    expect(worth).toEqual({ echo: 95, fuzz: 13 });
  });

  it('goes by the best route that there is', () => {
    const pedals = [pedalOf('a', 10, { inlet: 'jack-3.5' }), pedalOf('b', 20)];
    const best = (duals: Given['duals']) => {
      const { chain, all, idOf } = setUp({ pedals, parts: [fan, mini, clip, unclip], duals: { a: 50, ...duals } });
      const candidate = candidatesOf(chain, all, [1, 1]).find(({ place }) => idOf(place.pedal) === 'a');
      return [candidate?.value, candidate?.place.leads.length];
    };
    expect(best({ mini: 4, clip: 1, unclip: 2 })).toEqual([47, 2]);
    expect(best({ mini: 3, clip: 2, unclip: 2 })).toEqual([47, 1]);
  });

  it('is a candidate where there is such a pedal', () => {
    const pedals = [pedalOf('a', 10), pedalOf('same', 10), pedalOf('b', 20), pedalOf('c', 50), pedalOf('d', 5)];
    const { chain, all, idOf } = setUp({ pedals, duals: { a: 11, b: 30, c: 50, d: -1 } });
    const found = (counts: readonly number[]) =>
      candidatesOf(chain, all, counts)
        .map(({ place, value, count }) => [idOf(place.pedal), value, count])
        .sort();
    expect(found([2, 1, 1, 1])).toEqual([
      ['a', 11, 2],
      ['b', 30, 1],
      ['c', 50, 1],
      ['d', -1, 1],
    ]);
    expect(found([1, 0, 1, 0])).toEqual([
      ['a', 11, 1],
      ['c', 50, 1],
    ]);
  });
});

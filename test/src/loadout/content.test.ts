import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { allAtTheirBest, chainItem, jobOf, FrameRoom, type ContentItem } from '../../../src/loadout/content.js';
import { framesOf } from '../../../src/loadout/frame.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, currentTotal, listed, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const fan = partOf('fan', 8, { kind: 'chain', tails: 4 });
const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });
const stack = partOf('stack', 9, { kind: 'join', mode: 'series' });
const mini = partOf('mini', 5, { kind: 'adapter' }, { gives: 'jack-3.5' });

const pedals = [
  pedalOf('a', 10),
  pedalOf('same', 10),
  pedalOf('b', 20),
  pedalOf('jack', 30, { inlet: 'jack-3.5' }),
  pedalOf('high', 40, { accepts: listed(18) }),
];
const bench = benchOf(pedals, [fan, pair, stack, mini]);
const banks = [
  bankOf(3, [settingOf(9, 100)], { joins: ['series'] }),
  bankOf(1, [settingOf(9, 100)], { joins: ['series'] }),
];
const supply = supplyOf('supply', 10, banks, { total: currentTotal(120) });

/** Dual prices of a, b, jack and high, and what the leads cost. */
function job(
  duals: readonly number[],
  counts: readonly number[] = [2, 1, 1, 1],
  leads: Readonly<Record<string, number>> = {},
) {
  const [frame] = framesOf(usesOf(supply, bench), bench);
  if (frame === undefined) throw new RangeError('the supply can carry nothing');
  const all: LoadoutDuals = {
    pedals: Float64Array.from(duals),
    leads: Float64Array.from(bench.kinds, ({ supplyOf: [first] }) => leads[first?.part ?? ''] ?? 0),
    ...perPedalTier(() => 0),
    exposed: 0,
    newlyExposed: 0,
    moved: 0,
  };
  return jobOf(frame, all, counts);
}

const idOf = (pedal: number | undefined): string => bench.classes[pedal ?? -1]?.like.id ?? '';
const soloOf = (items: readonly ContentItem[], id: string, banksTaken: readonly number[]): ContentItem => {
  const item = items.find((each) => idOf(each.pedals[0]) === id && String(each.banks) === String(banksTaken));
  if (item === undefined) throw new RangeError(`${id} does not hang there`);
  return item;
};

describe('what is worth hanging on a unit', () => {
  it('by itself is every pedal that is worth more than its leads, on every output', () => {
    const { solos } = job([5, -1, 10, 50], [2, 1, 1, 1], { mini: 4, stack: 20 });
    const told = solos.map(({ pedals: [pedal], value, banks: taken }) => [idOf(pedal), value, taken.join('+')]);
    expect(told.sort()).toEqual([
      ['a', 5, '0'],
      ['a', 5, '1'],
      ['high', 30, '0+0'],
      ['high', 30, '0+1'],
      ['jack', 6, '0'],
      ['jack', 6, '1'],
    ]);
  });

  it('is none that is not there, or that costs as much as it is worth', () => {
    const { solos } = job([5, 5, 4, 20], [0, 1, 1, 1], { mini: 4, stack: 20 });
    expect(new Set(solos.map(({ pedals: [pedal] }) => idOf(pedal)))).toEqual(new Set(['b']));
  });

  it('in chains is what they have any use for', () => {
    expect(job([5, -1, 0, 50]).pools.map(({ chain }) => chain.bank)).toEqual([0, 1]);
    expect(job([5, -1, 0, 50]).pools[0]?.candidates.map(({ place }) => idOf(place.pedal))).toEqual(['a', 'b', 'jack']);
    // What hangs in no chain makes none worth having.
    expect(job([0, -1, 0, 50]).pools).toEqual([]);
  });

  it('is worth no more than every pedal at its best', () => {
    expect(allAtTheirBest(job([5, -1, 10, 50], [2, 1, 1, 1], { mini: 4, stack: 20 }))).toBe(2 * 5 + 6 + 30);
    expect(allAtTheirBest(job([-5, -1, 0, 0]))).toBe(0);
  });
});

describe('a chain as one item', () => {
  const leads = { pair: 3, fan: 5, mini: 1 };

  it('has the value of its pedals less the cheapest lead for them', () => {
    const [pool] = job([5, 7, 9, 0], undefined, leads).pools;
    if (pool === undefined) throw new RangeError('there is no chain');
    const placeOf = (id: string) => pool.candidates.flatMap(({ place }) => (idOf(place.pedal) === id ? [place] : []));
    const short = chainItem(pool, [...placeOf('a'), ...placeOf('b')]);
    expect([short.value, short.banks, short.pedals.map(idOf)]).toEqual([9, [0], ['a', 'b']]);
    expect(short.content).toMatchObject({
      kind: 'chain',
      pattern: { value: 9, lead: bench.kinds.findIndex(({ role }) => role.kind === 'chain' && role.tails === 2) },
    });
    const long = chainItem(pool, [...placeOf('a'), ...placeOf('a'), ...placeOf('jack')]);
    expect([long.value, long.pedals.map(idOf)]).toEqual([5 + 5 + 8 - 5, ['a', 'a', 'jack']]);
  });

  it('weighs what its pedals weigh', () => {
    const { pools, solos } = job([5, 7, 9, 0], undefined, leads);
    const [pool] = pools;
    if (pool === undefined) throw new RangeError('there is no chain');
    const places = pool.candidates.map(({ place }) => place);
    const alone = ['a', 'b', 'jack'].map((id) => soloOf(solos, id, [0]).weights[0] ?? NaN);
    expect(chainItem(pool, places).weights).toEqual([alone.reduce((sum, weight) => sum + weight, 0)]);
  });
});

describe('the room on a unit', () => {
  const given = job([5, 7, 9, 50]);
  const [a, b, jack] = ['a', 'b', 'jack'].map((id) => soloOf(given.solos, id, [0]));
  const high = soloOf(given.solos, 'high', [0, 0]);
  const across = soloOf(given.solos, 'high', [0, 1]);
  if (a === undefined || b === undefined || jack === undefined) throw new RangeError('there is none');

  /** Whether an item fits when the others have been taken. */
  function fitsAfter(item: ContentItem, ...others: readonly ContentItem[]): boolean {
    const room = new FrameRoom(given);
    for (const other of others) {
      expect(room.fits(other)).toBe(true);
      room.take(other);
    }
    return room.fits(item);
  }

  it('is its outputs', () => {
    expect(fitsAfter(a, a, b)).toBe(true);
    expect(fitsAfter(jack, a, b, a)).toBe(false);
    expect(fitsAfter(high, a)).toBe(true);
    expect(fitsAfter(high, a, b)).toBe(false);
    expect(fitsAfter(across, a, a)).toBe(true);
    expect(fitsAfter(across, a, a, b)).toBe(false);
  });

  it('is the pedals that there are', () => {
    expect(fitsAfter(a, a)).toBe(true);
    expect(fitsAfter(a, a, a)).toBe(false);
    expect(fitsAfter(b, b)).toBe(false);
    // Two of a class in one item need both.
    const twice = { ...a, pedals: [...a.pedals, ...a.pedals] };
    expect([fitsAfter(twice), fitsAfter(twice, a)]).toEqual([true, false]);
  });

  it('is what its limits bear', () => {
    // In series the 40 mA count on both outputs: with 30 mA they leave 10 of 120 mA.
    expect(fitsAfter(a, high, jack)).toBe(false);
    expect(fitsAfter(a, across, jack)).toBe(true);
    expect(fitsAfter(b, across, jack)).toBe(false);
  });

  it('is counted for each unit by itself', () => {
    expect(fitsAfter(b)).toBe(true);
    expect(given.frame.outputs).toEqual([3, 1]);
    expect(given.counts).toEqual([2, 1, 1, 1]);
  });
});

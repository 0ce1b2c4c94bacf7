import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import type { ChainCandidate, LeadCosts } from '../../../src/loadout/chain-pattern.js';
import { bestChains, type ChainQuestion } from '../../../src/loadout/chain-search.js';
import type { ChainOption, PlaceOption } from '../../../src/loadout/frame.js';
import { share, trying } from '../../support/runs.js';

/** One class of pedals on a chain; what is left out is nothing. */
type Draft = {
  readonly value: number;
  readonly load: number;
  /** By how much more it takes at switch-on. */
  readonly excess?: number;
  readonly count?: number;
  readonly sole?: boolean;
};

type Given = {
  readonly drafts: readonly Draft[];
  readonly mostLoad?: number;
  readonly mostSurge?: number;
  /** What a lead for two, three … pedals costs. */
  readonly leads?: readonly number[];
};

function questionOf({ drafts, mostLoad = 100, mostSurge = 100, leads = [0, 0, 0] }: Given): ChainQuestion {
  const candidates = drafts.map(({ value, load, excess = 0, count = 1, sole = false }, pedal): ChainCandidate => {
    const place = { pedal, route: [], ...perPedalTier(() => false), load: 0n, surge: 0n, weights: [] };
    const option: PlaceOption = {
      place,
      pedal,
      leads: [],
      ...perPedalTier(() => 0),
      exposed: 0,
      newlyExposed: 0,
      moved: 0,
      load,
      surge: load + excess,
      weights: [],
      sole,
      begins: true,
    };
    return { place: option, value, count };
  });
  const chain: ChainOption = {
    pool: {
      output: { bank: 0, setting: 0 },
      exit: { plug: 'barrel-2.1', polarities: [] },
      mode: { ground: 'negative', noise: 'any' },
      rating: 0n,
      leads: [],
      places: [],
    },
    bank: 0,
    weights: [],
    mostLoad,
    mostSurge,
    mostTails: leads.length + 1,
    places: candidates.map(({ place }) => place),
  };
  const nothing: LeadCosts = [0, 1].map(() => ({ kind: -1, cost: Infinity }));
  return {
    chain,
    candidates,
    leads: [...nothing, ...leads.map((cost, kind) => ({ kind, cost }))],
  };
}

/** The most that a chain is worth, by trying all; −Infinity where there is none. */
function mostOf({ drafts, mostLoad = 100, mostSurge = 100, leads = [0, 0, 0] }: Given): number {
  const all = drafts.flatMap((draft) => Array.from({ length: draft.count ?? 1 }, () => draft));
  let most = -Infinity;
  for (let set = 0; set < 2 ** all.length; set += 1) {
    const chain = all.filter((_, index) => (set & (1 << index)) !== 0);
    const sum = (of: (draft: Draft) => number): number => chain.reduce((total, draft) => total + of(draft), 0);
    const load = sum((draft) => draft.load);
    const allowed =
      chain.length >= 2 &&
      load <= mostLoad &&
      sum((draft) => draft.load + (draft.excess ?? 0)) <= mostSurge &&
      sum(({ sole = false }) => (sole ? 1 : 0)) <= 1;
    if (allowed) most = Math.max(most, sum(({ value }) => value) - (leads[chain.length - 2] ?? Infinity));
  }
  return most;
}

/** The pedals of the best chain, by their place among the drafts, and the bound. */
function best(given: Given, floor = 0) {
  const { bound, found } = bestChains(questionOf(given), floor);
  const [first] = found;
  return { bound, pedals: first?.places.map(({ pedal }) => pedal).sort() ?? null, value: first?.value ?? null };
}

const three: readonly Draft[] = [
  { value: 10, load: 50 },
  { value: 9, load: 40 },
  { value: 6, load: 60 },
];

describe('the best chain', () => {
  it('has the most valuable pedals that its output can bear', () => {
    expect(best({ drafts: three })).toEqual({ bound: 19, pedals: [0, 1], value: 19 });
    expect(best({ drafts: three, mostLoad: 89 })).toEqual({ bound: 0, pedals: null, value: null });
    expect(best({ drafts: three, mostLoad: 150, mostSurge: 150 })).toEqual({ bound: 25, pedals: [0, 1, 2], value: 25 });
  });

  it('bears the startup of all of its pedals at once', () => {
    const starting = (excess: number): Given => ({ drafts: [{ value: 10, load: 50, excess }, ...three.slice(1)] });
    expect(best(starting(10)).pedals).toEqual([0, 1]);
    expect(best(starting(11))).toEqual({ bound: 15, pedals: [1, 2], value: 15 });
    const both = (mostSurge: number): Given => ({
      drafts: three.slice(0, 2).map((draft) => ({ ...draft, excess: 10 })),
      mostSurge,
    });
    expect(best(both(110)).pedals).toEqual([0, 1]);
    expect(best(both(109)).pedals).toBeNull();
  });

  it('has its lead paid, and no more pedals than that has tails', () => {
    const light: readonly Draft[] = [10, 9, 6].map((value) => ({ value, load: 10 }));
    expect(best({ drafts: light, leads: [5, 5] })).toEqual({ bound: 20, pedals: [0, 1, 2], value: 20 });
    expect(best({ drafts: light, leads: [5, 12] })).toEqual({ bound: 14, pedals: [0, 1], value: 14 });
    expect(best({ drafts: light, leads: [5] })).toEqual({ bound: 14, pedals: [0, 1], value: 14 });
  });

  it('is of two at the least, even if one of them is worth less than nothing', () => {
    expect(best({ drafts: [{ value: 10, load: 10 }] })).toMatchObject({ pedals: null });
    expect(
      best({
        drafts: [
          { value: 10, load: 10 },
          { value: -4, load: 1 },
        ],
      }),
    ).toMatchObject({ pedals: [0, 1], value: 6 });
    expect(
      best({
        drafts: [
          { value: 10, load: 10 },
          { value: -11, load: 1 },
        ],
      }),
    ).toMatchObject({ pedals: null });
    const alike = { value: 10, load: 10, count: 2 };
    expect(best({ drafts: [alike] })).toEqual({ bound: 20, pedals: [0, 0], value: 20 });
  });

  it('has one digital pedal where its ground holds only one', () => {
    const drafts = [
      { value: 10, load: 10, sole: true },
      { value: 9, load: 10, sole: true },
      { value: 1, load: 10 },
    ];
    expect(best({ drafts })).toEqual({ bound: 11, pedals: [0, 2], value: 11 });
  });

  it('is not told where it is worth no more than the floor', () => {
    expect(best({ drafts: three }, 18)).toEqual({ bound: 19, pedals: [0, 1], value: 19 });
    expect(best({ drafts: three }, 19)).toEqual({ bound: 19, pedals: null, value: null });
    expect(best({ drafts: [] }, 7)).toEqual({ bound: 7, pedals: null, value: null });
  });

  it('is told where it is worth less than nothing, if the floor is lower', () => {
    expect(best({ drafts: [{ value: -2, load: 1, count: 2 }] }, -Infinity)).toEqual({
      bound: -4,
      pedals: [0, 0],
      value: -4,
    });
  });

  it('gives up on a search that is too large, with a bound that holds', () => {
    // Values of no pattern: hardly any beginning replaces another.
    const drafts = Array.from({ length: 60 }, (_, index) => {
      const load = 1000 + ((index * 7919) % 997);
      return { value: 10 * load + ((index * 104_729) % 101), load, excess: (index * 31) % 89 };
    });
    const given = { drafts, mostLoad: 20_000, mostSurge: 20_100, leads: Array.from({ length: 24 }, () => 0) };
    const { bound, found } = bestChains(questionOf(given), 0);
    for (const { places, value } of found) {
      const sum = (of: (place: PlaceOption) => number): number => places.reduce((all, place) => all + of(place), 0);
      expect(sum(({ load }) => load)).toBeLessThanOrEqual(20_000);
      expect(sum(({ surge }) => surge)).toBeLessThanOrEqual(20_100);
      expect(value).toBeLessThanOrEqual(bound);
    }
    // All that fits in is worth at most this for each unit of load.
    expect(bound).toBeLessThanOrEqual(20_000 * 10.2);
    expect(found.length).toBeGreaterThan(0);
  });

  it('is proven where pedals are worth what they draw, and a place each, so that only what is left over tells', () => {
    const loads = [27, 27, 50, 50, 50, 75, 80, 100, 100, 120, 150, 150, 180, 400, 400, 500, 500, 650, 1500, 2700];
    const large = [3000, 3100, 3170, 4010, 4090, 5020, 6030];
    const drafts = [...loads, ...large].map((load) => ({ value: 2000 + load, load }));
    const given = { drafts, mostLoad: 13_333, mostSurge: 20_000, leads: Array.from({ length: 7 }, () => 0) };
    const { bound, value, pedals } = best(given);
    expect(bound).toBe(value);
    expect(pedals).toHaveLength(8);
    expect(value).toBeGreaterThan(8 * 2000 + 13_300);
  });

  const drafts = fc.array(
    fc.record({
      value: fc.integer({ min: -15, max: 60 }),
      load: fc.constantFrom(0, 5, 10, 20, 20, 25, 30, 45),
      excess: fc.constantFrom(0, 0, 0, 10, 40),
      count: fc.constantFrom(1, 1, 1, 2, 3),
      sole: fc.constantFrom(false, false, true),
    }),
    { maxLength: 6 },
  );
  const chains: fc.Arbitrary<Given> = fc.record({
    drafts,
    mostLoad: fc.constantFrom(50, 80, 100),
    mostSurge: fc.constantFrom(60, 100, 120),
    leads: fc.array(fc.nat({ max: 40 }), { minLength: 1, maxLength: 5 }).map((costs) => costs.sort((a, b) => a - b)),
  });

  const scaled = (given: Given, scale: number): Given => ({
    ...given,
    drafts: given.drafts.map((draft) => ({ ...draft, value: draft.value * scale })),
    leads: given.leads?.map((cost) => cost * scale) ?? [],
  });

  it('is what trying everything finds', () => {
    const seen = { found: 0, none: 0, long: 0 };
    const floors = fc.constantFrom<(most: number) => number>(
      () => 0,
      () => -100,
      (most) => most - 1,
      (most) => most,
      (most) => most + 5,
    );
    fc.assert(
      fc.property(chains, floors, fc.constantFrom(1, 2 ** 20), (small, floorFor, scale) => {
        const given = scaled(small, scale);
        const most = mostOf(given);
        const floor = most === -Infinity ? 0 : floorFor(most);
        const { bound, found } = bestChains(questionOf(given), floor);
        expect(bound).toBe(Math.max(most, floor));
        expect(found.length > 0).toBe(most > floor);
        seen[most > floor ? 'found' : 'none'] += 1;
        for (const [index, { places, value }] of found.entries()) {
          const pedals = places.map(({ pedal }) => pedal);
          const chain = given.drafts.map((draft, pedal) => ({
            ...draft,
            count: pedals.filter((each) => each === pedal).length,
          }));
          chain.forEach(({ count }, pedal) => {
            expect(count).toBeLessThanOrEqual(given.drafts[pedal]?.count ?? 1);
          });
          // These pedals, all of them, may hang there and are worth that: no other chain of them has as many.
          const longer = given.leads?.map((cost, at) => (at === places.length - 2 ? cost : 100_000 * scale)) ?? [];
          expect(mostOf({ ...given, drafts: chain, leads: longer })).toBe(value);
          if (index > 0) expect(value).toBeLessThanOrEqual(found[index - 1]?.value ?? NaN);
          if (places.length > 2) seen.long += 1;
        }
      }),
      trying(1200),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(50)]).toEqual([what, true]);
  });
});

import fc from 'fast-check';

import { microamps, millivolts, milliwatts, minorUnits } from '../../../src/domain/quantities.js';
import type { Feed } from '../../../src/domain/plan.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Bank, JoinMode, Total } from '../../../src/domain/supply.js';
import { bank, chainLead, feed, joinLead, listed, part, pedal, supply, times, type Case } from './cases.js';

/** How a set of pedals hangs on a bank of its own. */
type OutletKind = 'single' | 'chain' | JoinMode;
const joinLeads = { series: 'stack', parallel: 'pair' } as const;
/** The join of an outlet, or null when it has none. */
const joinOf = (kind: OutletKind): JoinMode | null => (kind === 'series' || kind === 'parallel' ? kind : null);

/** Factors in tenths, so that every planned load in this file is a whole number of microamps. */
type Factors = { readonly alone: number; readonly chained: number; readonly supply: number; readonly guess: number };

const pedalSeed = fc.record({
  milliamps: fc.integer({ min: 1, max: 300 }),
  startupMilliamps: fc.option(fc.integer({ min: 1, max: 500 }), { freq: 2 }),
  guess: fc.boolean(),
  digital: fc.boolean(),
  highGain: fc.boolean(),
  flip: fc.boolean(),
  mini: fc.boolean(),
});
type PedalSeed = typeof pedalSeed extends fc.Arbitrary<infer Seed> ? Seed : never;

const outletSeed = fc.record({
  kind: fc.constantFrom<OutletKind>('single', 'chain', 'chain', 'series', 'parallel'),
  pedals: fc.array(pedalSeed, { minLength: 2, maxLength: 4 }),
  isolated: fc.boolean(),
  volts: fc.constantFrom(9, 12, 18),
  polarity: fc.constantFrom<Bank['polarity']>('centre-negative', 'centre-positive', 'either'),
});
type OutletSeed = typeof outletSeed extends fc.Arbitrary<infer Seed> ? Seed : never;

const supplySeed = fc.record({
  outlets: fc.array(outletSeed, { minLength: 1, maxLength: 3 }),
  owned: fc.boolean(),
  positiveGround: fc.boolean(),
  totalInWatts: fc.boolean(),
});
type SupplySeed = typeof supplySeed extends fc.Arbitrary<infer Seed> ? Seed : never;

const factorsSeed = fc.record({
  alone: fc.constantFrom(10, 12, 25),
  chained: fc.constantFrom(10, 15, 20),
  supply: fc.constantFrom(10, 12),
  guess: fc.constantFrom(10, 15),
});

/**
 * Wirings that keep every rule, each with ratings, totals, stock, budget, bricks and sockets that are used up to the last
 * microamp, milliwatt, piece and cent.
 */
export const tightCase: fc.Arbitrary<Case> = fc
  .record({ supplies: fc.array(supplySeed, { minLength: 1, maxLength: 3 }), factors: factorsSeed })
  .map(({ supplies, factors }) => buildCase(supplies, factors));

/** Its load, and what it takes at switch-on, in microamps. */
type Built = { readonly pedal: Pedal; readonly feed: Feed; readonly load: number; readonly surge: number };

function buildCase(seeds: readonly SupplySeed[], factors: Factors): Case {
  const built: Built[] = [];
  const supplies = seeds.map((seed, index) => {
    const id = `quay-${index}`;
    const outlets = seed.outlets.map((outlet, position) => buildOutlet(outlet, seed, { id, position, factors }));
    built.push(...outlets.flatMap((outlet) => outlet.built));
    const total = totalOf(
      outlets.flatMap(({ shares }) => shares),
      seed.totalInWatts,
      factors,
    );
    return supply(
      id,
      outlets.map((outlet) => outlet.bank),
      {
        stock: seed.owned ? 0 : 1,
        total,
        source: { kind: 'mains', volts: { from: millivolts(230000), to: millivolts(230000) } },
      },
    );
  });
  const uses = partUses(built.map((each) => each.feed));
  const bought = seeds.filter((seed) => !seed.owned).length;
  const limits = {
    budget: minorUnits(10000 * bought + 500 * sumOf([...uses.values()])),
    bricks: seeds.length,
    sockets: seeds.length,
    mains: [millivolts(230000)],
  };
  return {
    pedals: built.map((each) => each.pedal),
    supplies,
    parts: leads.map((lead) => ({ ...lead, stock: uses.get(lead.id) ?? 0 })),
    feeds: built.map((each) => each.feed),
    policy: { ...limits, guess: times(factors.guess / 10) },
    headroom: {
      alone: times(factors.alone / 10),
      chained: times(factors.chained / 10),
      supply: times(factors.supply / 10),
    },
    owned: Object.fromEntries(seeds.map((seed, index) => [`quay-${index}`, seed.owned ? 1 : 0])),
  };
}

const leads = [
  chainLead('fan', 4),
  joinLead('stack', 'series'),
  joinLead('pair', 'parallel'),
  part('flip', { reverses: true }),
  part('mini', { gives: 'jack-3.5' }),
];

const sumOf = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Every outlet is a bank of two outputs; the bank at a position starts at output 2 · position + 1. */
function buildOutlet(
  seed: OutletSeed,
  ofSupply: SupplySeed,
  { id, position, factors }: { readonly id: string; readonly position: number; readonly factors: Factors },
): {
  readonly bank: Omit<Bank, 'firstOutput'>;
  readonly built: readonly Built[];
  readonly shares: readonly Share[];
} {
  const join = joinOf(seed.kind);
  const seeds = seed.kind === 'chain' ? seed.pedals : seed.pedals.slice(0, 1);
  const first = 2 * position + 1;
  const built = seeds.map((each, index) =>
    buildPedal(each, seed, {
      name: `${id}-${position}-${index}`,
      supply: id,
      first,
      ground: ofSupply.positiveGround ? 'positive' : 'negative',
      guessTenths: factors.guess,
    }),
  );
  const load = sumOf(built.map((each) => each.load));
  const needs = [
    (load * (seeds.length > 1 ? factors.chained : factors.alone)) / 10,
    sumOf(built.map((each) => each.surge)),
  ];
  const need = Math.max(...needs);
  const shares = built.flatMap(({ load: own, surge }) => {
    const share = { load: own, surge, millivolts: seed.volts * 1000 };
    return seed.kind === 'series' ? [share, share] : [share];
  });
  return {
    bank: bank({
      isolated: join !== null || seed.isolated,
      polarity: seed.polarity,
      joins: join === null ? [] : [join],
      settings: [
        {
          millivolts: millivolts(seed.volts * 1000),
          rating: microamps(seed.kind === 'parallel' ? Math.ceil(need / 2) : need),
          openCircuit: null,
        },
      ],
      total: totalOf(shares, !ofSupply.totalInWatts, factors),
    }),
    built,
    shares,
  };
}

/** What one output gives of what a pedal takes. */
type Share = Pick<Built, 'load' | 'surge'> & { readonly millivolts: number };

/** The smallest total that carries the loads with their factor, and all of it at switch-on. */
function totalOf(shares: readonly Share[], inWatts: boolean, factors: Factors): Total {
  const sumOfAll = (of: 'load' | 'surge'): number =>
    sumOf(shares.map((share) => share[of] * (inWatts ? share.millivolts : 1)));
  const needed = Math.max((sumOfAll('load') * factors.supply) / 10, sumOfAll('surge'));
  return inWatts
    ? { kind: 'power', milliwatts: milliwatts(Math.ceil(needed / 1_000_000)) }
    : { kind: 'current', microamps: microamps(needed) };
}

type Place = {
  readonly name: string;
  readonly supply: string;
  readonly first: number;
  readonly ground: Pedal['ground'];
  readonly guessTenths: number;
};

function buildPedal(seed: PedalSeed, outlet: OutletSeed, place: Place): Built {
  const standing = outlet.polarity === 'centre-positive' ? 'centre-positive' : 'centre-negative';
  const reversed = standing === 'centre-positive' ? 'centre-negative' : 'centre-positive';
  const polarity = seed.flip ? reversed : standing;
  const join = joinOf(outlet.kind);
  const feedChanges: Parameters<typeof feed>[2] = {
    supply: place.supply,
    polarity,
    volts: join === null ? [outlet.volts] : [outlet.volts, outlet.volts],
    adapters: [...(seed.flip ? ['flip'] : []), ...(seed.mini ? ['mini'] : [])],
    ...(outlet.kind === 'chain' ? { chain: 'fan' } : {}),
    ...(join === null ? {} : { join: [join, joinLeads[join]] as const }),
  };
  return {
    pedal: pedal(place.name, {
      polarity,
      ground: place.ground,
      inlet: seed.mini ? 'jack-3.5' : 'barrel-2.1',
      accepts: listed(outlet.kind === 'series' ? 2 * outlet.volts : outlet.volts),
      draw: { kind: 'flat', microamps: microamps(seed.milliamps * 1000) },
      startup: seed.startupMilliamps === null ? null : microamps(seed.startupMilliamps * 1000),
      figure: seed.guess ? 'guess' : 'label',
      digital: seed.digital,
      highGain: seed.highGain,
      alone: outlet.kind !== 'chain',
    }),
    feed: feed(place.name, join === null ? place.first : [place.first, place.first + 1], feedChanges),
    ...takenBy(seed, place.guessTenths),
  };
}

function takenBy(
  { guess, milliamps, startupMilliamps }: PedalSeed,
  guessTenths: number,
): Pick<Built, 'load' | 'surge'> {
  const load = guess ? milliamps * 100 * guessTenths : milliamps * 1000;
  return { load, surge: Math.max(load, (startupMilliamps ?? 0) * 1000) };
}

/** How many of each part the feeds use: a chain lead once for all the pedals of its output. */
function partUses(feeds: readonly Feed[]): ReadonlyMap<string, number> {
  const uses = new Map<string, number>();
  const chained = new Set<string>();
  const use = (id: string): unknown => uses.set(id, (uses.get(id) ?? 0) + 1);
  for (const each of feeds) {
    each.adapters.forEach(use);
    if (each.join !== null) use(each.join.part);
    const output = `${each.supply} ${each.outputs.join()}`;
    if (each.chain !== null && !chained.has(output)) use(each.chain);
    if (each.chain !== null) chained.add(output);
  }
  return uses;
}

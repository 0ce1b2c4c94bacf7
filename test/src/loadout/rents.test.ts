import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { jobOf } from '../../../src/loadout/content.js';
import { framesOf, type UnitFrame, type PlaceOption } from '../../../src/loadout/frame.js';
import {
  netOf,
  noMemory,
  paid,
  priceOfCapacities,
  rentedCandidates,
  rentsOf,
  type Counted,
  type Range,
  type Rents,
  type Span,
} from '../../../src/loadout/rents.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { holds, leadCost, mostWorth, worthOf } from './every-content.js';
import { smallUnits, spans } from './small-units.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, listed, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { Tally } from '../../support/tally.js';

const anyNumber: Span = new Map();

describe('prices of totals', () => {
  const prices = fc.oneof(fc.double({ min: 0, max: 1000, noNaN: true }), fc.nat({ max: 50 }), fc.constant(0));
  const weights = fc.nat({ max: 2 ** 40 });

  it('are never paid in full where they are not whole, nor below nothing', () => {
    fc.assert(
      fc.property(prices, weights, (price, weight) => {
        const sum = paid(price, weight);
        expect(Number.isInteger(sum)).toBe(true);
        expect(sum).toBeGreaterThanOrEqual(0);
        expect(sum).toBeLessThanOrEqual(price * weight);
        expect(sum).toBeGreaterThan(price * weight * (1 - 1e-12) - 2);
      }),
      trying(1000),
    );
  });

  it('of whatever fits come to no more than those of the capacity', () => {
    fc.assert(
      fc.property(prices, fc.array(weights, { maxLength: 6 }), weights, (price, parts, rest) => {
        const capacity = parts.reduce((sum, weight) => sum + weight, rest);
        const all = parts.reduce((sum, weight) => sum + paid(price, weight), 0);
        expect(all).toBeLessThanOrEqual(priceOfCapacities([capacity], [price]));
      }),
      trying(1000),
    );
  });

  it('of several capacities add up', () => {
    expect(priceOfCapacities([10, 20, 30], [1, 0, 0.5])).toBeGreaterThanOrEqual(25);
    expect(priceOfCapacities([10, 20, 30], [1, 0, 0.5])).toBeLessThanOrEqual(27);
    expect(priceOfCapacities([], [])).toBe(0);
  });

  it('are taken from what a content is worth, as are the rents of its pedals', () => {
    const rents = { pedals: [7, 3], prices: [2, 0], perPedal: 1 };
    const item = { value: 100, pedals: [0, 1, 1], weights: [5, 9] };
    // 7 + 3 + 3 for the pedals, 3 for being three; the 10 of the total may be rounded down.
    expect([74, 75]).toContain(netOf(item, rents));
    expect(netOf({ ...item, weights: [0, 9] }, rents)).toBe(84);
  });
});

/** Whether nothing that takes outputs earns more than the outputs' rents when pedals and totals are paid. */
function expectNoProfit(frame: UnitFrame, duals: LoadoutDuals, counts: readonly number[], rents: Rents): void {
  const rentOf = (banks: readonly number[]): number =>
    banks.reduce((sum, bank) => sum + (rents.outputs[bank] ?? NaN), 0);
  const there = ({ pedal }: { readonly pedal: number }): boolean => (counts[pedal] ?? 0) > 0;
  for (const option of frame.solos.filter(there)) {
    const value = worthOf(option, duals);
    // What is worth nothing by itself is left out before there are rents.
    if (value <= 0) continue;
    const net = netOf({ value, pedals: [option.pedal], weights: option.weights }, rents);
    expect(net).toBeLessThanOrEqual(rentOf(option.banks));
  }
  for (const chain of frame.chains) {
    if (chain.places.filter(there).every((place) => worthOf(place, duals) <= 0)) continue;
    for (const places of chainsOf(chain.places.filter(there), counts)) {
      if (!holds(chain, places)) continue;
      const net = places.reduce(
        (sum, place) => {
          const each = { value: worthOf(place, duals), pedals: [place.pedal], weights: place.weights };
          return sum + netOf(each, rents);
        },
        -leadCost(chain, places.length, duals) - (rents.perChain[places.length] ?? 0),
      );
      const fits = frame.capacities.every(
        (capacity, at) => places.reduce((sum, { weights }) => sum + (weights[at] ?? 0), 0) <= capacity,
      );
      if (fits) expect(net).toBeLessThanOrEqual(rentOf([chain.bank]));
    }
  }
}

const isLimited = (span: Span): boolean => [...span.values()].some(({ least, most }) => least > 0 || most < Infinity);

/** What all pedals, outputs and capacities pay. */
const sumOf = (rents: Rents, { outputs, capacities }: UnitFrame, counts: readonly number[]): number =>
  counts.reduce((sum, count, pedal) => sum + count * (rents.pedals[pedal] ?? 0), 0) +
  outputs.reduce((sum, count, bank) => sum + count * (rents.outputs[bank] ?? 0), 0) +
  priceOfCapacities(capacities, rents.prices);

/** Every set of places with no more of a class than there are. */
function chainsOf(places: readonly PlaceOption[], counts: readonly number[]): readonly (readonly PlaceOption[])[] {
  const copies = places.flatMap((place) => new Array<PlaceOption>(counts[place.pedal] ?? 0).fill(place));
  return copies
    .reduce<readonly (readonly PlaceOption[])[]>((all, place) => [...all, ...all.map((each) => [...each, place])], [[]])
    .filter((chain) => counts.every((count, pedal) => chain.filter((place) => place.pedal === pedal).length <= count));
}

describe('the rents of a unit', () => {
  it('are no less than anything within the span is worth, and no output earns more', () => {
    const seen = { whole: 0, limited: 0, none: 0, tight: 0, early: 0 };
    const floors = fc.constantFrom(-1, 0, 0.5, 1.5);
    const efforts = fc.constantFrom('exact' as const, 'quick' as const);
    fc.assert(
      fc.property(
        smallUnits({ chains: true }),
        spans,
        floors,
        efforts,
        ({ frames, duals, counts }, span, share, effort) => {
          for (const frame of frames.filter(({ chains }) => chains.length > 0)) {
            const truth = mostWorth(frame, duals, counts, span);
            const floor = truth === -Infinity ? 0 : Math.floor(truth * share);
            const rents = rentsOf(jobOf(frame, duals, counts), span, floor, noMemory(), effort);
            expect(rents.bound).toBeGreaterThanOrEqual(truth);
            if (!isLimited(span)) expect(rents.bound).toBe(sumOf(rents, frame, counts));
            // One that is told before there are any rents is that of all pedals at their best.
            if (rents.pedals.length > 0) expectNoProfit(frame, duals, counts, rents);
            seen[truth === -Infinity ? 'none' : isLimited(span) ? 'limited' : 'whole'] += 1;
            if (rents.bound === truth) seen.tight += 1;
            if (rents.bound <= floor) seen.early += 1;
          }
        },
      ),
      trying(300),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
  });

  it('ask of two outputs that are joined no more than what hangs on them is worth', () => {
    const bench = benchOf(
      [pedalOf('high', 20, { accepts: listed(18) })],
      [partOf('stack', 1, { kind: 'join', mode: 'series' })],
    );
    const bank = bankOf(2, [settingOf(9, 100)], { joins: ['series'] });
    const [frame] = framesOf(usesOf(supplyOf('supply', 10, [bank]), bench), bench);
    if (frame === undefined) throw new RangeError('the supply can carry nothing');
    const nothing = { exposed: 0, newlyExposed: 0, moved: 0, ...perPedalTier(() => 0) };
    const duals = { pedals: Float64Array.of(101), leads: Float64Array.of(0), ...nothing };
    expect(rentsOf(jobOf(frame, duals, [2]), anyNumber, 0, noMemory()).bound).toBeLessThanOrEqual(102);
  });

  it('bound what is worth having under other prices, too, where pedals pay the change', () => {
    const seen = { enough: 0, again: 0 };
    const changes = fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 8, maxLength: 8 });
    const floors = fc.constantFrom(0.9, 1, 1.2, 1.6);
    fc.assert(
      fc.property(smallUnits({ chains: true }), changes, floors, ({ frames, duals, counts }, change, part) => {
        const pedals = duals.pedals.map((dual, index) => Math.max(0, dual + (change[index] ?? 0)));
        const later = { ...duals, pedals };
        for (const frame of frames.filter(({ chains }) => chains.length > 0)) {
          const memory = noMemory();
          rentsOf(jobOf(frame, duals, counts), anyNumber, 0, memory);
          if (memory.rents.size === 0) continue;
          const truth = mostWorth(frame, later, counts, anyNumber);
          const floor = Math.max(0, Math.floor(truth * part));
          const rents = rentsOf(jobOf(frame, later, counts), anyNumber, floor, memory, 'quick');
          expect(rents.bound).toBeGreaterThanOrEqual(truth);
          expectNoProfit(frame, later, counts, rents);
          // Only those that were enough as they stood come without items.
          seen[rents.bound <= floor && rents.items.length === 0 ? 'enough' : 'again'] += 1;
        }
      }),
      trying(300),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
  });

  it('leave candidates what is theirs when they are paid', () => {
    fc.assert(
      fc.property(smallUnits({ chains: true }), ({ frames, duals, counts }) => {
        for (const frame of frames) {
          const job = jobOf(frame, duals, counts);
          const rents = rentsOf(job, anyNumber, 0, noMemory());
          for (const pool of job.pools) {
            const rented = rentedCandidates(pool, rents);
            expect(rented).toHaveLength(pool.candidates.length);
            for (const { place, value } of rented) {
              const before = pool.candidates.find((each) => each.place === place);
              expect(value).toBe(
                netOf({ value: before?.value ?? NaN, pedals: [place.pedal], weights: place.weights }, rents),
              );
            }
          }
        }
      }),
      trying(100),
    );
  });

  it('say how many pedals and chains the relaxation has, within the span', () => {
    const seen = new Tally();
    const limits = fc.record({
      pedals: fc.constantFrom(2, 3, Infinity),
      chains: fc.nat({ max: 2 }),
      length: fc.constantFrom(2, 3, 4),
    });
    fc.assert(
      fc.property(smallUnits({ chains: true }), limits, ({ frames, duals, counts }, { pedals, chains, length }) => {
        const span: Span = new Map<Counted, Range>([
          ['pedals', { least: 0, most: pedals }],
          [length, { least: 0, most: chains }],
        ]);
        for (const frame of frames) {
          const { numbers } = rentsOf(jobOf(frame, duals, counts), span, -1, noMemory());
          expect(numbers.get('pedals') ?? 0).toBeLessThanOrEqual(pedals + 1e-4);
          expect(numbers.get(length) ?? 0).toBeLessThanOrEqual(chains + 1e-4);
          // Only where a longer lead costs more are longer chains counted by themselves.
          if (numbers.has(length)) seen.add(length === 2 ? 'all chains' : 'long chains');
          expect([...numbers.values()].slice(1)).toEqual([...numbers.values()].slice(1).sort((a, b) => b - a));
        }
      }),
      trying(600),
    );
    expect([...seen.lacking(share(60), 'all chains'), ...seen.lacking(share(4), 'long chains')]).toEqual([]);
  });
});

import fc from 'fast-check';
import { expect, it } from 'vitest';

import { chainBound, type Sack } from '../../../src/loadout/chain-bound.js';
import { share, trying } from '../../support/runs.js';

/** The most that so many of the pedals are worth together within a load, by trying all. */
function mostOf({ values, loads }: Sack, room: number, tails: number): number {
  let most = 0;
  for (let set = 0; set < 2 ** values.length; set += 1) {
    const picked = [...values.keys()].filter((index) => (set & (1 << index)) !== 0);
    const sum = (of: readonly number[]): number => picked.reduce((all, index) => all + (of[index] ?? NaN), 0);
    if (picked.length <= tails && sum(loads) <= room) most = Math.max(most, sum(values));
  }
  return most;
}

/** λL + μK + Σ max(0, value − λ · load − μ). */
const boundUnder = ({ values, loads }: Sack, room: number, tails: number, perLoad: number, perPedal: number): number =>
  values.reduce(
    (sum, value, index) => sum + Math.max(0, value - perLoad * (loads[index] ?? NaN) - perPedal),
    perLoad * room + perPedal * tails,
  );

it('a chain is bounded by prices of load and places, hardly higher than by any others', () => {
  const seen = { tight: 0, loose: 0, load: 0, places: 0, both: 0, neither: 0 };
  const pedals = fc.array(
    fc.record({ value: fc.integer({ min: -20, max: 100 }), load: fc.constantFrom(0, 3, 10, 10, 15, 20, 45) }),
    { maxLength: 7, size: 'max' },
  );
  const most = { room: fc.constantFrom(10, 40, 60, 90), tails: fc.integer({ min: 2, max: 4 }) };
  fc.assert(
    fc.property(pedals, fc.record(most), fc.constantFrom(1, 997), (drafts, { room, tails }, scale) => {
      const sack = { values: drafts.map(({ value }) => value * scale), loads: drafts.map(({ load }) => load) };
      const { bound, perLoad, perPedal } = chainBound(sack, room, tails, -Infinity);
      expect([perLoad, perPedal].every((price) => Number.isInteger(price) && price >= 0)).toBe(true);
      expect(bound).toBe(boundUnder(sack, room, tails, perLoad, perPedal));
      const truth = mostOf(sack, room, tails);
      expect(bound).toBeGreaterThanOrEqual(truth);
      seen[bound === truth ? 'tight' : 'loose'] += 1;
      seen[perLoad > 0 ? (perPedal > 0 ? 'both' : 'load') : perPedal > 0 ? 'places' : 'neither'] += 1;
      // Prices are whole numbers: one of load that is a part more or less costs no more than that part of the room.
      const densities = drafts.flatMap(({ value, load }, at) =>
        drafts.map((other, index) => (index === at ? value / load : (value - other.value) / (load - other.load))),
      );
      for (const density of [0, ...densities.filter((each) => each > 0 && each < Infinity)]) {
        const nets = drafts.map(({ value, load }) => scale * (value - density * load)).sort((a, b) => b - a);
        const other = boundUnder(sack, room, tails, scale * density, Math.max(0, nets[tails - 1] ?? 0));
        expect(bound).toBeLessThanOrEqual(other + room + 1e-6 * scale);
      }
      // A bound is small enough exactly where the least one is.
      for (const enough of [bound - 1, bound, bound + 40]) {
        const some = chainBound(sack, room, tails, enough);
        expect(some.bound).toBe(boundUnder(sack, room, tails, some.perLoad, some.perPedal));
        expect(some.bound <= enough).toBe(bound <= enough);
      }
    }),
    trying(400),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
});

it('a chain is bounded in safe numbers even where values are as large as sums of them may be', () => {
  const sack = { values: [2 ** 50, 2 ** 50, 2 ** 49], loads: [1, 2 ** 40, 2 ** 40] };
  const { bound } = chainBound(sack, 2 ** 40 + 1, 3, -Infinity);
  expect(Number.isSafeInteger(bound)).toBe(true);
  expect(bound).toBeGreaterThanOrEqual(2 ** 51);
  expect(bound).toBeLessThanOrEqual(2 ** 51 + 2 ** 41);
});

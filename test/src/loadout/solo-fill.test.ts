import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { framesOf, type UnitFrame, type SoloOption } from '../../../src/loadout/frame.js';
import { fillWithSolos } from '../../../src/loadout/solo-fill.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { benchOf, usesOf } from '../../support/bench.js';
import {
  bankOf,
  currentTotal,
  listed,
  partOf,
  pedalOf,
  powerTotal,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { mostWorth, worthOf } from './every-content.js';
import { smallUnits } from './small-units.js';
import { share, trying } from '../../support/runs.js';

const nine = [settingOf(9, 100)];
type Supply = Parameters<typeof usesOf>[0];

/**
 * The best content of a unit's first frame for the pedals a, b, c, d and one at 18 V, with their duals: the floor is raised
 * until nothing is worth more.
 */
function best(supply: Supply, duals: readonly number[], given: { floor?: number; counts?: readonly number[] } = {}) {
  const pedals = [30, 40, 50, 60].map((draw, index) => pedalOf('abcd'.charAt(index), draw));
  const high = pedalOf('high', 30, { accepts: listed(18) });
  const bench = benchOf([...pedals, high], [partOf('stack', 9, { kind: 'join', mode: 'series' })]);
  const [frame] = framesOf(usesOf(supply, bench), bench);
  if (frame === undefined) throw new RangeError('the supply can carry nothing');
  const all: LoadoutDuals = {
    pedals: Float64Array.from(duals),
    leads: Float64Array.from([15]),
    ...perPedalTier(() => 0),
    exposed: 0,
    newlyExposed: 0,
    moved: 0,
  };
  const counts = given.counts ?? [1, 1, 1, 1, 1];
  let [floor, ids] = [given.floor ?? 0, ''];
  for (;;) {
    const { bound, found } = fillWithSolos(frame, all, counts, floor, 'exact');
    if (found === null) return { ids, value: floor, proven: bound <= floor };
    floor = found.value;
    ids = found.contents
      .map(({ pedal }) => bench.classes[pedal]?.like.id ?? '')
      .sort()
      .join(' ');
  }
}

describe('a unit filled with pedals by themselves', () => {
  const two = supplyOf('two', 10, [bankOf(2, nine)]);
  const limited = supplyOf('limited', 10, [bankOf(3, nine)], { total: currentTotal(90) });
  const joined = supplyOf('joined', 10, [bankOf(2, nine, { joins: ['series'] })]);

  it('has the most valuable ones', () => {
    expect(best(two, [5, 20, 10, 7, 0])).toEqual({ ids: 'b c', value: 30, proven: true });
  });

  it('has none that is worth nothing, or of which there is none', () => {
    expect(best(two, [5, 0, -3, 0, 0])).toEqual({ ids: 'a', value: 5, proven: true });
    expect(best(two, [5, 20, 10, 7, 0], { counts: [1, 0, 1, 1, 1] })).toEqual({ ids: 'c d', value: 17, proven: true });
  });

  it('keeps within its totals', () => {
    // 90 mA bear 30 + 60 or 40 + 50, but neither 50 + 60 nor three.
    expect(best(limited, [10, 12, 14, 15, 0])).toEqual({ ids: 'b c', value: 26, proven: true });
    expect(best(limited, [10, 12, 14, 17, 0])).toEqual({ ids: 'a d', value: 27, proven: true });
  });

  it('stays off preferred volts where the watts leave room for another pedal then', () => {
    const pedals = [pedalOf('a', 60, { accepts: listed(9, 12), prefers: volts(12) }), pedalOf('b', 40)];
    const bench = benchOf(pedals);
    const settings = [settingOf(9, 100), settingOf(12, 100)];
    const mostWithin = (watts: number, offPreferred: number): number => {
      const supply = supplyOf('supply', 10, [bankOf(2, settings)], { total: powerTotal(watts) });
      const [frame] = framesOf(usesOf(supply, bench), bench);
      if (frame === undefined) throw new RangeError('the supply can carry nothing');
      const duals = {
        pedals: Float64Array.from([10, 8]),
        leads: Float64Array.from([]),
        ...perPedalTier(() => offPreferred),
        exposed: 0,
        newlyExposed: 0,
        moved: 0,
      };
      let most = 0;
      for (;;) {
        const { bound, found } = fillWithSolos(frame, duals, [1, 1], most, 'exact');
        if (found === null) return bound <= most ? most : NaN;
        most = found.value;
      }
    };
    // 0.72 W at 12 V and 0.54 W at 9 V, and 0.36 W for the other.
    expect([mostWithin(1.08, 3), mostWithin(1, 3), mostWithin(1, 9), mostWithin(0.89, 3)]).toEqual([18, 15, 10, 10]);
  });

  it('is proven where pedals are worth what they draw, and an output each, so that only what is left of a total tells', () => {
    const draws = [
      27, 28, 50, 51, 53, 75, 80, 100, 103, 120, 150, 152, 180, 230, 250, 270, 310, 340, 370, 401, 430, 455,
    ];
    const bench = benchOf(draws.map((draw, index) => pedalOf(`pedal-${index}`, draw)));
    const banks = [bankOf(4, [settingOf(9, 500)]), bankOf(5, [settingOf(9, 300)])];
    const supply = supplyOf('supply', 10, banks, { total: currentTotal(1133) });
    const [frame] = framesOf(usesOf(supply, bench), bench);
    if (frame === undefined) throw new RangeError('the supply can carry nothing');
    const drawOf = (pedal: number): number => draws[Number(bench.classes[pedal]?.like.id.split('-')[1])] ?? NaN;
    const duals: LoadoutDuals = {
      pedals: Float64Array.from(bench.classes, (_, pedal) => 1000 + 10 * drawOf(pedal)),
      leads: Float64Array.from([]),
      ...perPedalTier(() => 0),
      exposed: 0,
      newlyExposed: 0,
      moved: 0,
    };
    const counts = draws.map(() => 1);
    let floor = 0;
    for (;;) {
      const { bound, found } = fillWithSolos(frame, duals, counts, floor, 'exact');
      if (found === null) {
        expect(bound).toBeLessThanOrEqual(floor);
        break;
      }
      expect(found.contents.reduce((sum, { pedal }) => sum + drawOf(pedal), 0)).toBeLessThanOrEqual(1133);
      floor = found.value;
    }
    // Nine pedals that draw all there is.
    expect(floor).toBe(9 * 1000 + 10 * 1133);
  });

  it('gives a join two outputs, and has its lead paid', () => {
    expect(best(joined, [10, 12, 0, 0, 38])).toEqual({ ids: 'high', value: 23, proven: true });
    expect(best(joined, [10, 12, 0, 0, 36])).toEqual({ ids: 'a b', value: 22, proven: true });
  });

  it('is not told where it is worth no more than the floor', () => {
    expect(best(two, [5, 20, 10, 7, 0], { floor: 29 })).toEqual({ ids: 'b c', value: 30, proven: true });
    expect(best(two, [5, 20, 10, 7, 0], { floor: 30 })).toEqual({ ids: '', value: 30, proven: true });
    expect(best(limited, [10, 12, 14, 15, 0], { floor: 26 })).toEqual({ ids: '', value: 26, proven: true });
  });

  it('is what trying everything finds', () => {
    const seen = { found: 0, none: 0, quick: 0, joins: 0, full: 0 };
    const floors = fc.constantFrom<(most: number) => number>(
      () => 0,
      (most) => most - 1,
      (most) => most,
      (most) => Math.floor(most / 2),
    );
    fc.assert(
      fc.property(smallUnits({ chains: false }), floors, ({ frames, duals, counts }, floorFor) => {
        for (const frame of frames) {
          const most = mostWorth(frame, duals, counts);
          const floor = Math.max(0, floorFor(most));
          const quick = fillWithSolos(frame, duals, counts, floor, 'quick');
          expect(Math.max(quick.bound, floor)).toBeGreaterThanOrEqual(most);
          if (quick.found !== null) {
            expectHangs(frame, quick.found.contents, counts);
            expect(quick.found.value).toBeGreaterThan(floor);
            seen.quick += 1;
          }
          const { bound, found } = fillWithSolos(frame, duals, counts, floor, 'exact');
          expect(Math.max(bound, floor)).toBeGreaterThanOrEqual(most);
          seen[found === null ? 'none' : 'found'] += 1;
          if (found === null) {
            expect(floor).toBe(most);
            expect(bound).toBeLessThanOrEqual(floor);
            continue;
          }
          expectHangs(frame, found.contents, counts);
          expect(found.value).toBe(found.contents.reduce((sum, option) => sum + worthOf(option, duals), 0));
          expect(found.value).toBeGreaterThan(floor);
          if (found.contents.some(({ banks }) => banks.length > 1)) seen.joins += 1;
          if (found.contents.length === frame.outputs.reduce((sum, count) => sum + count, 0)) seen.full += 1;
        }
      }),
      trying(1200),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
  });
});

/** No more outputs, pedals and totals than there are. */
function expectHangs(frame: UnitFrame, contents: readonly SoloOption[], counts: readonly number[]): void {
  const used = <Key>(keys: readonly Key[], key: Key): number => keys.filter((each) => each === key).length;
  const banks = contents.flatMap((option) => option.banks);
  const pedals = contents.map(({ pedal }) => pedal);
  frame.outputs.forEach((count, bank) => {
    expect(used(banks, bank)).toBeLessThanOrEqual(count);
  });
  counts.forEach((count, pedal) => {
    expect(used(pedals, pedal)).toBeLessThanOrEqual(count);
  });
  frame.capacities.forEach((capacity, at) => {
    expect(contents.reduce((sum, { weights }) => sum + (weights[at] ?? 0), 0)).toBeLessThanOrEqual(capacity);
  });
}

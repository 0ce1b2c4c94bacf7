import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { jobOf, type LoadoutContent } from '../../../src/loadout/content.js';
import { framesOf, type UnitFrame } from '../../../src/loadout/frame.js';
import { fillWithChains } from '../../../src/loadout/mixed-fill.js';
import { noMemory, type UnitMemory } from '../../../src/loadout/rents.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { benchOf, usesOf } from '../../support/bench.js';
import { bankOf, currentTotal, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';
import { holds, leadCost, mostWorth, worthOf } from './every-content.js';
import { smallUnits } from './small-units.js';
import { share, trying } from '../../support/runs.js';

/** Outputs, pedals and totals suffice, and every chain may hang on its output: else the test fails. */
function expectHangs(contents: readonly LoadoutContent[], frame: UnitFrame, counts: readonly number[]): void {
  const outputs = [...frame.outputs];
  const pedals = [...counts];
  const rooms = [...frame.capacities];
  const less = (list: number[], at: number, by: number): void => {
    list[at] = (list[at] ?? NaN) - by;
  };
  for (const content of contents) {
    const options = content.kind === 'solo' ? [content.option] : content.pattern.places;
    for (const bank of content.kind === 'solo' ? content.option.banks : [content.pattern.chain.bank])
      less(outputs, bank, 1);
    for (const { pedal, weights } of options) {
      less(pedals, pedal, 1);
      weights.forEach((weight, at) => {
        less(rooms, at, weight);
      });
    }
    if (content.kind === 'chain') expect(holds(content.pattern.chain, content.pattern.places)).toBe(true);
  }
  expect(Math.min(...outputs, ...pedals, ...rooms, Infinity)).toBeGreaterThanOrEqual(0);
}

const worthOfAll = (contents: readonly LoadoutContent[], duals: LoadoutDuals): number =>
  contents.reduce((sum, content) => {
    if (content.kind === 'solo') return sum + worthOf(content.option, duals);
    const { chain, places } = content.pattern;
    return sum + places.reduce((rest, place) => rest + worthOf(place, duals), -leadCost(chain, places.length, duals));
  }, 0);

type Climbed = { readonly most: number; readonly exact: boolean; readonly contents: readonly LoadoutContent[] };

/** Raises the floor until nothing is worth more; every bound on the way holds. */
function climb(
  frame: UnitFrame,
  duals: LoadoutDuals,
  counts: readonly number[],
  memory: UnitMemory,
  truth = -Infinity,
): Climbed {
  const job = jobOf(frame, duals, counts);
  let climbed: Climbed = { most: 0, exact: true, contents: [] };
  for (;;) {
    const floor = climbed.most;
    const quick = fillWithChains(job, floor, 'quick', memory);
    const { bound, found } = fillWithChains(job, floor, 'exact', memory);
    for (const each of [quick.bound, bound]) expect(Math.max(each, floor)).toBeGreaterThanOrEqual(truth);
    if (found === null) return { ...climbed, exact: bound <= floor };
    for (const { contents, value } of [found, ...(quick.found === null ? [] : [quick.found])]) {
      expectHangs(contents, frame, counts);
      expect(value).toBe(worthOfAll(contents, duals));
      expect(value).toBeGreaterThan(floor);
    }
    climbed = { most: found.value, exact: true, contents: found.contents };
  }
}

describe('a unit filled with pedals alone and in chains', () => {
  const fan = partOf('fan', 8, { kind: 'chain', tails: 4 });
  const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });

  /** What the pedals of some draws are worth at the most on outputs of 100 mA, and how they hang. */
  function best(
    outputs: number,
    draws: readonly number[],
    duals: readonly number[],
    more: { lead?: number; total?: number } = {},
  ) {
    const pedals = draws.map((draw, index) => pedalOf('abcdef'.charAt(index), draw));
    const bench = benchOf(pedals, [pair, fan]);
    const total = more.total === undefined ? {} : { total: currentTotal(more.total) };
    const [frame] = framesOf(
      usesOf(supplyOf('supply', 10, [bankOf(outputs, [settingOf(9, 100)])], total), bench),
      bench,
    );
    if (frame === undefined) throw new RangeError('the supply can carry nothing');
    const all: LoadoutDuals = {
      pedals: Float64Array.from(duals),
      leads: Float64Array.from([more.lead ?? 0, 3 * (more.lead ?? 0)]),
      ...perPedalTier(() => 0),
      exposed: 0,
      newlyExposed: 0,
      moved: 0,
    };
    const { most, exact, contents } = climb(
      frame,
      all,
      bench.classes.map(({ members }) => members.length),
      noMemory(),
    );
    const idOf = (pedal: number): string => bench.classes[pedal]?.like.id ?? '';
    const hung = contents.map((content) =>
      content.kind === 'solo'
        ? idOf(content.option.pedal)
        : content.pattern.places
            .map(({ pedal }) => idOf(pedal))
            .sort()
            .join(''),
    );
    return { most, exact, hung: hung.sort().join(' ') };
  }

  it('has the pedals dealt out to outputs so that they fit', () => {
    // 100 mA twice: 62 + 30 and 50 + 40; 62 + 40 would be too much.
    expect(best(2, [62, 50, 40, 30], [10, 10, 10, 10])).toEqual({ most: 40, exact: true, hung: 'ad bc' });
    // 61 + 40 is too much, and so is 51 + 50: one stays out.
    expect(best(2, [61, 51, 50, 40], [10, 9, 8, 7]).most).toBe(26);
  });

  it('has no chain whose lead costs more than it brings', () => {
    const chained = best(2, [20, 30, 40], [10, 10, 10], { lead: 9 });
    expect([chained.most, chained.exact, chained.hung.length]).toEqual([21, true, 4]);
    const apart = best(2, [20, 30, 40], [10, 10, 10], { lead: 11 });
    expect([apart.most, apart.hung.length]).toEqual([20, 3]);
    // One chain of four is dearer than two of two.
    expect(best(2, [20, 20, 20, 20], [10, 10, 10, 10], { lead: 1 })).toEqual({ most: 38, exact: true, hung: 'aa aa' });
  });

  it('keeps within its total', () => {
    expect(best(2, [60, 50, 40, 30], [10, 10, 10, 10], { total: 120 }).most).toBe(30);
    expect(best(2, [60, 50, 40, 30], [19, 10, 10, 10], { total: 120 }).most).toBe(30);
    expect(best(2, [60, 50, 40, 30], [21, 10, 10, 10], { total: 119 }).most).toBe(31);
  });

  it('has as many long chains as there are pedals that draw little enough for them', () => {
    // Sixteen on two leads of eight draw too much together; parts of many chains of the same few would not.
    const draws = [16, 13, 8, 4, 2, 0.54, 10, 3, 4, 0.54, 8, 1.5, 5, 13, 13, 2.25, 1.5, 2.4, 3, 9];
    const worth = (id: string | undefined): number => (draws[Number(id?.split('-')[1])] ?? NaN) * 100_000;
    const bench = benchOf(
      draws.map((draw, index) => pedalOf(`pedal-${index}`, draw)),
      [3, 5, 8].map((tails) => partOf(`fan-${tails}`, 1, { kind: 'chain', tails })),
    );
    const supply = supplyOf('supply', 10, [bankOf(2, [settingOf(9, 26.66)])], { total: currentTotal(54) });
    const [frame] = framesOf(usesOf(supply, bench), bench);
    if (frame === undefined) throw new RangeError('the supply can carry nothing');
    const duals: LoadoutDuals = {
      pedals: Float64Array.from(bench.classes, ({ members }) => 6_000_000 + worth(members[0]?.id)),
      leads: Float64Array.of(12_920_000, 24_850_000, 30_940_000),
      ...perPedalTier(() => 0),
      exposed: 0,
      newlyExposed: 0,
      moved: 0,
    };
    const counts = bench.classes.map(({ members }) => members.length);
    const { exact, contents } = climb(frame, duals, counts, noMemory());
    const lengths = contents.map((content) => (content.kind === 'solo' ? 1 : content.pattern.places.length));
    expect({ exact, lengths }).toEqual({ exact: true, lengths: [8, 5] });
  });

  it('is what trying everything finds', () => {
    const inexact: unknown[] = [];
    const seen = { frames: 0, chains: 0, both: 0, joins: 0, stored: 0 };
    fc.assert(
      fc.property(smallUnits({ chains: true }), ({ frames, duals, counts }) => {
        for (const frame of frames.filter(({ chains }) => chains.length > 0)) {
          const truth = mostWorth(frame, duals, counts);
          const memory = noMemory();
          const { most, exact, contents } = climb(frame, duals, counts, memory, truth);
          seen.frames += 1;
          if (exact) expect(most).toBe(truth);
          else inexact.push({ most, truth });
          expect(most).toBeLessThanOrEqual(truth);
          const kinds = new Set(contents.map(({ kind }) => kind));
          if (kinds.has('chain')) seen.chains += 1;
          if (kinds.size === 2) seen.both += 1;
          if (contents.some((content) => content.kind === 'solo' && content.option.banks.length > 1)) seen.joins += 1;
          // Patterns of other duals are of help, and never in the way.
          if (memory.patterns.size === 0) continue;
          const other = { ...duals, pedals: duals.pedals.map((dual, index) => (index % 2 === 0 ? dual : 300 - dual)) };
          const again = climb(frame, other, counts, memory);
          if (again.exact) expect(again.most).toBe(mostWorth(frame, other, counts));
          seen.stored += 1;
        }
      }),
      trying(400),
    );
    expect(inexact.length).toBeLessThan(seen.frames / 50);
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(3)]).toEqual([what, true]);
  });
});

import { expect, it } from 'vitest';

import { growthPanels } from '../../../bench/growth/lines.js';
import { growthOptions, growthSolves } from './growth-solves.js';

it('puts the medians of both rivals into one panel', () => {
  const panels = growthPanels(growthSolves, growthOptions);
  expect(panels.map(({ series, chains }) => [series.varies, series.fixed, chains])).toEqual([['pedals', 100, 'none']]);
  const lines = panels.flatMap((panel) => panel.lines);
  expect(lines.map(({ set }) => set)).toEqual(['loadouts', 'HiGHS']);
  expect(lines.map(({ points }) => points.map(({ count, spread }) => [count, spread.median.ms]))).toEqual([
    [5, 10, 20].map((count) => [count, count]),
    // Cut off after 1000 ms, and it counts with that.
    [5, 10, 20].map((count) => [count, count === 20 ? 1000 : count ** 2]),
  ]);
  expect(lines.map(({ points }) => points.map(({ spread }) => spread.median.atLeast))).toEqual([
    [false, false, false],
    [false, false, true],
  ]);
  expect(lines.map(({ fit }) => fit.cutOff)).toEqual(['nowhere', 'at large sizes']);
  expect(lines[0]?.fit.exponent).toBeCloseTo(1, 9);
});

it('has no line for a set that was measured at one size only', () => {
  const few = growthSolves.filter(({ set, shape }) => set === 'loadouts' || shape.pedals === 5);
  expect(growthPanels(few, growthOptions).flatMap(({ lines }) => lines.map(({ set }) => set))).toEqual(['loadouts']);
});

import { expect, it } from 'vitest';

import { seriesOf, seriesText } from '../../../bench/growth/series.js';

const size = (pedals: number, supplies: number) => ({ pedals, supplies });

it('finds the sizes that differ in one thing only, the smallest first', () => {
  const sizes = [size(20, 100), size(10, 100), size(5, 100), size(20, 400), size(20, 50)];
  expect(seriesOf(sizes)).toEqual([
    { varies: 'pedals', fixed: 100, sizes: [size(5, 100), size(10, 100), size(20, 100)] },
    { varies: 'supplies', fixed: 20, sizes: [size(20, 50), size(20, 100), size(20, 400)] },
  ]);
});

it('makes no series of fewer than three sizes', () => {
  expect(seriesOf([size(5, 100), size(10, 100), size(10, 50), size(7, 7)])).toEqual([]);
});

it('seriesText says what grows and what does not', () => {
  const [pedals, supplies] = seriesOf([1, 2, 3].flatMap((count) => [size(count, 9), size(8, count)]));
  expect([pedals, supplies].map((series) => series && seriesText(series))).toEqual([
    'pedals, with 9 supply models',
    'supply models, with 8 pedals',
  ]);
});

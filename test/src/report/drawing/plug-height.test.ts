import { expect, it } from 'vitest';

import { plugHeight } from '../../../../src/report/drawing/plug-height.js';

it('is that of the own output where it is near, for a straight lead', () => {
  expect(plugHeight(100, 10, [108], [108, 130])).toBe(108);
  expect(plugHeight(100, 10, [111], [111, 130])).toBe(100);
});

it('is the middle, or beside it where another lead leaves its output at that height', () => {
  expect(plugHeight(100, 10, [40], [40, 60])).toBe(100);
  const beside = plugHeight(100, 10, [40], [40, 101]);
  expect(Math.abs(beside - 101)).toBeGreaterThanOrEqual(3);
  expect(Math.abs(beside - 100)).toBeLessThanOrEqual(10);
});

it('of a join, which has two outputs, is no straight one', () => {
  expect(plugHeight(100, 10, [99, 101], [60])).toBe(100);
});

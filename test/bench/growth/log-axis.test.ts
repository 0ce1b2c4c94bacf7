import { describe, expect, it } from 'vitest';

import { decadesAround, durationText, positionOn, spacedApart, type LogAxis } from '../../../bench/growth/log-axis.js';

const axis: LogAxis = { least: 1, most: 100, from: 300, to: 100 };

it('positionOn gives every decade the same room', () => {
  expect([1, 10, 100].map((value) => positionOn(axis, value))).toEqual([300, 200, 100]);
});

describe('decadesAround', () => {
  it('holds every value', () => {
    expect(decadesAround([3, 250])).toEqual([1, 10, 100, 1000]);
    expect(decadesAround([0.5])).toEqual([0.1, 1]);
  });

  it('has two ends for a value that is a power of ten itself', () => {
    expect(decadesAround([10])).toEqual([10, 100]);
    expect(decadesAround([1, 100])).toEqual([1, 10, 100]);
  });

  it('refuses what has no logarithm', () => {
    expect(() => decadesAround([0, 5])).toThrow(RangeError);
    expect(() => decadesAround([])).toThrow(RangeError);
  });
});

it('spacedApart leaves out labels that would touch the one before', () => {
  expect(spacedApart(axis, [1, 1.1, 10, 11, 100], 26)).toEqual([1, 10, 100]);
  expect(spacedApart(axis, [1, 1.1, 10], 0)).toEqual([1, 1.1, 10]);
});

it('durationText has the unit that keeps the number short', () => {
  expect([0.1, 1, 100, 1000, 100_000].map(durationText)).toEqual(['0.1 ms', '1 ms', '100 ms', '1 s', '100 s']);
});

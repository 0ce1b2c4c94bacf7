import { describe, expect, it } from 'vitest';

import { exactly, medianOf, spreadOf } from '../../bench/statistics.js';

const cutOff = (ms: number) => ({ ms, atLeast: true });

describe('spreadOf', () => {
  it('is the middle one of an odd number, whatever their order', () => {
    expect(spreadOf([9, 1, 4].map(exactly))).toEqual({ median: exactly(4), least: exactly(1), most: exactly(9) });
  });

  it('is the mean of the middle two of an even number', () => {
    expect(spreadOf([8, 1, 4, 9].map(exactly)).median).toEqual(exactly(6));
  });

  it('says that the median is a lower bound where it rests on a sample that was cut off', () => {
    expect(spreadOf([exactly(2), cutOff(60), exactly(4)]).median).toEqual(exactly(4));
    expect(spreadOf([exactly(2), cutOff(60), cutOff(60)]).median).toEqual(cutOff(60));
    expect(spreadOf([exactly(20), cutOff(60)]).median).toEqual(cutOff(40));
  });

  it('counts a sample that was cut off as the longer one of two alike', () => {
    expect(spreadOf([cutOff(60), exactly(60), exactly(60)]).median).toEqual(exactly(60));
  });

  it('refuses to speak of nothing', () => {
    expect(() => spreadOf([])).toThrow(RangeError);
  });
});

it('medianOf takes plain numbers', () => {
  expect(medianOf([3, 1, 2])).toBe(2);
});

import { describe, expect, it } from 'vitest';

import { OutputStates } from '../../../src/loadout/output-states.js';

describe('the states of a unit of two and of one output', () => {
  const states = new OutputStates([2, 1]);
  const free = (banks: readonly number[]): readonly number[] => [...states.fits(banks)];

  it('number how many outputs of each bank are in use', () => {
    expect(states.count).toBe(6);
    expect([[0], [1], [0, 0], [0, 1]].map((banks) => states.stride(banks))).toEqual([1, 3, 2, 4]);
  });

  it('say whether outputs are still free, for a join both', () => {
    // In use of the first bank 0, 1, 2 outputs, with none of the second; then the same with the second's.
    expect(free([0])).toEqual([1, 1, 0, 1, 1, 0]);
    expect(free([1])).toEqual([1, 1, 1, 0, 0, 0]);
    expect(free([0, 0])).toEqual([1, 0, 0, 1, 0, 0]);
    expect(free([0, 1])).toEqual([1, 1, 0, 0, 0, 0]);
    expect(free([1, 1])).toEqual([0, 0, 0, 0, 0, 0]);
  });
});

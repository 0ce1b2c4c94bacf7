import { describe, expect, test } from 'vitest';

import { typedPlace } from '../../../../src/reading/typed/place.js';

const box = [[9], [9], [9, 12, 18]];
const adapter = [[9]];

describe('where a pedal is plugged', () => {
  test.each<[string, number, number, number]>([
    ['a1', 0, 1, 9],
    ['A2 9v', 0, 2, 9],
    ['a3 12v', 0, 3, 12],
    ['a 3 at 18 V', 0, 3, 18],
    ['b', 1, 1, 9],
    ['b1', 1, 1, 9],
  ])('%s', (text, source, output, volts) => {
    expect(typedPlace(text, [box, adapter])).toEqual({ kind: 'said', value: { source, output, volts } });
  });

  test('the letter is needed for the second supply only', () => {
    expect(typedPlace('3 9,0v', [box])).toEqual({ kind: 'said', value: { source: 0, output: 3, volts: 9 } });
    expect(typedPlace('', [box])).toEqual({ kind: 'unknown' });
  });

  test.each<[string, RegExp]>([
    ['1', /such as a3/],
    ['c1', /such as a3/],
    ['the left one', /such as a3/],
    ['a4', /outputs 1 to 3/],
    ['a', /outputs 1 to 3/],
    ['a3', /gives 9, 12 or 18 V: write a3 9v/],
    ['a1 12v', /gives 9 V/],
  ])('%s is not clear', (text, remedy) => {
    const typed = typedPlace(text, [box, adapter]);
    expect(typed.kind === 'unclear' ? typed.remedy : 'it is clear').toMatch(remedy);
  });
});

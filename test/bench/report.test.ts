import { describe, expect, it } from 'vitest';

import { ratioText, timeText } from '../../bench/report.js';

const exactly = (ms: number) => ({ ms, atLeast: false });
const cutOff = (ms: number) => ({ ms, atLeast: true });

it('a time that was cut off has a mark', () => {
  expect([exactly(1.23), exactly(12.3), cutOff(60_000)].map(timeText)).toEqual(['1.2', '12', '>60000']);
});

describe('ratioText', () => {
  it('divides by the reference', () => {
    expect(ratioText(exactly(30), exactly(20))).toBe('1.50');
    expect(ratioText(exactly(3000), exactly(20))).toBe('150');
  });

  it('says on which side it is open when one of them was cut off, and nothing when both were', () => {
    expect(ratioText(cutOff(60), exactly(20))).toBe('>3.00');
    expect(ratioText(exactly(30), cutOff(60))).toBe('<0.50');
    expect(ratioText(cutOff(60), cutOff(60))).toBe('?');
    expect(ratioText(exactly(30), null)).toBe('?');
  });
});

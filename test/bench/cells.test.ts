import { describe, expect, it } from 'vitest';

import { failuresText, megabytesText, provenText, ratioText, sampleOf, tagsText, timeText } from '../../bench/cells.js';
import { solveOf, unproven, wrong } from './fake-solves.js';

const exactly = (ms: number) => ({ ms, atLeast: false });
const cutOff = (ms: number) => ({ ms, atLeast: true });

it('a time that was cut off has a mark', () => {
  expect([exactly(1.23), exactly(12.3), cutOff(60_000)].map(timeText)).toEqual(['1.2', '12', '>60000']);
});

it('memory is told in millions of bytes', () => {
  expect(megabytesText(123_456_789)).toBe('123');
});

it('a solve without a proof that stands counts with its cap', () => {
  expect(sampleOf(solveOf({ elapsedMs: 7 }))).toEqual(exactly(7));
  expect(sampleOf(solveOf({ elapsedMs: 7, verdict: unproven, capMs: 50 }))).toEqual(cutOff(50));
  expect(sampleOf(solveOf({ elapsedMs: 7, verdict: wrong, capMs: 50 }))).toEqual(cutOff(50));
});

it('proofs are counted, by what they rest on, and wrong answers named', () => {
  const solves = [
    solveOf({}),
    solveOf({ proofBy: 'agreement' }),
    solveOf({ verdict: unproven, proofBy: null }),
    solveOf({ verdict: wrong, proofBy: null }),
  ];
  expect(provenText(solves.slice(0, 3))).toBe('2/3');
  expect(provenText(solves)).toBe('2/4, 1 WRONG');
  expect(tagsText(solves)).toBe('1');
  expect(failuresText(solves.map((solve) => ({ ...solve, elapsedMs: 90, capMs: 80 }))).split('\n')).toEqual([
    'not proven: 12×40, chains all, seed 1, loadouts: a plan without a proof after 90 ms',
    'WRONG: 12×40, chains all, seed 1, loadouts: made up',
  ]);
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

import { isDeepStrictEqual } from 'node:util';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { rules } from '../../src/domain/rules.js';
import { isOfOnePedal } from '../../src/domain/source.js';
import { largerCase, tinyCase, type Case } from './arbitraries.js';
import { bruteForce } from './brute-force.js';
import { relaxations, restrictions, sourceRelaxations, sourceRestrictions, type Change } from './changes.js';
import { tierFigures } from './tier-figures.js';

const sample = fc.sample(tinyCase, { seed: 21, numRuns: 720 });

/** What the best plan, perhaps a partial one, comes to in the order of its aim. */
function figuresOf({ board, catalogue }: Case): readonly number[] {
  const answer = bruteForce(board, catalogue, { aim: 'cost', partial: true });
  if (answer.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
  return tierFigures(answer.score, 'cost', board.policy);
}

/** Below zero when the first is the better. */
const compare = (first: readonly number[], second: readonly number[]): number =>
  first.map((value, index) => value - (second[index] ?? 0)).find((difference) => difference !== 0) ?? 0;

const before = sample.map(figuresOf);

/** Finds so many cases with another answer, and fails on one whose answer moves the wrong way. */
function countMoved({ changed }: Change, direction: 1 | -1, enough: number): number {
  let moved = 0;
  for (const [index, given] of sample.entries()) {
    const other = changed(given);
    if (isDeepStrictEqual(other, given)) continue;
    const difference = compare(before[index] ?? [], figuresOf(other));
    expect(difference * direction).toBeGreaterThanOrEqual(0);
    if (difference !== 0) moved += 1;
    if (moved === enough) break;
  }
  return moved;
}

describe('tiny cases', () => {
  it('can be powered in about two of three', () => {
    const whole = sample.filter(
      ({ board, catalogue }) => bruteForce(board, catalogue, { aim: 'cost', partial: false }).kind === 'plan',
    );
    expect(whole.length / sample.length).toBeGreaterThan(0.58);
    expect(whole.length / sample.length).toBeLessThan(0.72);
  });

  it('are looked at with every rule taken away, or a way out of it', () => {
    const all = [relaxations, sourceRelaxations, restrictions, sourceRestrictions].flat();
    const changed = new Set(all.map(({ name }) => name.split(':', 1).join()));
    expect(rules.filter((rule) => !changed.has(rule))).toEqual([]);
  });

  it.each(relaxations)('get better without $name, some of them, and never worse', (change) => {
    expect(countMoved(change, 1, 3)).toBe(3);
  });

  it.each(restrictions)('get worse under $name, some of them, and never better', (change) => {
    expect(countMoved(change, -1, 3)).toBe(3);
  });
});

describe('larger cases', () => {
  it('have half to all of the pedals and supplies', () => {
    const larger = fc.sample(largerCase(12, 10), { seed: 20, numRuns: 50 });
    for (const { board, catalogue } of larger) {
      const supplies =
        board.gear.supplies.filter(({ source }) => !isOfOnePedal(source)).length + catalogue.supplies.length;
      expect([board.pedals.length >= 6, board.pedals.length <= 12]).toEqual([true, true]);
      expect([supplies >= 5, supplies <= 10]).toEqual([true, true]);
    }
  });
});

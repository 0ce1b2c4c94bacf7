import { describe, expect, it } from 'vitest';

import { isDecided } from '../../../solver/cover/decisions.js';
import type { BranchingConstraint } from '../../../solver/cover/program.js';

const atMost = (bound: number, groups: readonly number[] | null = [1]): BranchingConstraint => ({
  feature: 2,
  groups,
  sense: 'at most',
  bound,
});
const atLeast = (bound: number, groups?: readonly number[] | null): BranchingConstraint => ({
  ...atMost(bound, groups),
  sense: 'at least',
});

describe('a condition that says no more than one that is decided', () => {
  it.each([
    [atMost(1), atMost(1), true],
    [atMost(2), atMost(1), true],
    [atMost(0), atMost(1), false],
    [atLeast(1), atLeast(1), true],
    [atLeast(1), atLeast(2), true],
    [atLeast(3), atLeast(2), false],
    [atLeast(1), atMost(1), false],
    [{ ...atMost(1), feature: 3 }, atMost(1), false],
    [atMost(1, [1, 2]), atMost(1), false],
    [atMost(1, [1, 2]), atMost(1, [1, 2]), true],
    [atMost(1, [1]), atMost(1, [1, 2]), true],
    [atMost(1), atMost(1, null), true],
    [atLeast(1, [1, 2]), atLeast(1, [1]), true],
    [atLeast(1, [1]), atLeast(1, [1, 2]), false],
    [atLeast(1, null), atLeast(1), true],
    [atMost(1, null), atMost(1), false],
    [atMost(1, null), atMost(1, null), true],
  ])('%j beside %j: %s', (condition, known, says) => {
    expect(isDecided(condition, { conditions: [atLeast(0), known] })).toBe(says);
  });
});

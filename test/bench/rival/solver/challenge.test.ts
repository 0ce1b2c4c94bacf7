import fc from 'fast-check';
import { expect, test } from 'vitest';

import { atMost, elastic } from '../../../../bench/rival/solver/challenge.js';
import type { Program } from '../../../../solver/program.js';
import { isSolution, smallProgram, solutionsOf, worth } from '../../../solver/small-programs.js';
import { share, trying } from '../../../support/runs.js';

test('only solutions worth at most the value are left', () => {
  fc.assert(
    fc.property(smallProgram, fc.integer({ min: -5, max: 40 }), ({ program, objective }, value) => {
      const expected = solutionsOf(program).filter((point) => worth(objective, point) <= value);
      expect(solutionsOf(atMost(value, program, objective))).toEqual(expected);
    }),
    trying(500),
  );
});

test('the elastic program has a solution, and one without violation exactly when the program has one', () => {
  const counted = { solvable: 0, unsolvable: 0 };
  fc.assert(
    fc.property(smallProgram, ({ program }) => {
      const stretched = elastic(program);
      const slackless = (point: readonly number[]) =>
        isSolution(stretched.program, [...point, ...stretched.program.columns.slice(point.length).map(() => 0)]);
      expect(solutionsOf(program)).toEqual(solutionsOf({ ...program, rows: [] }).filter(slackless));
      counted[solutionsOf(program).length > 0 ? 'solvable' : 'unsolvable'] += 1;
      // At zeros, with every slack at its most, no row that is wide enough to hold at all is broken.
      if (program.rows.some((row) => row.lower !== null && row.upper !== null && row.lower > row.upper)) return;
      const zeros = stretched.program.columns.map(({ upper }, index) => (index < program.columns.length ? 0 : upper));
      expect(isSolution(stretched.program, zeros)).toBe(true);
    }),
    trying(500),
  );
  expect(counted.solvable).toBeGreaterThan(share(100));
  expect(counted.unsolvable).toBeGreaterThan(share(100));
});

test('the violation is the sum of what the rows lack', () => {
  const program: Program = {
    columns: [{ name: 'x', upper: 2 }],
    rows: [
      { name: 'least', terms: [{ column: 0, coefficient: 1 }], lower: 5, upper: null },
      { name: 'most', terms: [{ column: 0, coefficient: -1 }], lower: null, upper: -4 },
    ],
  };
  const { program: stretched, violation } = elastic(program);
  // x = 2 lacks 3 of the first row and 2 of the second.
  const values = solutionsOf(stretched).map((point) => worth(violation, point));
  expect(Math.min(...values)).toBe(5);
});

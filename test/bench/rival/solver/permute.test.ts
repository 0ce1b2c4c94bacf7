import fc from 'fast-check';
import { expect, test } from 'vitest';

import { permute } from '../../../../bench/rival/solver/permute.js';
import { smallProgram, solutionsOf, worth } from '../../../solver/small-programs.js';
import { trying } from '../../../support/runs.js';

test('another order has the same solutions at the same values', () => {
  fc.assert(
    fc.property(smallProgram, fc.integer(), ({ program, objective }, seed) => {
      const permuted = permute(program, objective, seed);
      const restored = solutionsOf(permuted.program).map((point) => {
        expect(worth(permuted.objective, point)).toBe(worth(objective, permuted.restore(point)));
        return permuted.restore(point);
      });
      expect(restored.map(String).sort()).toEqual(solutionsOf(program).map(String).sort());
    }),
    trying(500),
  );
});

test('the seed decides the order', () => {
  const columns = Array.from({ length: 12 }, (_, index) => ({ name: `column ${index}`, upper: 1 }));
  const nothing = { name: 'nothing', terms: [], constant: 0 };
  const orderOf = (seed: number) =>
    permute({ columns, rows: [] }, nothing, seed).program.columns.map(({ name }) => name);
  expect(orderOf(1)).toEqual(orderOf(1));
  expect(orderOf(1)).not.toEqual(orderOf(2));
  expect(orderOf(1)).not.toEqual(columns.map(({ name }) => name));
  expect(orderOf(1).toSorted()).toEqual(columns.map(({ name }) => name).sort());
});

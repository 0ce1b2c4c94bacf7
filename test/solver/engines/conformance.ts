/** What every engine must get right before it is of any use. None of this is relied on: `prove` checks whatever it says. */
import { expect, test } from 'vitest';

import type { EngineCore } from '../../../solver/engines/engine.js';
import type { Objective, Program, ProgramRow } from '../../../solver/program.js';
import { isSolution, worth } from '../small-programs.js';

type Case = {
  readonly name: string;
  readonly program: Program;
  readonly objective: Objective;
  /** Found by hand; null where there is no solution. */
  readonly least: number | null;
};

const column = (upper: number, index: number) => ({ name: `column ${index}`, upper });
const rowOf = (coefficients: readonly number[], lower: number | null, upper: number | null): ProgramRow => ({
  name: 'row',
  terms: coefficients.map((coefficient, index) => ({ column: index, coefficient })),
  lower,
  upper,
});
const costOf = (coefficients: readonly number[], constant = 0): Objective => ({
  name: 'cost',
  terms: coefficients.map((coefficient, index) => ({ column: index, coefficient })),
  constant,
});

const cases: readonly Case[] = [
  {
    name: 'a cover whose relaxation is fractional',
    program: {
      columns: [1, 1, 1].map(column),
      rows: [rowOf([1, 1, 0], 1, null), rowOf([0, 1, 1], 1, null), rowOf([1, 0, 1], 1, null)],
    },
    objective: costOf([1, 1, 1]),
    least: 2,
  },
  {
    name: 'general integers: 3x + 5y ≥ 11 at 4 and 7',
    program: { columns: [9, 9].map(column), rows: [rowOf([3, 5], 11, null)] },
    // Two of each make 16 at 22; x = 4 makes 12 at 16; x = 2 and y = 1 make 11 at 15.
    objective: costOf([4, 7]),
    least: 15,
  },
  {
    name: 'upper bounds that bind',
    program: { columns: [2, 3].map(column), rows: [rowOf([1, 1], 4, null)] },
    objective: costOf([1, 10], 5),
    least: 27,
  },
  {
    name: 'upper bounds that bind on columns without cost',
    program: { columns: [2, 3].map(column), rows: [rowOf([1, 1], 4, null)] },
    objective: costOf([0, 10]),
    least: 20,
  },
  {
    name: 'a row with two bounds',
    program: { columns: [9, 9].map(column), rows: [rowOf([2, 3], 7, 8), rowOf([1, 0], null, 1)] },
    // With x ≤ 1: x = 1, y = 2 is the only pair from 7 to 8.
    objective: costOf([5, 1]),
    least: 7,
  },
  {
    name: 'an equation',
    program: { columns: [9, 9].map(column), rows: [rowOf([4, 7], 29, 29)] },
    objective: costOf([1, 1]),
    least: 5,
  },
  {
    name: 'an equation that has no integer solution',
    program: { columns: [9, 9].map(column), rows: [rowOf([4, 6], 9, 9)] },
    objective: costOf([1, 1]),
    least: null,
  },
  {
    name: 'rows that contradict each other',
    program: { columns: [9, 9].map(column), rows: [rowOf([1, 1], 5, null), rowOf([1, 1], null, 4)] },
    objective: costOf([1, 1]),
    least: null,
  },
  {
    name: 'negative coefficients: units must be there for what hangs on them',
    program: {
      columns: [4, 9].map(column),
      rows: [rowOf([3, -1], 0, null), rowOf([0, 1], 7, null)],
    },
    objective: costOf([100, 1]),
    least: 307,
  },
  {
    name: 'no rows',
    program: { columns: [4, 9].map(column), rows: [] },
    objective: costOf([1, 0], -2),
    least: -2,
  },
  {
    name: 'no cost',
    program: { columns: [4, 9].map(column), rows: [rowOf([2, 3], 10, 10)] },
    objective: costOf([0, 0]),
    least: 0,
  },
  {
    name: 'money in minor units',
    program: { columns: [3, 3, 3].map(column), rows: [rowOf([6, 4, 1], 10, null)] },
    objective: costOf([11_900, 8_450, 2_995]),
    least: 20_350,
  },
];

/** Runs every case on the engine that `load` gives. */
export function conforms(load: () => Promise<EngineCore>): void {
  test.each(cases)('$name', async ({ program, objective, least }) => {
    const claim = (await load()).solve(program, objective, 5_000);
    if (least === null) {
      expect(claim).toEqual({ kind: 'infeasible' });
      return;
    }
    expect(claim.kind).toBe('optimal');
    const point = claim.kind === 'optimal' ? claim.point : [];
    expect(point).toHaveLength(program.columns.length);
    point.forEach((value, index) => {
      expect(Number.isInteger(value)).toBe(true);
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThanOrEqual(program.columns[index]?.upper ?? -1);
    });
    expect(isSolution(program, point)).toBe(true);
    expect(worth(objective, point)).toBe(least);
  });

  test('names mean nothing to it', async () => {
    const names = ['result', 'feasible', '__proto__', 'inf', 'free', '1', 'e1', 'a b:'];
    const program: Program = {
      columns: names.map((name) => ({ name, upper: 2 })),
      rows: names.map((name, index) => ({ name, terms: [{ column: index, coefficient: 2 }], lower: 3, upper: null })),
    };
    const objective = { ...costOf(names.map(() => 1)), name: 'st' };
    expect((await load()).solve(program, objective, 5_000)).toEqual({ kind: 'optimal', point: names.map(() => 2) });
  });
}

import fc from 'fast-check';

import type { DualEngine } from '../../bench/rival/engines/engines.js';
import type { Objective, ProgramPoint, Program, ProgramRow, LinearTerm } from '../../solver/program.js';

/** A program whose points can all be looked at one by one. */
export type SmallProgram = { readonly program: Program; readonly objective: Objective };

const rowKinds = ['cover', 'knapsack', 'equation', 'range', 'mixed'] as const;

const termsOf = (coefficients: readonly number[]): readonly LinearTerm[] =>
  coefficients.flatMap((coefficient, column) => (coefficient === 0 ? [] : [{ column, coefficient }]));

const row = (columns: number): fc.Arbitrary<ProgramRow> =>
  fc
    .record({
      kind: fc.constantFrom(...rowKinds),
      coefficients: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: columns, maxLength: columns }),
      signs: fc.array(fc.boolean(), { minLength: columns, maxLength: columns }),
      scale: fc.constantFrom(1, 1, 6),
      first: fc.integer({ min: 0, max: 10 }),
      second: fc.integer({ min: 0, max: 10 }),
    })
    .map(({ kind, coefficients, signs, scale, first, second }) => {
      const signed = coefficients.map((coefficient, index) =>
        kind === 'mixed' && signs[index] ? -coefficient * scale : coefficient * scale,
      );
      const [least, most] = [Math.min(first, second) * scale, Math.max(first, second) * scale + (scale > 1 ? 1 : 0)];
      const bounds = {
        cover: { lower: least, upper: null },
        knapsack: { lower: null, upper: most },
        equation: { lower: least, upper: least },
        range: { lower: least, upper: most },
        mixed: { lower: least - 5 * scale, upper: null },
      }[kind];
      return { name: kind, terms: termsOf(signed), ...bounds };
    });

/** Up to four columns of at most 3, up to four rows of every kind; some have no solution. */
export const smallProgram: fc.Arbitrary<SmallProgram> = fc.integer({ min: 1, max: 4 }).chain((columns) =>
  fc
    .record({
      uppers: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: columns, maxLength: columns }),
      rows: fc.array(row(columns), { maxLength: 4 }),
      costs: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: columns, maxLength: columns }),
      step: fc.constantFrom(1, 1, 25),
      constant: fc.integer({ min: -5, max: 5 }),
    })
    .map(({ uppers, rows, costs, step, constant }) => ({
      program: { columns: uppers.map((upper, index) => ({ name: `column ${index}`, upper })), rows },
      objective: { name: 'cost', terms: termsOf(costs.map((cost) => cost * step)), constant },
    })),
);

const knottyRow = (uppers: readonly number[]): fc.Arbitrary<ProgramRow> =>
  fc
    .record({
      kind: fc.constantFrom('cover', 'cover', 'knapsack', 'equation'),
      coefficients: fc.array(fc.integer({ min: 0, max: 7 }), { minLength: uppers.length, maxLength: uppers.length }),
      share: fc.integer({ min: 30, max: 70 }),
    })
    .map(({ kind, coefficients, share }) => {
      const terms = termsOf(coefficients);
      const bound = Math.round((sum(terms, uppers) * share) / 100);
      const lower = kind === 'knapsack' ? null : bound;
      return { name: kind, terms, lower, upper: kind === 'cover' ? null : bound };
    });

/** Small programs that arithmetic alone seldom decides: rows that bind, and relaxations that are often fractional. */
export const knottyProgram: fc.Arbitrary<SmallProgram> = fc
  .array(fc.integer({ min: 1, max: 2 }), { minLength: 4, maxLength: 5 })
  .chain((uppers) =>
    fc
      .record({
        rows: fc.array(knottyRow(uppers), { minLength: 2, maxLength: 4 }),
        costs: fc.array(fc.integer({ min: 5, max: 9 }), { minLength: uppers.length, maxLength: uppers.length }),
        step: fc.constantFrom(1, 25),
      })
      .map(({ rows, costs, step }) => ({
        program: { columns: uppers.map((upper, index) => ({ name: `column ${index}`, upper })), rows },
        objective: { name: 'cost', terms: termsOf(costs.map((cost) => cost * step)), constant: 0 },
      })),
  );

/** Every point within the columns' bounds. */
export function pointsOf(program: Program): readonly ProgramPoint[] {
  return program.columns.reduce<readonly ProgramPoint[]>(
    (points, { upper }) =>
      points.flatMap((point) => Array.from({ length: upper + 1 }, (_, value) => [...point, value])),
    [[]],
  );
}

/** Σ coefficient · value, in plain numbers: small ones only. */
export const sum = (terms: readonly LinearTerm[], point: ProgramPoint): number =>
  terms.reduce((total, { column, coefficient }) => total + coefficient * (point[column] ?? Number.NaN), 0);

export const worth = (objective: Objective, point: ProgramPoint): number =>
  objective.constant + sum(objective.terms, point);

export const isSolution = (program: Program, point: ProgramPoint): boolean =>
  program.rows.every(({ terms, lower, upper }) => {
    const activity = sum(terms, point);
    return (lower === null || activity >= lower) && (upper === null || activity <= upper);
  });

export const solutionsOf = (program: Program): readonly ProgramPoint[] =>
  pointsOf(program).filter((point) => isSolution(program, point));

/** The least value among all solutions; null when there is none. */
export function leastValue({ program, objective }: SmallProgram): number | null {
  const values = solutionsOf(program).map((point) => worth(objective, point));
  return values.length === 0 ? null : Math.min(...values);
}

/** Duals that say nothing: the engines' claims have to be confirmed in other ways. */
export const withoutDuals = (engine: DualEngine): DualEngine => ({
  ...engine,
  relaxationDuals: async (program) => Promise.resolve(program.rows.map(() => 0)),
});

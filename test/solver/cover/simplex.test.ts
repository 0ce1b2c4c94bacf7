import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';

import { COLD, type Simplex, type SimplexStart } from '../../../solver/cover/simplex.js';
import {
  linearOracle,
  programsOf,
  prohibitive,
  simplexOf,
  type LinearProgram,
  type Oracle,
} from './linear-programs.js';
import { share, trying } from '../../support/runs.js';

/** Far more than any program here needs: a basis that comes back would use them up. */
const manyPivots = 5_000;
const small = fc.integer({ min: 1, max: 4 });
const signed = fc.integer({ min: -4, max: 4 }).filter((value) => value !== 0);

const smallCovers = programsOf({
  rows: [1, 6],
  columns: 14,
  senses: ['at least'],
  entry: small,
  cost: fc.integer({ min: 0, max: 20 }),
  bound: fc.integer({ min: 0, max: 6 }),
  entries: 4,
});
const mixedPrograms = programsOf({
  rows: [1, 6],
  columns: 14,
  senses: ['at least', 'at least', 'at most', 'equal'],
  entry: signed,
  cost: fc.integer({ min: 0, max: 20 }),
  bound: fc.integer({ min: -6, max: 6 }),
  entries: 5,
});

let oracle: Oracle;
beforeAll(async () => {
  oracle = await linearOracle();
});

function solved(program: LinearProgram, elastic: number, start: SimplexStart = COLD): Simplex {
  const simplex = simplexOf(program, elastic, start);
  expect(simplex.solve(manyPivots)).toBe(true);
  return simplex;
}

const expectNear = (value: number, expected: number, slack = 0): void =>
  expect(Math.abs(value - expected)).toBeLessThan(1e-3 + 1e-6 * Math.abs(expected) + slack);

/** Rows are set apart by up to 1e-7, which breaks or fills them at the price of their duals. */
const perturbed = ({ duals }: Simplex): number => duals.reduce((sum, dual) => sum + 2e-7 * Math.abs(dual), 0);

/** What the duals prove, as every column pays for them and each has its row's sign. It is also what the point is worth. */
function provenBy({ rows, columns }: LinearProgram, simplex: Simplex): number {
  const { duals, value } = simplex;
  for (const column of columns) {
    const paid = column.rows.reduce((sum, row, at) => sum + (duals[row] ?? 0) * (column.values[at] ?? 0), 0);
    expect(paid).toBeLessThan(column.cost + 1e-3);
  }
  for (const [row, { sense }] of rows.entries()) {
    if (sense === 'at least') expect(duals[row]).toBeGreaterThan(-1e-3);
    if (sense === 'at most') expect(duals[row]).toBeLessThan(1e-3);
  }
  const proven = rows.reduce((sum, { bound }, row) => sum + bound * (duals[row] ?? 0), 0);
  expectNear(value, proven, perturbed(simplex));
  return proven;
}

/** The point's cost and how far it breaks the rows, from the program alone. */
function expectPoint({ rows, columns }: LinearProgram, simplex: Simplex, elastic: number): void {
  const { point } = simplex;
  const broken = rows.reduce((sum, { sense, bound }, row) => {
    const activity = columns.reduce((total, column, index) => {
      const at = column.rows.indexOf(row);
      return at < 0 ? total : total + (column.values[at] ?? 0) * (point[index] ?? 0);
    }, 0);
    const short = sense === 'at most' ? 0 : Math.max(0, bound - activity);
    return sum + short + (sense === 'at least' ? 0 : Math.max(0, activity - bound));
  }, 0);
  const cost = columns.reduce((sum, column, index) => sum + column.cost * (point[index] ?? 0), 0);
  expect(Math.min(...point, 0)).toBe(0);
  expect(Math.abs(broken - simplex.broken)).toBeLessThan(1e-5);
  expectNear(cost + elastic * broken, simplex.value, perturbed(simplex) + elastic * 2e-7 * rows.length);
}

/** What another engine says of the program, with which a simplex that has solved it agrees; null where rows have to be broken. */
function expectLeast(program: LinearProgram, simplex: Simplex): number | null {
  const expected = oracle(program);
  expect(simplex.broken > 1e-4).toBe(expected === null);
  const proven = provenBy(program, simplex);
  if (expected !== null) expectNear(proven, expected);
  return expected;
}

describe('the simplex agrees with another engine', () => {
  it('on covering programs, its duals prove it, and its point is worth it', () => {
    let plans = 0;
    fc.assert(
      fc.property(smallCovers, (program) => {
        const simplex = solved(program, prohibitive);
        expectPoint(program, simplex, prohibitive);
        if (expectLeast(program, simplex) !== null) plans += 1;
      }),
      trying(400),
    );
    expect(plans).toBeGreaterThan(share(100));
  });

  it('on programs with rows and coefficients of every kind', () => {
    const seen = { plan: 0, none: 0 };
    fc.assert(
      fc.property(mixedPrograms, (program) => {
        const simplex = solved(program, prohibitive);
        expectPoint(program, simplex, prohibitive);
        seen[expectLeast(program, simplex) === null ? 'none' : 'plan'] += 1;
      }),
      trying(600),
    );
    expect(Math.min(seen.plan, seen.none)).toBeGreaterThan(share(30));
  });

  it('on covers whose rows are cheap to break: a row that is kept once is not broken again', () => {
    const seen = { broken: 0, cheaper: 0 };
    fc.assert(
      fc.property(smallCovers, fc.integer({ min: 1, max: 6 }), (program, elastic) => {
        const simplex = solved(program, elastic);
        const proven = provenBy(program, simplex);
        expectPoint(program, simplex, elastic);
        const least = oracle(program, elastic) ?? NaN;
        const kept = oracle(program) ?? Infinity;
        expect(proven).toBeGreaterThan(least - 1e-3);
        expect(proven).toBeLessThan(kept + 1e-3);
        if (simplex.broken > 1e-4) seen.broken += 1;
        if (proven < kept - 1e-3 && kept < Infinity) seen.cheaper += 1;
      }),
      trying(400),
    );
    expect(seen.broken).toBeGreaterThan(share(25));
    expect(seen.cheaper).toBeGreaterThan(share(5));
  });
});

describe('the simplex goes on from where it stands', () => {
  it('when columns join, in as many parts as one likes', () => {
    let plans = 0;
    fc.assert(
      fc.property(mixedPrograms, fc.integer({ min: 1, max: 5 }), ({ rows, columns }, step) => {
        const simplex = simplexOf({ rows, columns: [] }, prohibitive);
        let last = Infinity;
        for (let from = 0; from < columns.length; from += step) {
          expect(simplex.solve(manyPivots)).toBe(true);
          expect(simplex.value).toBeLessThan(last + 1e-2);
          last = simplex.value;
          for (const column of columns.slice(from, from + step)) simplex.add(column);
        }
        expect(simplex.solve(manyPivots)).toBe(true);
        if (expectLeast({ rows, columns }, simplex) !== null) plans += 1;
      }),
      trying(300),
    );
    expect(plans).toBeGreaterThan(share(25));
  });

  it('when rows join: the state of the first rows is a start for all of them', () => {
    const seen = { cut: 0, plans: 0 };
    fc.assert(
      fc.property(mixedPrograms, fc.nat(5), fc.boolean(), ({ rows, columns }, first, forgetful) => {
        const known = Math.min(first, rows.length);
        const before = columns.map((column) => restrictedTo(column, known));
        const { state } = solved({ rows: rows.slice(0, known), columns: before }, prohibitive);
        const start = forgetful ? { ...state, inverse: null } : state;
        const warm = solved({ rows, columns }, prohibitive, start);
        if (known < rows.length) seen.cut += 1;
        expectPoint({ rows, columns }, warm, prohibitive);
        if (expectLeast({ rows, columns }, warm) !== null) seen.plans += 1;
      }),
      trying(500),
    );
    expect(Math.min(seen.cut, seen.plans)).toBeGreaterThan(share(50));
  });

  it('when bounds move: the state is a start for other bounds', () => {
    const seen = { moved: 0, plans: 0 };
    const moves = fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(mixedPrograms, moves, ({ rows, columns }, by) => {
        const { state } = solved({ rows, columns }, prohibitive);
        const moved = { rows: rows.map((row, at) => ({ ...row, bound: row.bound + (by[at] ?? 0) })), columns };
        const warm = solved(moved, prohibitive, state);
        if (by.some((each) => each !== 0)) seen.moved += 1;
        expectPoint(moved, warm, prohibitive);
        if (expectLeast(moved, warm) !== null) seen.plans += 1;
      }),
      trying(500),
    );
    expect(Math.min(seen.moved, seen.plans)).toBeGreaterThan(share(50));
  });

  it('with one row more: it is what all rows come to, and as long as it is not solved a bound on that', () => {
    const seen = { plans: 0, early: 0 };
    fc.assert(
      fc.property(mixedPrograms, fc.integer({ min: 0, max: 3 }), ({ rows, columns }, few) => {
        const last = rows.length - 1;
        const row = rows[last];
        if (row === undefined || last === 0) return;
        const before = solved(
          { rows: rows.slice(0, last), columns: columns.map((column) => restrictedTo(column, last)) },
          prohibitive,
        );
        const amounts = Float64Array.from(columns, (column) => column.values[column.rows.indexOf(last)] ?? 0);
        const early = before.withRow(row, amounts);
        early.solve(few);
        const warm = before.withRow(row, amounts);
        expect(warm.solve(manyPivots)).toBe(true);
        const expected = expectLeast({ rows, columns }, warm);
        if (expected === null) return;
        seen.plans += 1;
        // What breaks an equation is there from the beginning, and costs too much.
        if (early.broken > 1e-4 || row.sense === 'equal') return;
        seen.early += 1;
        expect(early.value).toBeLessThan(expected + 1e-2 + perturbed(early));
      }),
      trying(500),
    );
    expect(Math.min(seen.plans, seen.early)).toBeGreaterThan(share(50));
  });

  it('when breaking rows becomes dearer: what was cheaper to break is kept', () => {
    let mended = 0;
    fc.assert(
      fc.property(smallCovers, (program) => {
        const simplex = solved(program, 2);
        const before = simplex.broken;
        while (simplex.broken > 1e-4 && simplex.stiffen()) expect(simplex.solve(manyPivots)).toBe(true);
        if (expectLeast(program, simplex) !== null && before > 1e-4) mended += 1;
      }),
      trying(300),
    );
    expect(mended).toBeGreaterThan(share(25));
  });
});

const restrictedTo = ({ rows, values, cost }: LinearProgram['columns'][number], known: number) => ({
  rows: rows.filter((row) => row < known),
  values: values.filter((_, at) => (rows[at] ?? 0) < known),
  cost,
});

describe('the simplex comes to an end', () => {
  const million = 2_000_000;
  const shape = { senses: ['at least', 'at least', 'at least', 'at most'], columns: 600, entries: 8 } as const;
  it.each([
    ['columns that cost nearly the same', fc.constant(1), fc.integer({ min: 1_000_000, max: 1_000_003 })],
    ['columns with larger entries', small, fc.integer({ min: 1_000_000, max: 1_000_003 })],
    ['columns of every price', small, fc.integer({ min: 1, max: million })],
    ['columns that cost nothing, or all the same', fc.constant(1), fc.constantFrom(0, 1_000_000)],
  ])('on large covers with %s', (_, entry, cost) => {
    const large = programsOf({ ...shape, rows: [40, 60], entry, cost, bound: fc.constantFrom(1, 1, 2, 3) });
    fc.assert(
      fc.property(large, (program) => {
        const simplex = solved(program, million);
        expectPoint(program, simplex, million);
        const expected = expectLeast(program, simplex);
        if (expected === null) return;
        const columns = [...program.columns, ...program.columns];
        expectNear(provenBy(program, solved({ ...program, columns }, million)), expected);
      }),
      { numRuns: 8, endOnFailure: true },
    );
  });
});

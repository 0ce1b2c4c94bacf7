import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { ProgramRow } from '../../../../solver/program.js';
import { ProgramBuilder, Sum } from '../../../../bench/rival/formulation/program-builder.js';
import { share, trying } from '../../../support/runs.js';

const sumOf = (...coefficients: readonly (number | bigint)[]): Sum =>
  coefficients.reduce<Sum>((sum, coefficient, column) => sum.add(column, coefficient), new Sum());

function atMost(sum: Sum, upper: number | bigint): ProgramRow | undefined {
  const builder = new ProgramBuilder();
  builder.atMost('row', sum, upper);
  return builder.build().rows[0];
}

describe('a sum', () => {
  it('adds several shares of one column up, and drops those that come to nothing', () => {
    const sum = new Sum().add(0, 2).add(1).add(0, 3n).add(2, 4).add(2, -4);
    expect(sum.terms()).toEqual([
      { column: 0, coefficient: 5 },
      { column: 1, coefficient: 1 },
    ]);
  });

  it('knows what all of its shares are multiples of', () => {
    expect([sumOf(12, -18, 6).divisor(), sumOf(5, 7).divisor(), new Sum().divisor()]).toEqual([6n, 1n, 0n]);
  });

  it('has no terms beyond the safe integers', () => {
    expect(() => sumOf(2n ** 53n).terms()).toThrow(RangeError);
  });
});

describe('a program', () => {
  it('has its columns and rows in the order in which they came', () => {
    const builder = new ProgramBuilder();
    const [first, second] = [builder.column('first', 3), builder.column('second', 1)];
    builder.equal('equal', new Sum().add(first).add(second), 2);
    builder.atLeast('least', new Sum().add(second, 2), 1);
    builder.atMost('nothing', new Sum(), 0);
    expect(builder.build()).toEqual({
      columns: [
        { name: 'first', upper: 3 },
        { name: 'second', upper: 1 },
      ],
      rows: [
        {
          name: 'equal',
          terms: [
            { column: 0, coefficient: 1 },
            { column: 1, coefficient: 1 },
          ],
          lower: 2,
          upper: 2,
        },
        { name: 'least', terms: [{ column: 1, coefficient: 2 }], lower: 1, upper: null },
      ],
    });
  });

  it('divides a row by what its coefficients have in common, its bound rounded down', () => {
    expect(atMost(sumOf(6, -9), 8)).toMatchObject({ terms: [{ coefficient: 2 }, { coefficient: -3 }], upper: 2 });
    expect(atMost(sumOf(6, -9), -8)).toMatchObject({ upper: -3 });
  });

  it('keeps every point of a row that is too large for exact numbers, and stays near it', () => {
    const large = fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n });
    const seen = { kept: 0, cut: 0 };
    fc.assert(
      fc.property(
        fc.array(fc.tuple(large, fc.nat({ max: 5 })), { minLength: 1, maxLength: 4 }),
        large,
        (shares, upper) => {
          const row = atMost(sumOf(...shares.map(([coefficient]) => coefficient)), upper);
          if (row === undefined) return;
          expect(row.terms.every(({ coefficient }) => Number.isSafeInteger(coefficient))).toBe(true);
          const value = shares.reduce((sum, [coefficient, count]) => sum + coefficient * BigInt(count), 0n);
          const short = row.terms.reduce((sum, term) => sum + term.coefficient * (shares[term.column]?.[1] ?? 0), 0);
          const holds = short <= (row.upper ?? 0);
          seen[holds ? 'kept' : 'cut'] += 1;
          if (value <= upper) expect(holds).toBe(true);
        },
      ),
      trying(1000),
    );
    expect(seen.kept).toBeGreaterThan(share(200));
    expect(seen.cut).toBeGreaterThan(share(200));
  });
});

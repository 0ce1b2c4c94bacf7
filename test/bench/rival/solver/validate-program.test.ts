import { expect, test } from 'vitest';

import type { Program } from '../../../../solver/program.js';
import { validateObjective, validateProgram } from '../../../../bench/rival/solver/validate-program.js';

const column = { name: 'x', upper: 3 };
const rowOf = (column: number, coefficient: number) => ({
  name: 'row',
  terms: [{ column, coefficient }],
  lower: 0,
  upper: null,
});
const programOf = (row: Program['rows'][number]): Program => ({ columns: [column], rows: [row] });

test('a program of safe integers is accepted', () => {
  expect(() => validateProgram(programOf(rowOf(0, -2)))).not.toThrow();
});

test.each([-1, 0.5, Number.NaN, Infinity, 2 ** 53])('the upper bound %d of a column is refused', (upper) => {
  expect(() => validateProgram({ columns: [{ name: 'x', upper }], rows: [] })).toThrow(RangeError);
});

test.each([
  ['a column beyond the last', rowOf(1, 1)],
  ['a negative column', rowOf(-1, 1)],
  ['a fractional coefficient', rowOf(0, 0.5)],
  ['an unsafe coefficient', rowOf(0, 2 ** 53)],
  ['a fractional lower bound', { ...rowOf(0, 1), lower: 0.5 }],
  ['an infinite upper bound', { ...rowOf(0, 1), upper: Infinity }],
  ['a column that stands twice', { ...rowOf(0, 1), terms: [...rowOf(0, 1).terms, ...rowOf(0, 2).terms] }],
])('%s is refused', (_, row) => {
  expect(() => validateProgram(programOf(row))).toThrow(RangeError);
});

test('an objective must fit the program and must not pay', () => {
  const program = programOf(rowOf(0, 1));
  const objective = { name: 'cost', terms: [{ column: 0, coefficient: 2 }], constant: -3 };
  expect(() => validateObjective(program, objective)).not.toThrow();
  expect(() => validateObjective(program, { ...objective, constant: 0.5 })).toThrow(RangeError);
  expect(() => validateObjective(program, { ...objective, terms: [{ column: 0, coefficient: -1 }] })).toThrow(
    RangeError,
  );
  expect(() => validateObjective(program, { ...objective, terms: [{ column: 1, coefficient: 1 }] })).toThrow(
    RangeError,
  );
});

import type { Objective, Program, LinearTerm } from '../../../solver/program.js';

/** Throws RangeError when the program is malformed: that is a mistake of whoever built it, never of the user. */
export function validateProgram(program: Program): void {
  program.columns.forEach((column, index) => {
    if (!Number.isSafeInteger(column.upper) || column.upper < 0) {
      throw new RangeError(
        `column ${index} (${column.name}): upper must be a safe integer from 0, not ${column.upper}`,
      );
    }
  });
  for (const row of program.rows) {
    validateTerms(row.terms, program, `row ${row.name}`);
    for (const bound of [row.lower, row.upper]) {
      if (bound !== null && !Number.isSafeInteger(bound)) {
        throw new RangeError(`row ${row.name}: a bound must be a safe integer or null, not ${bound}`);
      }
    }
  }
}

/** Throws RangeError when the objective is malformed or does not fit the program. */
export function validateObjective(program: Program, objective: Objective): void {
  const place = `objective ${objective.name}`;
  validateTerms(objective.terms, program, place);
  const negative = objective.terms.find((term) => term.coefficient < 0);
  if (negative) throw new RangeError(`${place}: column ${negative.column} has the coefficient ${negative.coefficient}`);
  if (!Number.isSafeInteger(objective.constant)) {
    throw new RangeError(`${place}: the constant must be a safe integer, not ${objective.constant}`);
  }
}

function validateTerms(terms: readonly LinearTerm[], program: Program, place: string): void {
  const seen = new Set<number>();
  for (const { column, coefficient } of terms) {
    if (!Number.isSafeInteger(column) || column < 0 || column >= program.columns.length) {
      throw new RangeError(`${place}: there is no column ${column} among ${program.columns.length}`);
    }
    if (!Number.isSafeInteger(coefficient)) {
      throw new RangeError(`${place}: the coefficient of column ${column} must be a safe integer, not ${coefficient}`);
    }
    if (seen.has(column)) throw new RangeError(`${place}: column ${column} stands in it twice`);
    seen.add(column);
  }
}

/** Other questions whose right answers follow from a claim: an engine that is wrong by chance is not wrong twice alike. */
import type { ProgramColumn, Objective, Program, ProgramRow, LinearTerm } from '../../../solver/program.js';

/** The program in which the objective must be worth at most `value`: without a solution when the optimum is above it. */
export function atMost(value: number, program: Program, objective: Objective): Program {
  const row = { name: `${objective.name} at most ${value}`, terms: objective.terms, lower: null };
  return { columns: program.columns, rows: [...program.rows, { ...row, upper: value - objective.constant }] };
}

/** An objective under which every point is worth 0: any solution will do. */
export const anySolution: Objective = { name: 'any solution', terms: [], constant: 0 };

/** A program that always has a solution, with the extent to which a point breaks the rows of the one it was made from. */
export type ElasticProgram = { readonly program: Program; readonly violation: Objective };

/**
 * The program with a slack column for every bound of its rows; the objective is the sum of all slacks. The program has no
 * solution exactly when the least sum is at least 1.
 */
export function elastic(program: Program): ElasticProgram {
  const columns: ProgramColumn[] = [...program.columns];
  const slacks: LinearTerm[] = [];
  const slack = (row: ProgramRow, most: number, coefficient: 1 | -1): LinearTerm => {
    const column = columns.push({ name: `slack of ${row.name}`, upper: most }) - 1;
    slacks.push({ column, coefficient: 1 });
    return { column, coefficient };
  };
  const rows = program.rows.map((row): ProgramRow => {
    // At the point of zeros a row is short of its lower bound, or beyond its upper one, by the bound itself.
    const short = row.lower !== null && row.lower > 0 ? [slack(row, row.lower, 1)] : [];
    const beyond = row.upper !== null && row.upper < 0 ? [slack(row, -row.upper, -1)] : [];
    return { ...row, terms: [...row.terms, ...short, ...beyond] };
  });
  return { program: { columns, rows }, violation: { name: 'violation', terms: slacks, constant: 0 } };
}

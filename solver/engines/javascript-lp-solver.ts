/**
 * javascript-lp-solver: quick on small covering programs, and wrong on many others. It is kept to what it does best: rows
 * of one scale, no presolve, no cuts, generated names. Its time limit is looked at between nodes only, so that it belongs
 * into a worker that can be ended.
 */
import solverModule, { type Model, type SolveResult } from 'javascript-lp-solver';

import type { EngineClaim, EngineCore } from './engine.js';
import type { Objective, ProgramPoint, Program, ProgramRow } from '../program.js';

/** Values further than this from an integer are not taken for one. */
const ROUNDING = 1e-6;

// The package declares its types as CommonJS, but an import gets its ES module, whose default export is the solver itself.
const solver = solverModule as unknown as typeof solverModule.default;

export async function load(): Promise<EngineCore> {
  return Promise.resolve({ solve });
}

function solve(program: Program, objective: Objective, timeoutMs: number): EngineClaim {
  const started = performance.now();
  const result = solver.Solve(modelOf(program, objective, timeoutMs)) as SolveResult;
  return claimOf(program, result, performance.now() - started < timeoutMs);
}

function modelOf(program: Program, objective: Objective, timeoutMs: number): Model {
  const costs = program.columns.map(() => 0);
  for (const { column, coefficient } of objective.terms) costs[column] = coefficient;
  const variables: Record<string, number>[] = costs.map((cost) => ({ cost }));
  const constraints: [string, Readonly<{ min?: number; max?: number; equal?: number }>][] = [];
  const rows = [...program.rows.filter((row) => row.terms.length > 0), ...upperRows(program, costs)];
  rows.forEach((row, index) => {
    const scale = Math.max(...row.terms.map((term) => Math.abs(term.coefficient)));
    constraints.push([`c${index}`, boundsOf(row, scale)]);
    for (const { column, coefficient } of row.terms) {
      const variable = variables[column];
      if (variable) variable[`c${index}`] = coefficient / scale;
    }
  });
  return {
    optimize: 'cost',
    opType: 'min',
    constraints: Object.fromEntries(constraints),
    variables: Object.fromEntries(variables.map((variable, column) => [`v${column}`, variable])),
    ints: Object.fromEntries(variables.map((_, column) => [`v${column}`, 1] as const)),
    options: { presolve: false, exitOnCycles: false, timeout: timeoutMs },
  };
}

function boundsOf({ lower, upper }: ProgramRow, scale: number): { min?: number; max?: number; equal?: number } {
  if (lower !== null && lower === upper) return { equal: lower / scale };
  return {
    ...(lower === null ? {} : { min: lower / scale }),
    ...(upper === null ? {} : { max: upper / scale }),
  };
}

/** x_j ≤ upper as a row, for the columns where nothing else keeps the engine below it. */
function upperRows(program: Program, costs: readonly number[]): readonly ProgramRow[] {
  const caps = program.columns.map(() => Infinity);
  const wanted = program.columns.map((_, column) => ((costs[column] ?? 0) > 0 ? 0 : Infinity));
  for (const row of program.rows) noteRow(row, caps, wanted);
  return program.columns.flatMap(({ name, upper }, column) => {
    const implied = Math.min(caps[column] ?? Infinity, wanted[column] ?? Infinity) <= upper;
    return implied ? [] : [{ name, terms: [{ column, coefficient: 1 }], lower: null, upper }];
  });
}

/**
 * `caps`: what a row of nonnegative coefficients leaves to a column. `wanted`: more of a column that costs something is
 * never worth it once it alone fulfils every row that it helps; no number is enough where a row has coefficients of both
 * signs.
 */
function noteRow(row: ProgramRow, caps: number[], wanted: number[]): void {
  const nonnegative = row.terms.every((term) => term.coefficient >= 0);
  for (const { column, coefficient } of row.terms) {
    if (coefficient === 0) continue;
    if (nonnegative && row.upper !== null) {
      caps[column] = Math.min(caps[column] ?? Infinity, Math.floor(row.upper / coefficient));
    }
    if (row.lower === null && coefficient > 0) continue;
    const helps = nonnegative && row.lower !== null;
    const enough = helps ? Math.max(0, Math.ceil(row.lower / coefficient)) : Infinity;
    wanted[column] = Math.max(wanted[column] ?? Infinity, enough);
  }
}

/** An answer that comes too late is a mere point: the engine calls what it has optimal when its time is over. */
function claimOf(program: Program, result: SolveResult, inTime: boolean): EngineClaim {
  if (result.bounded === false) return { kind: 'failed', reason: 'it calls a bounded program unbounded' };
  if (!result.feasible) return inTime ? { kind: 'infeasible' } : { kind: 'stopped', point: null };
  const point = pointOf(program, result);
  if (!inTime) return { kind: 'stopped', point };
  return point === null ? { kind: 'failed', reason: 'a value is no integer' } : { kind: 'optimal', point };
}

function pointOf(program: Program, result: SolveResult): ProgramPoint | null {
  // Zeros are left out of the result.
  const values = program.columns.map((_, column) => Number(result[`v${column}`] ?? 0));
  const point = values.map((value) => Math.round(value) + 0);
  return values.every((value, column) => Math.abs(value - (point[column] ?? 0)) <= ROUNDING) ? point : null;
}

/**
 * HiGHS as WebAssembly. Programs are handed over as sparse arrays, not as LP text: no parser, no names that mean something
 * to it, and every integer arrives as it is.
 */
import highsModule, { type Highs, type Model, type ModelData } from 'highs';

import type { EngineClaim } from '../../../solver/engines/engine.js';
import type { Objective, ProgramPoint, Program } from '../../../solver/program.js';
import type { DualCore } from './engines.js';

/** Values further than this from an integer are not taken for one. HiGHS's own integrality tolerance is stricter. */
const ROUNDING = 1e-6;

const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  // Costs are divided by their greatest common divisor, so that values are whole numbers and a better one is better by at
  // least 1. Half a step leaves rounding errors on both sides as far from doing harm as can be.
  mip_abs_gap: 0.5,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  dual_feasibility_tolerance: 1e-9,
  // Bit 16, "enumeration": in version 1.15.1 of HiGHS this presolve rule calls feasible programs infeasible.
  presolve_rule_off: 2 ** 16,
};

// The package declares its types as CommonJS, but an import gets its ES module, whose default export is the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;

/** Loads the engine; one instance serves any number of programs. After an exception it must not be used again. */
export async function load(): Promise<DualCore> {
  const highs = await loadHighs();
  return {
    solve: (program, objective, timeoutMs) =>
      run(highs, modelOf(program, objective, true), timeoutMs, (model) => claimOf(highs, model)),
    relaxationDuals: (program, objective, timeoutMs) =>
      run(highs, modelOf(program, objective, false), timeoutMs, (model) =>
        dualsOf(highs, model, costDivisor(objective)),
      ),
  };
}

function run<Answer>(highs: Highs, data: ModelData, timeoutMs: number, read: (model: Model) => Answer): Answer {
  return highs.withModel(data, (model) => {
    model.options.set({ ...OPTIONS, time_limit: Math.max(timeoutMs, 1) / 1000 });
    model.run();
    return read(model);
  });
}

function modelOf(program: Program, objective: Objective, integer: boolean): ModelData {
  const numCols = program.columns.length;
  const numRows = program.rows.length;
  const divisor = costDivisor(objective);
  const colCost = new Float64Array(numCols);
  for (const { column, coefficient } of objective.terms) colCost[column] = coefficient / divisor;
  const terms = program.rows.flatMap((row) => row.terms);
  const starts = [0];
  for (const row of program.rows) starts.push((starts.at(-1) ?? 0) + row.terms.length);
  return {
    numCols,
    numRows,
    colCost,
    colLower: new Float64Array(numCols),
    colUpper: Float64Array.from(program.columns, (column) => column.upper),
    rowLower: Float64Array.from(program.rows, (row) => row.lower ?? -Infinity),
    rowUpper: Float64Array.from(program.rows, (row) => row.upper ?? Infinity),
    matrix: {
      format: 'csr',
      numRows,
      numCols,
      starts,
      indices: Int32Array.from(terms, (term) => term.column),
      values: Float64Array.from(terms, (term) => term.coefficient),
    },
    ...(integer ? { integrality: new Int32Array(numCols).fill(1) } : {}),
  };
}

/** The greatest common divisor of the costs; 1 when nothing costs anything. */
function costDivisor(objective: Objective): number {
  let divisor = 0;
  for (const { coefficient } of objective.terms) {
    let remainder = coefficient;
    while (remainder !== 0) [divisor, remainder] = [remainder, divisor % remainder];
  }
  return divisor || 1;
}

function claimOf(highs: Highs, model: Model): EngineClaim {
  const statuses = highs.constants.modelStatus;
  const status = model.getModelStatus();
  switch (status) {
    case statuses.optimal: {
      const point = pointOf(highs, model);
      return point === null ? { kind: 'failed', reason: 'optimal, but without integers' } : { kind: 'optimal', point };
    }
    case statuses.infeasible:
    // Every column is bounded, so that nothing can be unbounded.
    case statuses.unboundedOrInfeasible:
      return { kind: 'infeasible' };
    case statuses.timeLimit:
    case statuses.iterationLimit:
    case statuses.solutionLimit:
    case statuses.interrupted:
      return { kind: 'stopped', point: pointOf(highs, model) };
    default:
      return { kind: 'failed', reason: `HiGHS model status ${status}` };
  }
}

/** The point in hand, rounded; null when there is none, or when its values are not next to integers. */
function pointOf(highs: Highs, model: Model): ProgramPoint | null {
  if (model.info.get('primal_solution_status') !== highs.constants.solutionStatus.feasible) return null;
  const values = [...model.getSolution().colValue];
  // Adding zero turns a negative zero into a plain one.
  const point = values.map((value) => Math.round(value) + 0);
  return values.every((value, column) => Math.abs(value - (point[column] ?? 0)) <= ROUNDING) ? point : null;
}

function dualsOf(highs: Highs, model: Model, divisor: number): readonly number[] | null {
  const statuses = highs.constants.modelStatus;
  switch (model.getModelStatus()) {
    case statuses.optimal:
      return [...model.getSolution().rowDual].map((dual) => dual * divisor);
    case statuses.infeasible:
    case statuses.unboundedOrInfeasible: {
      const ray = model.getDualRay()?.values;
      return ray === undefined ? null : [...ray];
    }
    default:
      return null;
  }
}

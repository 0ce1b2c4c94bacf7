import { floorDivide } from './exact.js';
import { objectiveStep, type Floor } from './bound.js';
import type { Objective, Program } from './program.js';

/**
 * The program with lower upper bounds on its columns, such that every solution worth at most `target` is still in it:
 * x_j units of a column lift the cost to at least least + r_j · x_j, so x_j ≤ (target − least) / r_j.
 */
export function tightenTo(target: number, program: Program, objective: Objective, floor: Floor): Program {
  const room = (BigInt(target) - BigInt(objective.constant)) * floor.denominator - floor.least;
  const columns = program.columns.map((column, index) => {
    const reducedCost = floor.reducedCosts[index] ?? 0n;
    if (room < 0n) return { ...column, upper: 0 };
    if (reducedCost <= 0n) return column;
    const most = floorDivide(room, reducedCost);
    return most < BigInt(column.upper) ? { ...column, upper: Number(most) } : column;
  });
  return { columns, rows: program.rows };
}

/**
 * The value up to which about `count` columns can take part in a solution, rounded down to one that the objective can take.
 * Guides the search only. Null when the program has no more columns than that or the objective is constant.
 */
export function targetForColumns(count: number, program: Program, objective: Objective, floor: Floor): number | null {
  const step = objectiveStep(objective);
  if (program.columns.length <= count || step === 0) return null;
  const rising = Float64Array.from(floor.reducedCosts, Number).sort();
  const room = (Number(floor.least) + Math.max(0, rising[count] ?? 0)) / Number(floor.denominator);
  // The multipliers were shrunk a little: what is short of a value by no more than that is meant to reach it.
  return objective.constant + step * Math.floor(room / step + 1e-6);
}

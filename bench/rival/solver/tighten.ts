import { floorDivide } from './integers.js';
import type { Floor } from './bound.js';
import type { Objective, Program } from '../../../solver/program.js';

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

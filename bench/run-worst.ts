import { failuresText, ratioLegend, searchLegend } from './cells.js';
import type { Options } from './options.js';
import { print } from './output.js';
import { shapesOf } from './shapes.js';
import { nothingWrong, solveAll } from './solving.js';
import { unprovenText, worstTable } from './worst-table.js';

/** The worst case of many seeds; false when anything was wrong. */
export async function benchWorst(options: Options): Promise<boolean> {
  const solves = await solveAll(shapesOf(options), options.engines);
  const plans = options.sizes.map(
    ({ pedals, supplies, seeds, capMs }) =>
      `${pedals}×${supplies}: ${seeds.length} seeds a profile of chains, at most ${capMs / 1000} s a solve`,
  );
  print(...plans, searchLegend, ratioLegend, worstTable(solves, options), unprovenText(solves), failuresText(solves));
  return nothingWrong(solves);
}

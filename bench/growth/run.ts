import { writeFile } from 'node:fs/promises';

import { failuresText, searchLegend } from '../cells.js';
import { growthChart } from './chart.js';
import { growthPanels } from './lines.js';
import { growthTable } from './table.js';
import type { Options } from '../options.js';
import { print } from '../output.js';
import { shapesOf } from '../shapes.js';
import { nothingWrong, solveAll } from '../solving.js';

/** How time grows with the size, as tables and a chart; false when anything was wrong. */
export async function benchGrowth(options: Options): Promise<boolean> {
  const solves = await solveAll(shapesOf(options), options.engines);
  const panels = growthPanels(solves, options);
  for (const panel of panels) print(growthTable(panel));
  print(searchLegend, failuresText(solves));
  const charted = panels.filter(({ lines }) => lines.length > 0);
  if (charted.length > 0) {
    await writeFile(options.chart, growthChart(charted, noteOf(options)));
    print(`Chart: ${options.chart}`);
  }
  return nothingWrong(solves);
}

/** What the medians are of. */
function noteOf({ sizes }: Options): string {
  const seeds = Math.min(...sizes.map((size) => size.seeds.length));
  const seconds = Math.max(...sizes.map(({ capMs }) => capMs)) / 1000;
  const boards = seeds === 1 ? 'one board' : `${seeds} boards`;
  return `Marks: medians of ${boards}. Lines: fitted. An arrow: cut off after ${seconds} s, would have taken longer.`;
}

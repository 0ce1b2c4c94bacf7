import { megabytesText } from '../cells.js';
import { emptyBytes, weighAll } from './weigh.js';
import { memoryTable } from './table.js';
import type { Options } from '../options.js';
import { print } from '../output.js';
import { shapesOf } from '../shapes.js';
import { nothingWrong } from '../solving.js';

/** Peak memory by size; false when anything was wrong. */
export async function benchMemory(options: Options): Promise<boolean> {
  const empty = await emptyBytes();
  const weighings = await weighAll(shapesOf(options), options.engines);
  print(
    'Each solve in a process of its own, from nothing; MB (millions of bytes) are its largest resident set.',
    `A process that loads boardfeed and solves nothing: ${megabytesText(empty)} MB.`,
    memoryTable(weighings, options),
  );
  return nothingWrong(weighings);
}

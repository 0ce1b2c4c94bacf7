import { left, megabytesText, provenText, right } from '../cells.js';
import { groupsOf } from '../groups.js';
import type { Weighing } from './weigh.js';
import type { Options } from '../options.js';
import { sizeText } from '../sizes.js';
import { medianOf } from '../statistics.js';
import { tableText } from '../table.js';

/** The weighings of each size, profile of chains and set. */
export function memoryTable(
  weighings: readonly Weighing[],
  options: Pick<Options, 'sizes' | 'chains' | 'engines'>,
): string {
  const rows = groupsOf(weighings, options).map(({ size, chains, set, solves }) => [
    sizeText(size),
    chains,
    set,
    ...cellsOf(solves),
  ]);
  const titles = [right('size'), left('chains'), left('search'), left('proven')];
  return tableText([...titles, right('median MB'), right('most MB'), right('median ms')], rows);
}

function cellsOf(group: readonly Weighing[]): readonly string[] {
  const peaks = group.map(({ peakBytes }) => peakBytes);
  return [
    provenText(group),
    megabytesText(medianOf(peaks)),
    megabytesText(Math.max(...peaks)),
    medianOf(group.map(({ elapsedMs }) => elapsedMs)).toFixed(0),
  ];
}

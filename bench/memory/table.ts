import { left, megabytesText, provenText, right } from '../cells.js';
import type { Weighing } from './weigh.js';
import type { Options } from '../options.js';
import { sameSize, sizeText } from '../sizes.js';
import { medianOf } from '../statistics.js';
import { tableText } from '../table.js';

/** The weighings of each size, profile of chains and set. */
export function memoryTable(
  weighings: readonly Weighing[],
  { sizes, chains, engines }: Pick<Options, 'sizes' | 'chains' | 'engines'>,
): string {
  const rows = sizes.flatMap((size) =>
    chains.flatMap((profile) =>
      engines.flatMap((set) => {
        const group = weighings.filter(
          ({ shape, set: name }) => name === set && shape.chains === profile && sameSize(shape, size),
        );
        return group.length === 0 ? [] : [[sizeText(size), profile, set, ...cellsOf(group)]];
      }),
    ),
  );
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

import { left, megabytesText, provenText, ratioText, right, sampleOf, tagsText, timeText } from './cells.js';
import { groupsOf, type Group } from './groups.js';
import type { Solve } from './measure.js';
import type { Weighing } from './memory/weigh.js';
import type { Options } from './options.js';
import { sameSize, sizeText } from './sizes.js';
import { medianOf, spreadOf } from './statistics.js';
import { tableText } from './table.js';

/** The solves of each size, profile of chains and set, with the ratio of the medians to that of `loadouts`. */
export function solvesTable(
  solves: readonly Solve[],
  weighings: readonly Weighing[],
  options: Pick<Options, 'sizes' | 'chains' | 'engines'>,
): string {
  const titles = [right('size'), left('chains'), left('search'), left('proven'), right('by tags'), right('median ms')];
  const times = [right('least ms'), right('worst ms'), right('× loadouts')];
  const more = [right('in engines'), right('questions'), right('peak MB')];
  const rows = groupsOf(solves, options).map((group) => [...rowOf(group), peakOf(group, weighings)]);
  return tableText([...titles, ...times, ...more], rows);
}

function rowOf({ size, chains, set, solves, reference }: Group): readonly string[] {
  const { median, least, most } = spreadOf(solves.map(sampleOf));
  const compared = reference.length === 0 ? null : spreadOf(reference.map(sampleOf)).median;
  return [
    sizeText(size),
    chains,
    set,
    provenText(solves),
    tagsText(solves),
    timeText(median),
    timeText(least),
    timeText(most),
    ratioText(median, compared),
    shareText(solves),
    String(medianOf(solves.map(({ questions }) => questions))),
  ];
}

const shareText = (group: readonly Solve[]): string =>
  `${Math.round(medianOf(group.map(({ enginesMs, elapsedMs }) => (100 * enginesMs) / elapsedMs)))} %`;

/** The most memory that a solve of the group took in a process of its own; a dash when none was weighed. */
function peakOf({ size, chains, set }: Group, weighings: readonly Weighing[]): string {
  const peaks = weighings
    .filter(({ shape, set: name }) => name === set && shape.chains === chains && sameSize(shape, size))
    .map(({ peakBytes }) => peakBytes);
  return peaks.length === 0 ? '–' : megabytesText(Math.max(...peaks));
}

import { left, provenText, ratioText, right, sampleOf, tagsText, timeText } from './cells.js';
import { groupsOf, type Group } from './groups.js';
import type { Solve } from './measure.js';
import type { Options } from './options.js';
import { sizeText } from './sizes.js';
import { spreadOf } from './statistics.js';
import { tableText } from './table.js';

/** The slowest solve of each size, profile of chains and set, with the ratio to the slowest of `loadouts`. */
export function worstTable(solves: readonly Solve[], options: Pick<Options, 'sizes' | 'chains' | 'engines'>): string {
  const titles = [right('size'), left('chains'), left('search'), left('proven'), right('by tags'), right('median ms')];
  const more = [right('worst ms'), right('at seed'), right('worst × loadouts')];
  return tableText([...titles, ...more], groupsOf(solves, options).map(rowOf));
}

function rowOf({ size, chains, set, solves, reference }: Group): readonly string[] {
  const { median, most } = spreadOf(solves.map(sampleOf));
  const compared = reference.length === 0 ? null : spreadOf(reference.map(sampleOf)).most;
  const slowest = solves.find((solve) => sampleOf(solve).ms === most.ms && sampleOf(solve).atLeast === most.atLeast);
  return [
    sizeText(size),
    chains,
    set,
    provenText(solves),
    tagsText(solves),
    timeText(median),
    timeText(most),
    String(slowest?.shape.seed ?? '–'),
    ratioText(most, compared),
  ];
}

/** For each set how many solves were not proven within their time, such as "not proven in time: HiGHS 3 of 180". */
export function unprovenText(solves: readonly Pick<Solve, 'set' | 'verdict'>[]): string {
  const counts = [...new Set(solves.map(({ set }) => set))].map((name) => {
    const own = solves.filter(({ set }) => set === name);
    const unproven = own.filter(({ verdict }) => verdict.kind !== 'proven').length;
    return `${name} ${unproven} of ${own.length}`;
  });
  return `not proven in time: ${counts.join(', ')}`;
}

import { left, right, timeText } from './cells.js';
import type { InstanceShape } from './instances.js';
import type { Options } from './options.js';
import type { ProgramSize } from './program-size.js';
import { sameSize, sizeText } from './sizes.js';
import type { StartUp } from './start-up.js';
import { exactly, medianOf, spreadOf, type Spread } from './statistics.js';
import { tableText } from './table.js';
import type { Command, Run } from './whole-process.js';

const rangeText = ({ least, most }: Spread): string => `${timeText(least)} – ${timeText(most)}`;

export type SizedShape = { readonly shape: InstanceShape; readonly size: ProgramSize };

/** The first programs of each size and profile: medians over the seeds. */
export function programsTable(
  sized: readonly SizedShape[],
  { sizes, chains }: Pick<Options, 'sizes' | 'chains'>,
): string {
  const rows = sizes.flatMap((size) =>
    chains.map((profile) => {
      const group = sized.filter(({ shape }) => sameSize(shape, size) && shape.chains === profile);
      const median = (field: keyof ProgramSize): string =>
        medianOf(group.map((each) => each.size[field])).toFixed(field === 'buildMs' ? 1 : 0);
      const dimensions = `${median('columns')} × ${median('rows')}`;
      const kept = `${median('kept')} of ${median('usable')}`;
      return [sizeText(size), profile, kept, dimensions, median('terms'), median('buildMs')];
    }),
  );
  const titles = [right('size'), left('chains'), right('supplies kept'), right('columns × rows')];
  return tableText([...titles, right('terms'), right('built in ms')], rows);
}

export function startUpTable(rounds: readonly (readonly StartUp[])[]): string {
  const engines = (rounds[0] ?? []).map(({ engine }) => engine);
  const rows = engines.map((name) => {
    const times = rounds.flat().filter(({ engine }) => engine === name);
    const first = spreadOf(times.map(({ firstMs }) => exactly(firstMs)));
    const next = spreadOf(times.map(({ nextMs }) => exactly(nextMs)));
    return [name, timeText(first.median), rangeText(first), timeText(next.median)];
  });
  return tableText([left('engine'), right('first answer ms'), right('min – max ms'), right('next answer ms')], rows);
}

/** The runs of each command; what went wrong is told below the table. */
export function processesTable(
  results: readonly { readonly command: Command; readonly runs: readonly Run[] }[],
): string {
  const rows = results.map(({ command, runs }) => {
    const times = spreadOf(runs.map(({ elapsedMs }) => exactly(elapsedMs)));
    const good = runs.filter((run) => run.right).length;
    return [command.title, `${good}/${runs.length}`, timeText(times.median), rangeText(times)];
  });
  const faults = results.flatMap(({ command, runs }) =>
    runs
      .filter((run) => !run.right)
      .map(({ exitCode, complaint }) => `WRONG: ${command.title}: exit code ${exitCode ?? 'none'}; ${complaint}`),
  );
  return [tableText([left('command'), left('right'), right('median ms'), right('min – max ms')], rows), ...faults].join(
    '\n',
  );
}

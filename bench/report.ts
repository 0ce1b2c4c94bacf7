import type { Options, Size } from './options.js';
import type { EngineSetName } from './engine-sets.js';
import type { Chains, InstanceShape } from './instances.js';
import type { Solve } from './measure.js';
import type { ProgramSize } from './program-size.js';
import type { StartUp } from './start-up.js';
import { exactly, medianOf, spreadOf, type Sample, type Spread } from './statistics.js';
import { tableText, type TableColumn } from './table.js';
import type { Command, Run } from './whole-process.js';

const left = (title: string): TableColumn => ({ title, align: 'left' });
const right = (title: string): TableColumn => ({ title, align: 'right' });

export const sizeText = ({ pedals, supplies }: Size): string => `${pedals}×${supplies}`;
export const shapeText = (shape: InstanceShape): string =>
  `${sizeText(shape)}, chains ${shape.chains}, seed ${shape.seed}`;

/** A time in whole milliseconds, or tenths below ten; one that was cut off has a `>` before it. */
export function timeText({ ms, atLeast }: Sample): string {
  return `${atLeast ? '>' : ''}${ms.toFixed(ms < 10 ? 1 : 0)}`;
}

const rangeText = ({ least, most }: Spread): string => `${timeText(least)} – ${timeText(most)}`;

/** What counts for a solve: its time if it has a proof that stands, else the cap and that it would have taken longer. */
const sampleOf = ({ verdict, elapsedMs }: Solve, capMs: number): Sample =>
  verdict.kind === 'proven' ? exactly(elapsedMs) : { ms: capMs, atLeast: true };

/** The solves of each size, profile of chains and set, with the ratio of the medians to that of `loadouts`. */
export function solvesTable(solves: readonly Solve[], { sizes, chains, engines, capMs }: Options): string {
  const rows = sizes.flatMap((size) =>
    chains.flatMap((profile) => {
      const spread = (set: EngineSetName): Spread | null => {
        const group = groupOf(solves, size, profile, set);
        return group.length === 0 ? null : spreadOf(group.map((solve) => sampleOf(solve, capMs)));
      };
      return engines.flatMap((set) => {
        const found = spread(set);
        if (found === null) return [];
        const group = groupOf(solves, size, profile, set);
        return [
          [
            sizeText(size),
            profile,
            set,
            provenText(group),
            timeText(found.median),
            rangeText(found),
            ratioText(found.median, spread('loadouts')?.median ?? null),
            shareText(group),
            String(medianOf(group.map(({ questions }) => questions))),
          ],
        ];
      });
    }),
  );
  const titles = [right('size'), left('chains'), left('search'), left('proven'), right('median ms')];
  const more = [right('min – max ms'), right('× loadouts'), right('in engines'), right('questions')];
  return tableText([...titles, ...more], rows);
}

const groupOf = (solves: readonly Solve[], size: Size, chains: Chains, set: EngineSetName): readonly Solve[] =>
  solves.filter(
    ({ shape, set: name }) =>
      name === set && shape.chains === chains && shape.pedals === size.pedals && shape.supplies === size.supplies,
  );

function provenText(group: readonly Solve[]): string {
  const proven = group.filter(({ verdict }) => verdict.kind === 'proven').length;
  const wrong = group.filter(({ verdict }) => verdict.kind === 'wrong').length;
  return `${proven}/${group.length}${wrong > 0 ? `, ${wrong} WRONG` : ''}`;
}

/** A ratio to a median that was cut off is an upper bound, one of a median that was cut off a lower bound. */
export function ratioText(median: Sample, reference: Sample | null): string {
  if (reference === null || (median.atLeast && reference.atLeast)) return '?';
  const ratio = median.ms / reference.ms;
  return `${median.atLeast ? '>' : ''}${reference.atLeast ? '<' : ''}${ratio.toFixed(ratio < 10 ? 2 : 0)}`;
}

const shareText = (group: readonly Solve[]): string =>
  `${Math.round(medianOf(group.map(({ enginesMs, elapsedMs }) => (100 * enginesMs) / elapsedMs)))} %`;

/** One line for each solve without a proof that stands: what is wrong with it, or when it gave up. */
export function failuresText(solves: readonly Solve[], capMs: number): string {
  const lines = solves.flatMap(({ shape, set, verdict, elapsedMs }) => {
    const who = `${shapeText(shape)}, ${set}`;
    if (verdict.kind === 'proven') return [];
    if (verdict.kind === 'wrong') return [`WRONG: ${who}: ${verdict.fault}`];
    const when = `after ${Math.round(elapsedMs)} ms${elapsedMs < capMs ? ', before its time was up' : ''}`;
    return [`not proven: ${who}: ${verdict.score === null ? 'no plan' : 'a plan without a proof'} ${when}`];
  });
  return lines.join('\n');
}

export type SizedShape = { readonly shape: InstanceShape; readonly size: ProgramSize };

/** The first programs of each size and profile: medians over the seeds. */
export function programsTable(sized: readonly SizedShape[], { sizes, chains }: Options): string {
  const rows = sizes.flatMap((size) =>
    chains.map((profile) => {
      const group = sized.filter(({ shape }) => sizeText(shape) === sizeText(size) && shape.chains === profile);
      const median = (field: keyof ProgramSize): string =>
        medianOf(group.map((each) => each.size[field])).toFixed(field === 'buildMs' ? 1 : 0);
      const dimensions = `${median('columns')} × ${median('rows')}`;
      return [
        sizeText(size),
        profile,
        `${median('kept')} of ${median('usable')}`,
        dimensions,
        median('terms'),
        median('buildMs'),
      ];
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

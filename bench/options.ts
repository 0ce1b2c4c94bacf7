import { parseArgs } from 'node:util';

import { chainProfiles, type Chains } from './instances.js';
import { defaults, faultOfSizes, modes, type Mode } from './modes.js';
import { listOf, oneOf, seedsOf, sizeOf, wholeOf } from './option-values.js';
import { engineSetNames, usualEngineSets, weighedSets, type EngineSetName } from './set-names.js';
import type { Size } from './sizes.js';

/** A size with what is measured at it. */
export type MeasuredSize = Size & {
  readonly seeds: readonly number[];
  /** How long one solve may take. */
  readonly capMs: number;
};

export type Options = {
  readonly mode: Mode;
  readonly sizes: readonly MeasuredSize[];
  readonly chains: readonly Chains[];
  readonly engines: readonly EngineSetName[];
  /** How often each whole process is run; 0 leaves them out. */
  readonly runs: number;
  /** The file that the chart of growth is written to. */
  readonly chart: string;
};

/** What the command line asks for, or a sentence that says what is wrong with it. */
export type ParsedOptions =
  | { readonly kind: 'options'; readonly options: Options }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly message: string };

const usualChart = 'bench/growth.svg';

export const usage = `npm run bench -- [--worst | --growth | --memory] [options]
  (nothing)  speed and peak memory at five sizes, whole processes; an hour or so, two at the most
  --worst    the worst case of 50 seeds at 12x40 and of 10 at 30x200; half an hour or so, two hours at the most
  --growth   how time grows with pedals and with supply models, and a chart; five minutes or so
  --memory   peak memory alone, each solve in a process of its own; a quarter of an hour or so
Options, and what counts without them:
  --sizes    pedals x supply models: ${defaults.usual.sizes}; for --worst ${defaults.worst.sizes};
             for --growth, at least three must share their pedals or their supply models
  --chains   which outputs chain leads fit: ${chainProfiles.join(',')}; for --growth ${defaults.growth.chains.join(',')}
  --seeds    how many instances of each kind, or 3..4 for those two: 5; for --worst 50 and 10, for --memory 1
  --seconds  the most that one solve may take: 60, beyond 30 pedals 120; for --worst 120, for --growth 20
  --engines  ${usualEngineSets.join(',')}; there are ${engineSetNames.join(', ')}
  --runs     how often each whole process is run: 5; 0 leaves them out
  --chart    where --growth writes its chart: ${usualChart}`;

/** Reads the arguments; what is left out takes the value that `usage` shows. */
export function parseOptions(args: readonly string[]): ParsedOptions {
  try {
    const { values } = parseArgs({ args: [...args], options: flags });
    return values.help === true ? { kind: 'help' } : { kind: 'options', options: optionsOf(values) };
  } catch (error) {
    return { kind: 'wrong', message: error instanceof Error ? error.message : String(error) };
  }
}

const flags = {
  help: { type: 'boolean' },
  worst: { type: 'boolean' },
  growth: { type: 'boolean' },
  memory: { type: 'boolean' },
  sizes: { type: 'string' },
  chains: { type: 'string' },
  seeds: { type: 'string' },
  seconds: { type: 'string' },
  engines: { type: 'string' },
  runs: { type: 'string' },
  chart: { type: 'string' },
} as const;

type Values = ReturnType<typeof parseArgs<{ readonly args: string[]; readonly options: typeof flags }>>['values'];

function optionsOf(values: Values): Options {
  const mode = modeOf(values);
  const usual = defaults[mode];
  const seeds = values.seeds === undefined ? null : seedsOf(values.seeds);
  const seconds = values.seconds === undefined ? null : wholeOf('--seconds', values.seconds, 1, 3600);
  const sizes = listOf(values.sizes ?? usual.sizes).map(sizeOf);
  const fault = faultOfSizes(mode, sizes);
  if (fault !== null) throw new RangeError(fault);
  return {
    mode,
    sizes: sizes.map((size) => ({
      ...size,
      seeds: seeds ?? seedsOf(String(usual.seeds(size))),
      capMs: (seconds ?? usual.seconds(size)) * 1000,
    })),
    chains:
      values.chains === undefined
        ? usual.chains
        : listOf(values.chains).map((name) => oneOf('--chains', chainProfiles, name)),
    engines: listOf(values.engines ?? usualEngineSets.join(',')).map((name) =>
      oneOf('--engines', mode === 'memory' ? weighedSets : engineSetNames, name),
    ),
    runs: wholeOf('--runs', values.runs ?? '5', 0, 1000),
    chart: values.chart ?? usualChart,
  };
}

/** @throws RangeError for two modes at once, and for an option that means nothing in the mode. */
function modeOf(values: Values): Mode {
  const [mode = 'usual', another] = modes.filter((name) => name !== 'usual' && values[name] === true);
  if (another !== undefined) throw new RangeError(`--${mode} and --${another} are two runs, not one`);
  if (values.runs !== undefined && mode !== 'usual') throw new RangeError(`--runs means nothing with --${mode}`);
  if (values.chart !== undefined && mode !== 'growth') throw new RangeError('--chart goes with --growth only');
  return mode;
}

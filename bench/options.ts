import { parseArgs } from 'node:util';

import { engineSetNames, usualEngineSets, type EngineSetName } from './engine-sets.js';
import { chainProfiles, type Chains } from './instances.js';

/** How many pedals, and how many supply models to choose from. */
export type Size = { readonly pedals: number; readonly supplies: number };

export type Options = {
  readonly sizes: readonly Size[];
  readonly chains: readonly Chains[];
  readonly seeds: readonly number[];
  /** How long one solve may take. */
  readonly capMs: number;
  readonly engines: readonly EngineSetName[];
  /** How often each whole process is run; 0 leaves them out. */
  readonly runs: number;
};

/** What the command line asks for, or a sentence that says what is wrong with it. */
export type ParsedOptions =
  { readonly kind: 'options'; readonly options: Options } | { readonly kind: 'wrong'; readonly message: string };

export const usage = `npm run bench -- [options]
  --sizes 6x6,12x40,20x100,30x200   pedals x supply models
  --chains ${chainProfiles.join(',')}        which outputs chain leads fit
  --seeds 5                         instances 1 to 5 of each kind; 3..3 is the third one alone
  --seconds 60                      the most that one solve may take
  --engines ${usualEngineSets.join(',')}   of ${engineSetNames.join(', ')}
  --runs 5                          runs of each whole process; 0 leaves them out`;

/** Reads the arguments; what is left out takes the value that `usage` shows. */
export function parseOptions(args: readonly string[]): ParsedOptions {
  try {
    const { values } = parseArgs({ args: [...args], options: flags });
    return {
      kind: 'options',
      options: {
        sizes: list(values.sizes).map(sizeOf),
        chains: list(values.chains).map((name) => oneOf('--chains', chainProfiles, name)),
        seeds: seedsOf(values.seeds),
        capMs: whole('--seconds', values.seconds, 1, 3600) * 1000,
        engines: list(values.engines).map((name) => oneOf('--engines', engineSetNames, name)),
        runs: whole('--runs', values.runs, 0, 1000),
      },
    };
  } catch (error) {
    return { kind: 'wrong', message: error instanceof Error ? error.message : String(error) };
  }
}

const flags = {
  sizes: { type: 'string', default: '6x6,12x40,20x100,30x200' },
  chains: { type: 'string', default: chainProfiles.join(',') },
  seeds: { type: 'string', default: '5' },
  seconds: { type: 'string', default: '60' },
  engines: { type: 'string', default: usualEngineSets.join(',') },
  runs: { type: 'string', default: '5' },
} as const;

const list = (text: string): readonly string[] => [...new Set(text.split(','))];

function sizeOf(text: string): Size {
  const [pedals, supplies, ...rest] = text.split(/[x×]/);
  if (pedals === undefined || supplies === undefined || rest.length > 0) {
    throw new RangeError(`--sizes takes sizes such as 12x40, not "${text}"`);
  }
  // The smallest shop of `instance` has six models: a wall adapter for each kind of power.
  return { pedals: whole('--sizes', pedals, 1, 200), supplies: whole('--sizes', supplies, 6, 5000) };
}

function seedsOf(text: string): readonly number[] {
  const [first, last] = text.includes('..') ? text.split('..', 2) : ['1', text];
  const from = whole('--seeds', first ?? '', 1, 1_000_000);
  const to = whole('--seeds', last ?? '', from, 1_000_000);
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

function whole(flag: string, text: string, least: number, most: number): number {
  const value = /^\d+$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new RangeError(`${flag} takes whole numbers from ${least} to ${most}, not "${text}"`);
}

function oneOf<Name extends string>(flag: string, names: readonly Name[], text: string): Name {
  const found = names.find((name) => name === text);
  if (found === undefined) throw new RangeError(`${flag} takes ${names.join(', ')}, not "${text}"`);
  return found;
}

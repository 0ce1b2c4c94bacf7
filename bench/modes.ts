import type { Chains } from './instances.js';
import { seriesOf } from './growth/series.js';
import type { Size } from './sizes.js';

/** What is measured: speed at the usual sizes, the worst case of many seeds, growth with the size, or memory. */
export const modes = ['usual', 'worst', 'growth', 'memory'] as const;
export type Mode = (typeof modes)[number];

/** What counts in a mode where the command line says nothing. */
export type Defaults = {
  readonly sizes: string;
  readonly chains: readonly Chains[];
  /** How many instances of a size. */
  readonly seeds: (size: Size) => number;
  /** The most that one solve of a size may take. */
  readonly seconds: (size: Size) => number;
};

const usualSizes = '6x6,12x40,20x100,30x200,60x300';
const everyProfile = ['none', 'adapters', 'all'] as const;

/** Beyond thirty pedals HiGHS needs minutes; there the cap keeps the whole run bearable. */
const usualSeconds = ({ pedals }: Size): number => (pedals <= 30 ? 60 : 120);

/** Two series, small enough that nearly all solves end within their cap, and the run within five minutes or so. */
const growthSizes = '5x100,10x100,15x100,20x100,30x100,40x100,20x25,20x50,20x200,20x400';

export const defaults: Readonly<Record<Mode, Defaults>> = {
  usual: { sizes: usualSizes, chains: everyProfile, seeds: () => 5, seconds: usualSeconds },
  worst: {
    sizes: '12x40,30x200',
    chains: everyProfile,
    seeds: ({ pedals }) => (pedals <= 12 ? 50 : 10),
    seconds: () => 120,
  },
  growth: { sizes: growthSizes, chains: ['adapters'], seeds: () => 5, seconds: () => 20 },
  memory: { sizes: usualSizes, chains: everyProfile, seeds: () => 1, seconds: usualSeconds },
};

/** A sentence about what the mode cannot do with these sizes; null when it can be measured. */
export const faultOfSizes = (mode: Mode, sizes: readonly Size[]): string | null =>
  mode === 'growth' && seriesOf(sizes).length === 0
    ? '--growth takes --sizes of which at least three share their pedals or their supply models'
    : null;

import { sampleOf } from '../cells.js';
import { seriesOf, type Series } from './series.js';
import type { Chains } from '../instances.js';
import type { Solve } from '../measure.js';
import type { Options } from '../options.js';
import { fitPower, type PowerFit } from './power-fit.js';
import type { EngineSetName } from '../set-names.js';
import { sameSize, type Size } from '../sizes.js';
import { spreadOf, type Spread } from '../statistics.js';

/** The solves of one set at one size of a series. */
export type GrowthPoint = {
  readonly size: Size;
  /** How many pedals or supply models: what grows. */
  readonly count: number;
  readonly spread: Spread;
  /** At least one. */
  readonly solves: readonly Solve[];
};

/** How the median time of one set grows, the smallest size first. */
export type GrowthLine = {
  readonly set: EngineSetName;
  readonly points: readonly GrowthPoint[];
  /** Through the medians. */
  readonly fit: PowerFit;
};

/** What is compared: the lines of all sets for one series and one profile of chains. */
export type GrowthPanel = {
  readonly series: Series;
  readonly chains: Chains;
  readonly lines: readonly GrowthLine[];
};

/** The panels of each profile, in the order of the options; a set without two sizes has no line. */
export const growthPanels = (
  solves: readonly Solve[],
  { sizes, chains, engines }: Pick<Options, 'sizes' | 'chains' | 'engines'>,
): readonly GrowthPanel[] =>
  chains.flatMap((profile) => {
    const own = solves.filter(({ shape }) => shape.chains === profile);
    return seriesOf(sizes).map((series) => ({
      series,
      chains: profile,
      lines: engines.flatMap((set) =>
        lineOf(
          own.filter((solve) => solve.set === set),
          set,
          series,
        ),
      ),
    }));
  });

function lineOf(solves: readonly Solve[], set: EngineSetName, series: Series): readonly GrowthLine[] {
  const points = series.sizes.flatMap((size) => {
    const group = solves.filter(({ shape }) => sameSize(shape, size));
    return group.length === 0
      ? []
      : [{ size, count: size[series.varies], spread: spreadOf(group.map(sampleOf)), solves: group }];
  });
  if (points.length < 2) return [];
  const fit = fitPower(points.map(({ count, spread }) => ({ size: count, sample: spread.median })));
  return [{ set, points, fit }];
}

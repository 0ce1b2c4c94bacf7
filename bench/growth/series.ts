import type { Size } from '../sizes.js';

/** Sizes that differ in one thing only, the smallest first. */
export type Series = {
  readonly varies: 'pedals' | 'supplies';
  /** How many there are of the other thing. */
  readonly fixed: number;
  readonly sizes: readonly Size[];
};

/** A line through fewer sizes would say nothing. */
const FEWEST_SIZES = 3;

/** The series that the sizes hold: those of pedals first. A size can be in one of either kind. */
export const seriesOf = (sizes: readonly Size[]): readonly Series[] =>
  (['pedals', 'supplies'] as const).flatMap((varies) => {
    const other = varies === 'pedals' ? 'supplies' : 'pedals';
    return [...new Set(sizes.map((size) => size[other]))]
      .map((fixed) => ({ varies, fixed, sizes: withFixed(sizes, other, fixed, varies) }))
      .filter((series) => series.sizes.length >= FEWEST_SIZES);
  });

const withFixed = (
  sizes: readonly Size[],
  other: Series['varies'],
  fixed: number,
  varies: Series['varies'],
): readonly Size[] => sizes.filter((size) => size[other] === fixed).toSorted((a, b) => a[varies] - b[varies]);

const pedalsText = (count: number): string => `${count} pedals`;
const suppliesText = (count: number): string => `${count} supply models`;

/** What grows, such as "pedals, with 100 supply models". */
export const seriesText = ({ varies, fixed }: Series): string =>
  varies === 'pedals' ? `pedals, with ${suppliesText(fixed)}` : `supply models, with ${pedalsText(fixed)}`;

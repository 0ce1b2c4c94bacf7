import { inletPedal, isFed } from '../domain/inlet.js';
import { natureOf, type Source } from '../domain/source.js';
import type { Bench } from './bench.js';
import { inletSortOf, type InletSort } from './inlet-sort.js';
import type { Offer } from './offers.js';
import type { PedalClass } from './pedal-class.js';

/**
 * The inlets of all fed units that can be of use as pedals that are fed when their units are in use: each of these feeds a
 * pedal, so that there are no more of a sort than pedals.
 */
export function inletClasses(offers: readonly Offer[], pedals: number): readonly PedalClass[] {
  const sorts = new Map<InletSort, { readonly of: Offer['supply'][]; units: number }>();
  for (const { supply, owned, forSale } of offers) {
    const sort = inletSortOf(supply);
    if (sort === null || owned + forSale === 0) continue;
    const known = sorts.get(sort) ?? { of: [], units: 0 };
    known.of.push(supply);
    known.units = Math.min(pedals, known.units + owned + forSale);
    sorts.set(sort, known);
  }
  return [...sorts].flatMap(([inlet, { of, units }]) => {
    const [first] = of.filter(isFed);
    if (first === undefined) return [];
    const members = Array.from({ length: units }, (_, at) => inletPedal(first, at + 1));
    return members.slice(0, 1).map((like) => ({
      like,
      members,
      berth: null,
      exposedToday: false,
      pinned: false,
      inlet,
    }));
  });
}

/** The sorts of inlets that a bench knows, in order. */
export const inletSorts = ({ classes }: Pick<Bench, 'classes'>): readonly InletSort[] => [
  ...new Set(classes.flatMap(({ inlet }) => inlet ?? [])),
];

/** The classes of a sort; mostly one. */
export const classesOfSort = ({ classes }: Pick<Bench, 'classes'>, sort: InletSort): readonly number[] =>
  classes.flatMap(({ inlet }, index) => (inlet === sort ? [index] : []));

/** Whether an inlet may hang by such a use: on one output, of a supply that stands on the mains or on its own charge. */
export const mayFeedInlet = (source: Source, { outputs }: { readonly outputs: readonly unknown[] }): boolean =>
  natureOf(source).feedsInlets && outputs.length === 1;

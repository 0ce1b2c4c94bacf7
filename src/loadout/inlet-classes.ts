import { gathered } from '../../solver/gathered.js';
import { inletPedal, isFed } from '../domain/inlet.js';
import { natureOf, type Source } from '../domain/source.js';
import type { Bench } from './bench.js';
import { inletSortOf, type InletSort } from './inlet-sort.js';
import type { Offer } from './offers.js';
import type { PedalClass } from './pedal-class.js';
import { nothingToday, unitsHeld, type Today } from './today.js';

/**
 * The inlets of all fed units that can be of use as pedals that are fed when their units are in use: each of these feeds a
 * pedal, so that there are no more of a sort than pedals. One that must stay where it is is a class of its own.
 */
export function inletClasses(
  offers: readonly Offer[],
  pedals: number,
  today: Today = nothingToday,
): readonly PedalClass[] {
  const sorts = new Map<InletSort, { readonly of: Offer['supply'][]; units: number }>();
  for (const { supply, owned, forSale } of offers) {
    const sort = inletSortOf(supply);
    if (sort === null || owned + forSale === 0) continue;
    const known = sorts.get(sort) ?? { of: [], units: 0 };
    known.of.push(supply);
    known.units = Math.min(pedals, known.units + owned + forSale);
    sorts.set(sort, known);
  }
  return gathered([...sorts], ([inlet, { of, units }]) => {
    const fed = of.filter(isFed);
    const apart = gathered(unitsHeld(today), ({ supply: id, unit }) => {
      const supply = fed.find((one) => one.id === id);
      return supply === undefined ? [] : [inletPedal(supply, unit)];
    });
    const [first] = fed;
    const others = first === undefined ? [] : numbers(units - apart.length).map((unit) => inletPedal(first, unit));
    return [
      ...apart.map((like) => ({ like, members: [like], berth: today.berths.get(like.id) ?? null, pinned: true })),
      ...others.slice(0, 1).map((like) => ({ like, members: others, berth: null, pinned: false })),
    ].map((each) => ({ ...each, exposedToday: false, inlet }));
  });
}

const numbers = (count: number): readonly number[] => Array.from({ length: Math.max(0, count) }, (_, at) => at + 1);

/** The sorts of inlets that a bench knows, in order. */
export const inletSorts = ({ classes }: Pick<Bench, 'classes'>): readonly InletSort[] => [
  ...new Set(classes.flatMap(({ inlet }) => inlet ?? [])),
];

/** The classes of a sort; mostly one. */
export const classesOfSort = ({ classes }: Pick<Bench, 'classes'>, sort: InletSort): readonly number[] =>
  gathered(classes, ({ inlet }, index) => (inlet === sort ? [index] : []));

/** Whether an inlet may hang by such a use: on one output, of a supply that stands on the mains or on its own charge. */
export const mayFeedInlet = (source: Source, { outputs }: { readonly outputs: readonly unknown[] }): boolean =>
  natureOf(source).feedsInlets && outputs.length === 1;

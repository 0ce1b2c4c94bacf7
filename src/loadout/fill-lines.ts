import { gathered } from '../../solver/gathered.js';
import type { ContentItem, FrameJob } from './content.js';
import type { PlaceOption } from './frame.js';
import { netOf, type Rents } from './rents.js';
import { replaceable, replacersFirst } from './replacement.js';

/** The pedals of a class that may hang on a unit, with everything that one of them may do. */
export type Line = {
  readonly pedal: number;
  /** How many there are. */
  readonly count: number;
  /** How much one pays for being there. */
  readonly rent: number;
  readonly solos: readonly ContentItem[];
  /** Its place in each pool, with its value and what is left of that when rents are paid; null where it cannot hang. */
  readonly places: readonly (Placed | null)[];
  /** The later lines whose pedals it could replace at no loss. */
  readonly replaceable: readonly number[];
};

export type Placed = { readonly place: PlaceOption; readonly value: number; readonly net: number };

type PlainLine = Omit<Line, 'replaceable'> & {
  /** It begins chains that others do not, so that it comes before them, whatever it is worth. */
  readonly isEarly: boolean;
};

/** More pedals of one class than this find no place on one unit. */
const mostCopies = 100;

/** A line for every class, those that can replace others before these. */
export function linesOf({ solos, pools, counts }: FrameJob, rents: Rents): readonly Line[] {
  const classes = new Set(gathered(solos, ({ pedals }) => pedals));
  for (const { candidates } of pools) for (const { place } of candidates) classes.add(place.pedal);
  const picky = pools.map(({ chain }) => chain.places.some(({ begins }) => !begins));
  const plain = [...classes].map((pedal): PlainLine => ({
    pedal,
    count: Math.min(counts[pedal] ?? 0, mostCopies),
    rent: rents.pedals[pedal] ?? 0,
    solos: solos.filter((item) => item.pedals[0] === pedal),
    places: pools.map(({ candidates }): Placed | null => {
      const candidate = candidates.find(({ place }) => place.pedal === pedal);
      if (candidate === undefined) return null;
      const { place, value } = candidate;
      return { place, value, net: netOf({ value, pedals: [pedal], weights: place.weights }, rents) };
    }),
    isEarly: pools.some(
      ({ candidates }, pool) => picky[pool] && candidates.some(({ place }) => place.pedal === pedal && place.begins),
    ),
  }));
  const worth = ({ solos: alone, places }: PlainLine): number =>
    Math.max(0, ...alone.map(({ value }) => value), ...places.map((placed) => placed?.value ?? 0));
  const order = replacersFirst(
    plain.filter(({ count }) => count > 0),
    worth,
    canReplace,
  ).toSorted((a, b) => Number(b.isEarly) - Number(a.isEarly));
  const later = replaceable(order, canReplace);
  return order.map((line, index) => ({ ...line, replaceable: later[index] ?? [] }));
}

/** Whether a pedal can do all that another does, for no less and without taking more. */
function canReplace(one: PlainLine, two: PlainLine): boolean {
  return (
    two.solos.every((item) => one.solos.some((other) => coversSolo(other, item))) &&
    two.places.every((placed, pool) => placed === null || coversPlace(one.places[pool] ?? null, placed))
  );
}

const coversSolo = (other: ContentItem, item: ContentItem): boolean =>
  other.value >= item.value &&
  other.banks.length === item.banks.length &&
  other.banks.every((bank, index) => bank === item.banks[index]) &&
  other.weights.every((weight, at) => weight <= (item.weights[at] ?? 0));

const coversPlace = (one: Placed | null, two: Placed): boolean =>
  one !== null &&
  one.value >= two.value &&
  one.place.load <= two.place.load &&
  one.place.surge <= two.place.surge &&
  (!one.place.sole || two.place.sole) &&
  one.place.weights.every((weight, at) => weight <= (two.place.weights[at] ?? 0));

import type { Settled } from './fold.js';
import type { Question } from './question.js';

/** The numbers of the features: pedal classes first, then lead kinds, then these. */
export type Features = {
  readonly leads: number;
  readonly unit: number;
  readonly money: number;
  readonly earlier: number;
  /** How many pedals there are of the so many hungriest classes together: 1 class, 2 classes and so on. */
  readonly hungriest: number;
  readonly count: number;
  /** The classes by their draw, the hungriest first. */
  readonly byDraw: readonly number[];
};

export function featuresOf({ bench }: Question, earlier: readonly Settled[]): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  const hungriest = unit + 2 + earlier.length;
  const draws = bench.classes.map(({ like }) =>
    like.draw.kind === 'flat' ? like.draw.microamps : Math.max(...like.draw.microamps.values()),
  );
  const byDraw = [...bench.classes.keys()].sort((a, b) => (draws[b] ?? 0) - (draws[a] ?? 0));
  return { leads, unit, money: unit + 1, earlier: unit + 2, hungriest, count: hungriest + byDraw.length, byDraw };
}

/** A tag on the hungriest classes together is one on each of them. */
export function pedalTags(tags: Float64Array, { leads, hungriest, byDraw }: Features): Float64Array {
  const pedals = tags.slice(0, leads);
  let together = 0;
  for (let index = byDraw.length - 1; index >= 0; index -= 1) {
    together += tags[hungriest + index] ?? 0;
    const pedal = byDraw[index] ?? 0;
    pedals[pedal] = (pedals[pedal] ?? 0) + together;
  }
  return pedals;
}

/** How many pedals of the hungriest classes a loadout has, for every number of classes. */
export function hungriestAmounts(
  pedals: ReadonlyMap<number, number>,
  { hungriest, byDraw }: Features,
): readonly (readonly [number, number])[] {
  let together = 0;
  return byDraw.flatMap((pedal, index) => {
    together += pedals.get(pedal) ?? 0;
    return together > 0 ? [[hungriest + index, together] as const] : [];
  });
}

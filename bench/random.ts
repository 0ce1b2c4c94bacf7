import { randomNumbers } from './rival/solver/permute.js';

/** Chance that can be repeated: the same seed gives the same draws on every machine. */
export type Random = {
  /** A whole number between both bounds, both included. */
  readonly whole: (from: number, to: number) => number;
  /** True in so many of a hundred draws. */
  readonly percent: (share: number) => boolean;
  /** One of the items, all alike. @throws RangeError when there is none. */
  readonly pick: <Item>(items: readonly Item[]) => Item;
};

export function randomFrom(seed: number): Random {
  const next = randomNumbers(seed);
  const whole = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return {
    whole,
    percent: (share) => next() * 100 < share,
    pick: (items) => {
      if (items.length === 0) throw new RangeError('nothing to pick from');
      return items[whole(0, items.length - 1)] as (typeof items)[number]; // in bounds by construction
    },
  };
}

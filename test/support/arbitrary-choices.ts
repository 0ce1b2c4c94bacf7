import fc from 'fast-check';

/** One of the values, each with its weight; shrinks to the first. */
export const weighted = <Value>(
  ...choices: readonly (readonly [weight: number, value: Value])[]
): fc.Arbitrary<Value> =>
  fc.oneof({ withCrossShrink: true }, ...choices.map(([weight, value]) => ({ weight, arbitrary: fc.constant(value) })));

/** True in so many of a hundred cases; shrinks to false. */
export const percent = (share: number): fc.Arbitrary<boolean> => weighted([100 - share, false], [share, true]);

/** The item that a natural number of any size stands for, or undefined of an empty list. */
export const pick = <Item>(items: readonly Item[], choice: number): Item | undefined => items[choice % items.length];

/** A natural number to be used with `pick`. */
export const choice: fc.Arbitrary<number> = fc.nat({ max: 59 });

import type { Criterion } from '../domain/aim.js';

/** A tier's place in a number: Σ of (tier's value / unit) × weight. Its values are multiples of the unit. */
export type Digit<Of extends Criterion = Criterion> = {
  readonly tier: Of;
  readonly unit: number;
  readonly weight: number;
};

/** What the tiers come to, the most important first, when the number is this; of a bound, what they cannot undercut. */
export function tierValues<Of extends Criterion>(
  { tiers }: { readonly tiers: readonly Digit<Of>[] },
  value: number,
): readonly (readonly [Of, number])[] {
  let rest = value;
  return tiers.map(({ tier, weight, unit }) => {
    const digit = Math.floor(rest / weight);
    rest -= digit * weight;
    return [tier, digit * unit] as const;
  });
}

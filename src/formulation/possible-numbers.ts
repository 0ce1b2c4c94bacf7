import type { PossibleCosts } from '../../solver/cover/program.js';
import type { ScalarObjective } from './scalar-objective.js';
import type { Known, TierRanges } from './tier-ranges.js';

/** After so many values that were tried any number counts as possible: that says less, and nothing wrong. */
const mostTries = 2_000;

/**
 * The numbers of a step that plans can have as far as their tiers' ranges tell, given what earlier steps have settled: what
 * the tiers of a number come to follows from the number, as none outweighs the one before.
 */
export function possibleNumbers(
  { tiers }: Pick<ScalarObjective, 'tiers'>,
  ranges: TierRanges,
  settled: Known,
): PossibleCosts {
  let tries = 0;
  /** The possible sum of the tiers from a place on that is the greatest up to a limit, or the least from it on. */
  const nearest = (limit: number, side: 'below' | 'above', at: number, known: Known): number | null => {
    const digit = tiers[at];
    if (digit === undefined) return side === 'below' ? (limit >= 0 ? 0 : null) : limit <= 0 ? 0 : null;
    const { tier, unit, weight } = digit;
    const range = ranges(tier, known);
    const [least, most] = [Math.ceil(range.least / unit), Math.floor(range.most / unit)];
    const near = Math.floor(limit / weight);
    const [first, last, step] = side === 'below' ? [Math.min(most, near), least, -1] : [Math.max(least, near), most, 1];
    for (let value = first; step * value <= step * last; value += step) {
      if ((tries += 1) > mostTries) return Math.max(0, limit);
      const rest = nearest(limit - value * weight, side, at + 1, new Map(known).set(tier, value * unit));
      if (rest !== null) return value * weight + rest;
    }
    return null;
  };
  const sought = (limit: number, side: 'below' | 'above'): number | null => {
    tries = 0;
    return nearest(limit, side, 0, settled);
  };
  return {
    below: (number) => sought(number - 1, 'below') ?? -1,
    from: (number) => sought(number, 'above') ?? Infinity,
  };
}

import type { SearchOutcome } from './optimiser.js';

/** A plan in hand with the values of all tiers that are asked about, in their order. */
export type Found = Pick<Extract<SearchOutcome, { kind: 'proven' }>, 'feeds' | 'values'>;

/** Whether the first tier in which they differ has less; anything is better than nothing. */
export function isBetter(one: Found, other: Found | null): boolean {
  if (other === null) return true;
  for (const [tier, value] of one.values) {
    const difference = value - (other.values.get(tier) ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}

import type { Tier } from '../domain/aim.js';
import type { ProofTier } from '../domain/proof.js';
import type { ProofGround } from './claim.js';
import { rangeOf } from './tier-ranges.js';

type Known = ReadonlyMap<Tier, number>;

/** After so many amounts that were tried any number counts as possible, so that no claim, however great, takes for ever. */
const mostTries = 2_000;

/**
 * The greatest number below a step's value that any plan can have, as far as is known of its tiers without tags; −1 when
 * there is none. The tiers' weights rank, so that a number is as great as its first tiers are.
 */
export function greatestBelow(
  value: bigint,
  tiers: readonly ProofTier[],
  /** What the tiers of earlier steps come to in every plan that keeps to them. */
  earlier: Known,
  ground: ProofGround,
): bigint {
  return greatestUpTo(value - 1n, tiers, earlier, ground, { left: mostTries }) ?? -1n;
}

function greatestUpTo(
  limit: bigint,
  [tier, ...others]: readonly ProofTier[],
  known: Known,
  ground: ProofGround,
  tries: { left: number },
): bigint | null {
  if (limit < 0n) return null;
  if (tier === undefined) return 0n;
  const weight = BigInt(tier.weight);
  const { least, most } = rangeOf(tier.tier, known, ground);
  const [from, to] = [Math.ceil(least / tier.unit), Math.min(Math.floor(most / tier.unit), Number(limit / weight))];
  for (let amount = to; amount >= from; amount -= 1) {
    if ((tries.left -= 1) < 0) return limit;
    const here = weight * BigInt(amount);
    const knownNow = new Map(known).set(tier.tier, amount * tier.unit);
    const rest = greatestUpTo(limit - here, others, knownNow, ground, tries);
    if (rest !== null) return here + rest;
  }
  return null;
}

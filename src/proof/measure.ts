import type { Policy } from '../domain/board.js';
import { tierValue, type Tier } from '../domain/aim.js';
import { perCountedTier, type PerCountedTier } from '../domain/counted-tiers.js';
import type { Score } from '../domain/plan.js';
import type { ProofTier } from '../domain/proof.js';
import { Flaw } from './flaw.js';

/** What one of each thing that a plan is measured by adds to a step's number. */
export type Measure = PerCountedTier<bigint> & {
  readonly unpowered: bigint;
  readonly exposed: bigint;
  /** On top, of an exposed pedal that is not exposed today. */
  readonly newlyExposed: bigint;
  /** Of a pedal that is plugged today and does not stay. */
  readonly moved: bigint;
  readonly bricks: bigint;
  /** Of an amount in minor units. @throws Flaw when the amount is no whole number of the step's units. */
  readonly money: (amount: number) => bigint;
};

export function measureOf(tiers: readonly ProofTier[], { noisePrice, supplyPrice }: Policy): Measure {
  const weight = (tier: Tier): bigint =>
    tiers.reduce((sum, entry) => (entry.tier === tier ? sum + BigInt(entry.weight) : sum), 0n);
  const amountIn = (counts: (tier: Tier) => boolean, amount: number): bigint =>
    tiers
      .filter(({ tier }) => counts(tier))
      .reduce((sum, entry) => sum + BigInt(entry.weight) * inUnits(amount, entry), 0n);
  return {
    unpowered: weight('unpowered'),
    exposed: weight('exposed') + amountIn((tier) => tier === 'cost', noisePrice),
    newlyExposed: amountIn((tier) => tier === 'newCost', noisePrice),
    moved: weight('moved'),
    bricks: weight('bricks') + amountIn(countsSupplies, supplyPrice),
    ...perCountedTier(weight),
    money: (amount) => amountIn(isMoney, amount),
  };
}

/** Whether a tier counts exposed pedals, or newly exposed ones, at the noise price, and supplies in use at the supply price. */
export const countsNoise = (tier: Tier): boolean => tier === 'cost' || tier === 'newCost';
export const countsSupplies = (tier: Tier): boolean => countsNoise(tier) || tier === 'outlay';

export const isMoney = (tier: Tier): boolean => tier === 'money' || countsSupplies(tier);

/** A step's number of a plan with this score. @throws Flaw when it is no whole number. */
export const numberOf = (tiers: readonly ProofTier[], score: Score, policy: Policy): bigint =>
  tiers.reduce((sum, entry) => sum + BigInt(entry.weight) * inUnits(tierValue(entry.tier, score, policy), entry), 0n);

/** An amount in a tier's units. @throws Flaw when it is no whole number of them. */
export function inUnits(amount: number, { tier, unit }: ProofTier): bigint {
  if (amount % unit !== 0) throw new Flaw(`its unit of ${tier}, ${unit}, does not divide ${amount}`);
  return BigInt(amount) / BigInt(unit);
}

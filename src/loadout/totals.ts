import type { Policy } from '../domain/board.js';
import type { Supply, Total } from '../domain/supply.js';
import { loadOf, type Load } from './load.js';

/**
 * A limit on all that hangs on a bank or on a whole supply: Σ weight ≤ capacity, where a weight is load × the `supply`
 * factor (times the volts, for a limit in watts), all in one integer unit.
 */
export type TotalLimit = {
  /** The bank's place in the supply; null for the whole supply. */
  readonly bank: number | null;
  readonly total: Total;
  readonly capacity: bigint;
};

/** The load that a use puts on one of the supply's outputs. */
export type OutputLoad = {
  readonly bank: number;
  readonly millivolts: number;
  readonly load: Load;
  /** The second output of a parallel join: the load was counted already, but not yet in another bank's total. */
  readonly repeats: boolean;
};

/** The limits that a supply states. */
export function totalLimits(supply: Supply, policy: Policy): readonly TotalLimit[] {
  const { denominator } = policy.headroom.supply;
  const limit = (bank: number | null, total: Total | null): TotalLimit[] =>
    total === null ? [] : [{ bank, total, capacity: capacityOf(total, policy) * BigInt(denominator) }];
  return [...supply.banks.flatMap((bank, index) => limit(index, bank.total)), ...limit(null, supply.total)];
}

/** mV × µA = nW; a milliwatt is a million of them. */
function capacityOf(total: Total, policy: Policy): bigint {
  return total.kind === 'current' ? loadOf(total.microamps, policy) : loadOf(total.milliwatts, policy) * 1_000_000n;
}

/** What a use adds to each of the limits, in their order. */
export function weightsOf(
  limits: readonly TotalLimit[],
  loads: readonly OutputLoad[],
  policy: Policy,
): readonly bigint[] {
  const factor = BigInt(policy.headroom.supply.numerator);
  return limits.map(({ bank, total }) => {
    let weight = 0n;
    const counted = new Set<number>();
    for (const output of loads) {
      if (bank !== null && output.bank !== bank) continue;
      const again = output.repeats && (bank === null || counted.has(bank));
      counted.add(output.bank);
      if (!again) weight += output.load * (total.kind === 'power' ? BigInt(output.millivolts) : 1n);
    }
    return weight * factor;
  });
}

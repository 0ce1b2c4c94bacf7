import type { Policy } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import type { Factor, Microamps, Millivolts } from '../domain/quantities.js';

/**
 * A current in exact integers: µA times the denominator of the policy's guess factor, so that a guessed draw stays
 * whole. Only compare loads of one policy.
 */
export type Load = bigint;

/** The draw at the given volts; undefined when a per-voltage draw has no figure there. */
export function drawAt(pedal: Pedal, millivolts: Millivolts): Microamps | undefined {
  return pedal.draw.kind === 'flat' ? pedal.draw.microamps : pedal.draw.microamps.get(millivolts);
}

/** A current as it stands, in units of load. */
export const loadOf = (microamps: number, policy: Policy): Load => BigInt(microamps) * BigInt(policy.guess.denominator);

/** The pedal's load: its draw, times the guess factor when the figure is a guess. */
export function pedalLoad(pedal: Pedal, millivolts: Millivolts, policy: Policy): Load | undefined {
  const draw = drawAt(pedal, millivolts);
  if (draw === undefined) return undefined;
  return BigInt(draw) * BigInt(pedal.figure === 'guess' ? policy.guess.numerator : policy.guess.denominator);
}

/** load × factor ≤ limit, without a division. */
export const withinFactor = (load: Load, factor: Factor, limit: Load): boolean =>
  load * BigInt(factor.numerator) <= limit * BigInt(factor.denominator);

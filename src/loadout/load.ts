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
  return draw === undefined ? undefined : planned(draw, pedal, policy);
}

const planned = (draw: Microamps, { figure }: Pedal, { guess }: Policy): Load =>
  BigInt(draw) * BigInt(figure === 'guess' ? guess.numerator : guess.denominator);

/** What a pedal takes of an output. */
export type TakenLoad = {
  readonly load: Load;
  /** At switch-on: its startup as stated, in units of load, or its load where that is more. */
  readonly surge: Load;
};

/** What a pedal takes at volts for which it has a figure; undefined at others. */
export function takenBy(pedal: Pedal, millivolts: Millivolts, policy: Policy): TakenLoad | undefined {
  const draw = drawAt(pedal, millivolts);
  return draw === undefined ? undefined : takenWith(draw, pedal, policy);
}

/** What a pedal takes by each of its figures. */
export function everyTaken(pedal: Pedal, policy: Policy): readonly TakenLoad[] {
  const draws = pedal.draw.kind === 'flat' ? [pedal.draw.microamps] : [...pedal.draw.microamps.values()];
  return draws.map((draw) => takenWith(draw, pedal, policy));
}

function takenWith(draw: Microamps, pedal: Pedal, policy: Policy): TakenLoad {
  const load = planned(draw, pedal, policy);
  const startup = loadOf(pedal.startup ?? 0, policy);
  return { load, surge: startup > load ? startup : load };
}

/** Whether switching on takes more than load × factor. Where nothing does, what holds for this holds for that, too. */
export const outruns = ({ load, surge }: TakenLoad, factor: Factor): boolean =>
  surge * BigInt(factor.denominator) > load * BigInt(factor.numerator);

/** load × factor ≤ limit, without a division. */
export const withinFactor = (load: Load, factor: Factor, limit: Load): boolean =>
  load * BigInt(factor.numerator) <= limit * BigInt(factor.denominator);

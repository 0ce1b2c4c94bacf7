import type { Policy } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import type { Supply } from '../domain/supply.js';
import { accepts } from './unit/output-offer.js';

/**
 * How many batteries are paid for when a pedal runs on a set: ⌈pay × load ÷ mAh⌉ sets. Null where the rule `battery` does not
 * let it: in another pedal, at volts that it does not accept, or for less than `change` hours.
 */
export function piecesPaid(pedal: Pedal, { banks, source }: Supply, { batteries, guess }: Policy): number | null {
  const volts = banks[0]?.settings[0]?.millivolts;
  if (source.kind !== 'battery' || source.pedal !== pedal.id || batteries === null || volts === undefined) return null;
  if (pedal.adapter?.only === true || !accepts(pedal, volts)) return null;
  const drawn = pedal.draw.kind === 'flat' ? pedal.draw.microamps : pedal.draw.microamps.get(volts);
  if (drawn === undefined) return null;
  const load = BigInt(drawn) * BigInt(pedal.figure === 'guess' ? guess.numerator : guess.denominator);
  const held = BigInt(source.microampHours) * BigInt(guess.denominator);
  const { change, pay } = batteries;
  if (load * BigInt(change.numerator) > held * BigInt(change.denominator)) return null;
  const [needed, set] = [load * BigInt(pay.numerator), held * BigInt(pay.denominator)];
  return Number(needed / set + (needed % set === 0n ? 0n : 1n)) * source.count;
}

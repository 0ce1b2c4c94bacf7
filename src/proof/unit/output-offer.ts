import type { Policy } from '../../domain/board.js';
import type { Pedal, Power } from '../../domain/pedal.js';
import type { Factor, Millivolts } from '../../domain/quantities.js';
import type { Bank, JoinMode, Setting } from '../../domain/supply.js';
import type { ShapeTaken } from './totals.js';

/** What an output, or two that are joined, is to the pedal on it. Loads are in microamps × the guess's denominator. */
export type OutputOffer = {
  readonly power: Power;
  readonly volts: number;
  /** Volts without a load. */
  readonly open: number;
  /** In microamps. */
  readonly rating: number;
};

export function offeredBy(bank: Bank, { millivolts, rating, openCircuit }: Setting): OutputOffer {
  return { power: bank.power, volts: millivolts, open: openCircuit ?? millivolts, rating };
}

/** In series the volts add and the weaker one limits; in parallel the milliamps add. */
export function offeredJoined(mode: JoinMode, first: OutputOffer, second: OutputOffer): OutputOffer {
  const { power } = first;
  if (mode === 'series')
    return {
      power,
      volts: first.volts + second.volts,
      open: first.open + second.open,
      rating: Math.min(first.rating, second.rating),
    };
  return {
    power,
    volts: first.volts,
    open: Math.max(first.open, second.open),
    rating: first.rating + second.rating,
  };
}

/** The rules `power` and `voltage`. Where it is not stated what a pedal takes, its own adapter alone is right. */
export function suits(source: OutputOffer, pedal: Pedal): boolean {
  if (pedal.adapter?.only === true || source.power !== pedal.power || !accepts(pedal, source.volts)) return false;
  if (accepts(pedal, source.open)) return true;
  return pedal.survives !== null && source.open <= pedal.survives;
}

/** The rule `voltage` with nothing lost on the way. */
export function accepts({ accepts: accepted }: Pedal, volts: number): boolean {
  return accepted.kind === 'range'
    ? accepted.from <= volts && volts <= accepted.to
    : accepted.millivolts.some((value) => value === volts);
}

/** The rules `current` and `startup` for a pedal alone. */
export function carriesAlone(source: OutputOffer, pedal: Pedal, { guess, headroom }: Policy): boolean {
  const { load, surge } = takenAt(pedal, source.volts, guess);
  return load <= mostLoad(source.rating, headroom.alone, guess) && surge <= mostLoad(source.rating, unity, guess);
}

/** The factor of what is taken at switch-on. */
export const unity: Factor = { numerator: 1, denominator: 1 };

/**
 * What a pedal takes at volts that it accepts; at switch-on its startup as stated, or its load where that is more.
 * @throws RangeError when its figures leave these volts out, or at absurd ones.
 */
export function takenAt({ draw, figure, startup, id }: Pedal, volts: number, guess: Factor): ShapeTaken {
  const drawn = draw.kind === 'flat' ? draw.microamps : draw.microamps.get(volts as Millivolts);
  const load = (drawn ?? NaN) * (figure === 'guess' ? guess.numerator : guess.denominator);
  const surge = Math.max(load, (startup ?? 0) * guess.denominator);
  if (!Number.isSafeInteger(surge)) throw new RangeError(`${id} takes no exact amount at ${volts} mV`);
  return { load, surge };
}

/** The most that, times the factor, is within so many microamps. */
export function mostLoad(microamps: number, factor: Factor, guess: Factor): number {
  const most = (BigInt(microamps) * BigInt(guess.denominator) * BigInt(factor.denominator)) / BigInt(factor.numerator);
  return Number(most < BigInt(Number.MAX_SAFE_INTEGER) ? most : BigInt(Number.MAX_SAFE_INTEGER));
}

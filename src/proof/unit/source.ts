import type { Policy } from '../../domain/board.js';
import type { Pedal, Power } from '../../domain/pedal.js';
import type { Factor, Millivolts } from '../../domain/quantities.js';
import type { Bank, JoinMode, Setting } from '../../domain/supply.js';

/** What an output, or two that are joined, is to the pedal on it. Loads are in microamps × the guess's denominator. */
export type Source = {
  readonly power: Power;
  readonly volts: number;
  /** Volts without a load. */
  readonly open: number;
  /** In microamps. */
  readonly rating: number;
};

export function outputSource(bank: Bank, { millivolts, rating, openCircuit }: Setting): Source {
  return { power: bank.power, volts: millivolts, open: openCircuit ?? millivolts, rating };
}

/** In series the volts add and the weaker one limits; in parallel the milliamps add. */
export function joinSource(mode: JoinMode, first: Source, second: Source): Source {
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

/** The rules `power` and `voltage`. */
export function suits(source: Source, pedal: Pedal): boolean {
  if (source.power !== pedal.power || !accepts(pedal, source.volts)) return false;
  if (accepts(pedal, source.open)) return true;
  return pedal.survives !== null && source.open <= pedal.survives;
}

function accepts({ accepts: accepted }: Pedal, volts: number): boolean {
  return accepted.kind === 'range'
    ? accepted.from <= volts && volts <= accepted.to
    : accepted.millivolts.some((value) => value === volts);
}

/** The rules `current` and `startup` for a pedal alone. */
export function carriesAlone(source: Source, pedal: Pedal, { guess, headroom }: Policy): boolean {
  const load = loadAt(pedal, source.volts, guess);
  return load <= mostLoad(source.rating, headroom.alone, guess) && (pedal.startup ?? 0) <= source.rating;
}

/** The load at volts that the pedal accepts. @throws RangeError when its figures leave these volts out, or at absurd ones. */
export function loadAt({ draw, figure, id }: Pedal, volts: number, guess: Factor): number {
  const drawn = draw.kind === 'flat' ? draw.microamps : draw.microamps.get(volts as Millivolts);
  const load = (drawn ?? NaN) * (figure === 'guess' ? guess.numerator : guess.denominator);
  if (!Number.isSafeInteger(load)) throw new RangeError(`${id} has no exact load at ${volts} mV`);
  return load;
}

/** The most load whose product with the factor is within so many microamps. */
export function mostLoad(microamps: number, factor: Factor, guess: Factor): number {
  const most = (BigInt(microamps) * BigInt(guess.denominator) * BigInt(factor.denominator)) / BigInt(factor.numerator);
  return Number(most < BigInt(Number.MAX_SAFE_INTEGER) ? most : BigInt(Number.MAX_SAFE_INTEGER));
}

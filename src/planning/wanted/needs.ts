import { groupBy } from '../../domain/group-by.js';
import type { Policy } from '../../domain/board.js';
import { compareExact, exactly, loadAt, scaled, stepsUp, type Exact } from '../../domain/load.js';
import { isAccepted, type Pedal, type Polarity, type Power } from '../../domain/pedal.js';
import { microamps, millivolts, type Microamps, type Millivolts } from '../../domain/quantities.js';

/** An isolated, regulated output that powers one pedal by itself. */
export type Need = {
  readonly power: Power;
  readonly millivolts: Millivolts;
  /** In whole milliamps, as ratings are printed. */
  readonly rating: Microamps;
  /** What it offers, which is what the pedal takes. */
  readonly plug: string;
  /** Null for AC. A pedal whose polarity is unknown is offered the usual one, and takes a reversing lead in hand. */
  readonly polarity: Polarity | null;
};

/** Outputs as most supplies have them; the first of those that a pedal accepts is asked for, all else being equal. */
const usualVolts = [9, 12, 18, 15, 24].map((volts) => millivolts(volts * 1000));

/**
 * The output of the least rating that powers the pedal alone, at whichever volts that is; where several volts take as little,
 * at those that it prefers, else at the most usual ones.
 */
export function needOf(pedal: Pedal, policy: Policy): Need {
  const { power, inlet: plug, polarity } = pedal;
  const least = voltsInOrder(pedal)
    .map((at) => ({ millivolts: at, rating: ratingAt(pedal, at, policy) }))
    .reduce((best, other) => (other.rating < best.rating ? other : best));
  return { power, ...least, plug, polarity: polarity === 'unknown' ? 'centre-negative' : polarity };
}

/** load × `alone`, or what it takes at switch-on where that is more. */
function ratingAt(pedal: Pedal, at: Millivolts, { guess, headroom }: Policy): Microamps {
  const planned = scaled(loadAt(pedal, at, guess), headroom.alone);
  const started = exactly(pedal.startup ?? 0);
  return wholeMilliamps(compareExact(planned, started) < 0 ? started : planned);
}

const milliamp = 1000;

/** Rounded up to whole milliamps. */
export const wholeMilliamps = (value: Exact): Microamps => microamps(stepsUp(value, milliamp) * milliamp);

/** The volts to look at: those it prefers, then the usual ones, then all others that it lists. */
function voltsInOrder({ accepts, prefers }: Pedal): readonly Millivolts[] {
  const listed = accepts.kind === 'listed' ? [...accepts.millivolts].sort((one, two) => one - two) : [accepts.from];
  const usual = usualVolts.filter((at) => isAccepted(accepts, at));
  return [...new Set([...(prefers === null ? [] : [prefers]), ...usual, ...listed])];
}

/** Lists of those whose outputs are alike, each in the order of its first. */
export const alike = <Needing extends { readonly need: Need }>(all: readonly Needing[]) =>
  groupBy(all, ({ need: { power, millivolts: at, rating, plug, polarity } }) =>
    JSON.stringify([power, at, rating, polarity, plug]),
  );

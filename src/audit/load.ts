import type { Policy } from '../domain/board.js';
import type { LoadNumbers } from '../domain/load-numbers.js';
import type { Pedal } from '../domain/pedal.js';
import type { Factor, Millivolts } from '../domain/quantities.js';
import { isAtMost, ratioOf, times, whole, type Ratio } from './exact.js';
import { placeOf, type Line, type OutletInUse } from './line.js';
import { factor, list, milliamps, volts } from './words.js';

/** The microamps that a pedal draws at these volts, times the guess factor when its figure is a guess. */
export function loadOf(pedal: Pedal, millivolts: Millivolts, policy: Policy): Ratio {
  const draw = whole(drawMicroamps(pedal, millivolts));
  return pedal.figure === 'guess' ? times(draw, ratioOf(policy.guess)) : draw;
}

/** At volts without a figure of their own, which the pedal does not accept either, the highest figure stands in. */
function drawMicroamps(pedal: Pedal, millivolts: Millivolts): number {
  if (pedal.draw.kind === 'flat') return pedal.draw.microamps;
  return pedal.draw.microamps.get(millivolts) ?? Math.max(0, ...pedal.draw.microamps.values());
}

/** "180 mA", or "180 mA × 1.5 (a guess)". */
export function loadText(line: Line, policy: Policy): string {
  const draw = milliamps(whole(drawMicroamps(line.pedal, line.millivolts)));
  return line.pedal.figure === 'guess' ? `${draw} × ${factor(policy.guess)} (a guess)` : draw;
}

/** The factor of what nothing is multiplied by. */
export const unity: Factor = { numerator: 1, denominator: 1 };

/** Whether no more is planned than may be. */
export const isWithin = ({ planned, limit }: LoadNumbers): boolean => isAtMost(planned, whole(limit));

/** The microamps that an outlet gives; null when a setting that one of its feeds names does not exist. */
export function ratingOf(outlet: OutletInUse): number | null {
  const [line] = outlet.lines;
  const ratings: number[] = [];
  for (const { output } of line.taps) {
    const rating = weakestRating(outlet, output);
    if (rating === null) return null;
    ratings.push(rating);
  }
  const parallel = line.feed.join?.mode === 'parallel';
  return parallel ? ratings.reduce((total, rating) => total + rating, 0) : Math.min(...ratings);
}

/** Where the pedals of one output name several settings, none of them is sure to hold: the weakest counts. */
function weakestRating(outlet: OutletInUse, output: number): number | null {
  let weakest: number | null = null;
  for (const { taps } of outlet.lines) {
    for (const { setting, output: drawnFrom } of taps) {
      if (drawnFrom !== output) continue;
      if (setting === null) return null;
      weakest = Math.min(weakest ?? setting.rating, setting.rating);
    }
  }
  return weakest;
}

/** "output 3 of Quay 6 (unit 1) gives 100 mA at 9 V"; joined outputs name each setting. */
export function givenText({ lines: [line] }: OutletInUse, { limit }: LoadNumbers): string {
  const settings = list(line.taps.map((tap) => volts(tap.millivolts)));
  const mode = line.feed.join === null ? '' : ` in ${line.feed.join.mode}`;
  return `${placeOf(line)} give${line.taps.length === 1 ? 's' : ''} ${milliamps(whole(limit))} at ${settings}${mode}`;
}

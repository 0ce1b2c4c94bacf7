import type { Violation } from '../domain/plan.js';
import { isAtMost, plus, ratioOf, sum, times, whole, type Ratio } from './exact.js';
import { pedalsOf, placeOf, type Layout, type Line, type Outlet } from './line.js';
import { loadText, ratingOf } from './load.js';
import { factor, list, milliamps, names, violation, volts } from './words.js';

/** One pedal on an output: load × alone ≤ rating. Several: total load × chained ≤ rating. */
export function currentViolations(layout: Layout): readonly Violation[] {
  const { alone, chained } = layout.policy.headroom;
  return layout.outlets.flatMap((outlet) => {
    const rating = ratingOf(outlet);
    const headroom = outlet.lines.length === 1 ? alone : chained;
    const load = sum(outlet.lines.map((line) => line.load));
    const planned = times(load, ratioOf(headroom));
    if (rating === null || isAtMost(planned, rating)) return [];
    const pedals = pedalsOf(outlet.lines);
    const loads = outlet.lines.map((line) => loadText(line, layout.policy));
    const drawn = loads.length === 1 ? `draws ${loads.join('')}` : `draw (${loads.join(' + ')})`;
    const message = `${names(pedals)} ${drawn} × ${factor(headroom)} = ${milliamps(planned)}; ${givenText(outlet, rating)}`;
    return [violation('current', pedals, message)];
  });
}

/**
 * On every output, for each pedal: its startup plus the others' load ≤ rating. A pedal that states no startup takes its
 * load, and since no headroom factor is below 1, the rule `current` has then said it all.
 */
export function startupViolations(layout: Layout): readonly Violation[] {
  return layout.outlets.flatMap((outlet) => {
    const rating = ratingOf(outlet);
    if (rating === null) return [];
    return outlet.lines.flatMap((line) => {
      const { startup } = line.pedal;
      if (startup === null) return [];
      const others = outlet.lines.filter((other) => other !== line);
      const rest = sum(others.map((other) => other.load));
      const peak = plus(whole(startup), rest);
      if (isAtMost(peak, rating)) return [];
      const start = `${line.pedal.name} takes ${milliamps(whole(startup))} when it is switched on`;
      const message = `${start}${othersText(others, rest, peak)}; ${givenText(outlet, rating)}`;
      return [violation('startup', [line.pedal, ...pedalsOf(others)], message)];
    });
  });
}

function othersText(others: readonly Line[], rest: Ratio, peak: Ratio): string {
  if (others.length === 0) return '';
  const draw = others.length === 1 ? 'draws' : 'draw';
  return ` while ${names(pedalsOf(others))} ${draw} ${milliamps(rest)}: together ${milliamps(peak)}`;
}

/** "output 3 of Quay 6 (unit 1) gives 100 mA at 9 V"; joined outputs name each setting. */
function givenText(outlet: Outlet, rating: Ratio): string {
  const [line] = outlet.lines;
  const settings = list(line.taps.map((tap) => volts(tap.millivolts)));
  const mode = line.feed.join === null ? '' : ` in ${line.feed.join.mode}`;
  return `${placeOf(line)} give${line.taps.length === 1 ? 's' : ''} ${milliamps(rating)} at ${settings}${mode}`;
}

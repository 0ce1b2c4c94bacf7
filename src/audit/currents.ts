import type { LoadNumbers } from '../domain/load-numbers.js';
import type { Policy } from '../domain/board.js';
import type { Violation } from '../domain/violation.js';
import { plus, ratioOf, sum, times, whole } from './exact.js';
import { pedalsOf, placeOf, type Layout, type Line, type Outlet } from './line.js';
import { isWithin, loadText, ratingOf, unity } from './load.js';
import { placeOfLine, violation } from './violation.js';
import { factor, list, milliamps, names, volts } from './words.js';

/** One pedal on an output: load × alone ≤ rating. Several: total load × chained ≤ rating. */
export function currentViolations({ policy, outlets }: Layout): readonly Violation[] {
  return outlets.flatMap((outlet) => {
    const numbers = currentNumbers(outlet, policy);
    if (numbers === null || isWithin(numbers)) return [];
    const pedals = pedalsOf(outlet.lines);
    const loads = outlet.lines.map((line) => loadText(line, policy));
    const drawn = loads.length === 1 ? `draws ${loads.join('')}` : `draw (${loads.join(' + ')})`;
    const planned = `${factor(numbers.factor)} = ${milliamps(numbers.planned)}`;
    const message = `${names(pedals)} ${drawn} × ${planned}; ${givenText(outlet, numbers)}`;
    return [violation('current', pedals, message, told(outlet, numbers))];
  });
}

/** What the rule `current` compares; null where an output has no such setting as a feed counts on. */
export function currentNumbers({ lines }: Outlet, { headroom }: Policy): LoadNumbers | null {
  const limit = ratingOf({ lines });
  if (limit === null) return null;
  const byHeadroom = lines.length === 1 ? headroom.alone : headroom.chained;
  const load = sum(lines.map((line) => line.load));
  return { unit: 'mA', load, factor: byHeadroom, planned: times(load, ratioOf(byHeadroom)), limit };
}

/**
 * On every output, for each pedal: its startup plus the others' load ≤ rating. A pedal that states no startup takes its
 * load, and since no headroom factor is below 1, the rule `current` has then said it all.
 */
export function startupViolations({ outlets }: Layout): readonly Violation[] {
  return outlets.flatMap((outlet) =>
    outlet.lines.flatMap((line) => {
      const numbers = startupNumbers(outlet, line);
      if (numbers === null || isWithin(numbers)) return [];
      const others = outlet.lines.filter((other) => other !== line);
      const start = `${line.pedal.name} takes ${milliamps(whole(line.pedal.startup ?? 0))} when it is switched on`;
      const message = `${start}${othersText(others, numbers)}; ${givenText(outlet, numbers)}`;
      return [violation('startup', [line.pedal, ...pedalsOf(others)], message, told(outlet, numbers))];
    }),
  );
}

/** What the rule `startup` compares for one pedal of the outlet; null where it states no startup or there is no rating. */
export function startupNumbers(outlet: Outlet, line: Line): LoadNumbers | null {
  const limit = ratingOf(outlet);
  const { startup } = line.pedal;
  if (limit === null || startup === null) return null;
  const others = outlet.lines.filter((other) => other !== line);
  const peak = plus(whole(startup), sum(others.map((other) => other.load)));
  return { unit: 'mA', load: peak, factor: unity, planned: peak, limit };
}

const told = (outlet: Outlet, numbers: LoadNumbers) => ({
  place: placeOfLine(outlet.lines[0]),
  numbers: { kind: 'load', ...numbers } as const,
});

function othersText(others: readonly Line[], { planned }: LoadNumbers): string {
  if (others.length === 0) return '';
  const draw = others.length === 1 ? 'draws' : 'draw';
  const rest = sum(others.map((other) => other.load));
  return ` while ${names(pedalsOf(others))} ${draw} ${milliamps(rest)}: together ${milliamps(planned)}`;
}

/** "output 3 of Quay 6 (unit 1) gives 100 mA at 9 V"; joined outputs name each setting. */
function givenText(outlet: Outlet, { limit }: LoadNumbers): string {
  const [line] = outlet.lines;
  const settings = list(line.taps.map((tap) => volts(tap.millivolts)));
  const mode = line.feed.join === null ? '' : ` in ${line.feed.join.mode}`;
  return `${placeOf(line)} give${line.taps.length === 1 ? 's' : ''} ${milliamps(whole(limit))} at ${settings}${mode}`;
}

import type { LoadNumbers } from '../domain/load-numbers.js';
import type { Place } from '../domain/plan.js';
import type { Violation } from '../domain/violation.js';
import { countedTotals, type CountedTotal } from './counted-totals.js';
import { isAtMost, sum, whole, type Ratio } from './exact.js';
import { pedalsOf, type Layout, type Line, type OutletInUse } from './line.js';
import { givenText, isWithin, ratingOf, unity } from './load.js';
import { placeOfLine, violation } from './violation.js';
import { milliamps, names } from './words.js';

/**
 * All pedals start at once when the mains comes on: on every output Σ max(startup, load) ≤ rating, and of every bank and
 * supply with a total Σ max(startup, load) ≤ total. It is told only where some startup there exceeds its load: since no
 * headroom factor is below 1, the rules `current` and `total` have said all the rest.
 */
export const startupViolations = (layout: Layout): readonly Violation[] => [
  ...layout.outlets.flatMap((outlet) =>
    broken(outlet.lines, outletStartup(outlet), placeOfLine(outlet.lines[0]), (numbers) => ({
      taken: milliamps(numbers.planned),
      given: givenText(outlet, numbers),
    })),
  ),
  ...countedTotals(layout).flatMap((total) =>
    broken(total.lines, totalStartup(total), total.place, ({ planned, limit }) => ({
      taken: total.text(planned),
      given: `${total.where} gives ${total.text(whole(limit))} in total`,
    })),
  ),
];

function broken(
  lines: readonly Line[],
  numbers: LoadNumbers | null,
  place: Place,
  texts: (numbers: LoadNumbers) => { readonly taken: string; readonly given: string },
): readonly Violation[] {
  if (numbers === null || isWithin(numbers)) return [];
  const pedals = pedalsOf(lines);
  const { taken, given } = texts(numbers);
  const takes =
    pedals.length === 1
      ? `takes ${taken} when it is switched on`
      : `take ${taken} when everything is switched on at once`;
  const message = `${names(pedals)} ${takes}; ${given}`;
  return [violation('startup', pedals, message, { place, numbers: { kind: 'load', ...numbers } })];
}

/** What an outlet bears at switch-on; null where no startup exceeds its load, or where it has no such setting. */
export function outletStartup(outlet: OutletInUse): LoadNumbers | null {
  const limit = ratingOf(outlet);
  if (limit === null || !outlet.lines.some(surges)) return null;
  return numbersOf('mA', sum(outlet.lines.map(atSwitchOn)), limit);
}

/** What a total bears at switch-on; null where no startup exceeds its load. */
export const totalStartup = ({ lines, unit, sumOf, limit }: CountedTotal): LoadNumbers | null =>
  lines.some(surges) ? numbersOf(unit, sumOf(atSwitchOn), limit) : null;

const numbersOf = (unit: LoadNumbers['unit'], load: Ratio, limit: number): LoadNumbers => ({
  unit,
  load,
  factor: unity,
  planned: load,
  limit,
});

const surges = (line: Line): boolean => !isAtMost(startupOf(line), line.load);

/** The startup as stated, or the load where that is more: a pedal that states none takes its load. */
const atSwitchOn = (line: Line): Ratio => (surges(line) ? startupOf(line) : line.load);

const startupOf = ({ pedal }: Line): Ratio => whole(pedal.startup ?? 0);

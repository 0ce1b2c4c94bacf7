import type { OutletLoad, TotalLoad } from '../domain/load-numbers.js';
import { countedTotals } from './counted-totals.js';
import { currentNumbers } from './currents.js';
import { pedalsOf, type Layout, type Line } from './line.js';
import { offersPlug } from './sources.js';
import { outletStartup, totalStartup } from './startups.js';
import { totalNumbers } from './totals.js';
import { placeOfLine } from './violation.js';

/** What hangs on every outlet, in the order of the board's pedals. */
export const outletLoads = ({ outlets, policy }: Layout): readonly OutletLoad[] =>
  outlets.map((outlet) => ({
    place: placeOfLine(outlet.lines[0]),
    pedals: idsOf(outlet.lines),
    ...(offersPlug(outlet.lines[0])
      ? { current: currentNumbers(outlet, policy), startup: outletStartup(outlet) }
      : { current: null, startup: null }),
  }));

/** Every stated total that something counts towards, in the order of the units. */
export const totalLoads = (layout: Layout): readonly TotalLoad[] =>
  countedTotals(layout).map((total) => ({
    of: total.of,
    place: total.place,
    pedals: idsOf(total.lines),
    numbers: totalNumbers(total, layout.policy),
    startup: totalStartup(total),
  }));

/** Each pedal once. */
const idsOf = (lines: readonly Line[]): OutletLoad['pedals'] => [...new Set(pedalsOf(lines).map(({ id }) => id))];

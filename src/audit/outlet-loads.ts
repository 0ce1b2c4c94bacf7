import type { LoadNumbers, OutletLoad } from '../domain/load-numbers.js';
import { currentNumbers, startupNumbers } from './currents.js';
import { isAtMost } from './exact.js';
import { pedalsOf, type Layout, type Outlet } from './line.js';
import { placeOfLine } from './violation.js';

/** What hangs on every outlet, in the order of the board's pedals. */
export const outletLoads = ({ outlets, policy }: Layout): readonly OutletLoad[] =>
  outlets.map((outlet) => ({
    place: placeOfLine(outlet.lines[0]),
    pedals: pedalsOf(outlet.lines).map(({ id }) => id),
    current: currentNumbers(outlet, policy),
    startup: worstStartup(outlet),
  }));

/** The pedal that asks for most when it is switched on while the others run. */
function worstStartup(outlet: Outlet): LoadNumbers | null {
  let worst: LoadNumbers | null = null;
  for (const line of outlet.lines) {
    const numbers = startupNumbers(outlet, line);
    if (numbers === null) continue;
    if (worst === null || !isAtMost(numbers.planned, worst.planned)) worst = numbers;
  }
  return worst;
}

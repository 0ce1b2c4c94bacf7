import type { LoadNumbers } from '../domain/load-numbers.js';
import type { Policy } from '../domain/board.js';
import type { Violation } from '../domain/violation.js';
import { ratioOf, sum, times } from './exact.js';
import { pedalsOf, type Layout, type OutletInUse } from './line.js';
import { givenText, isWithin, loadText, ratingOf } from './load.js';
import { placeOfLine, violation } from './violation.js';
import { factor, milliamps, names } from './words.js';

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
    const place = placeOfLine(outlet.lines[0]);
    return [violation('current', pedals, message, { place, numbers: { kind: 'load', ...numbers } })];
  });
}

/** What the rule `current` compares; null where an output has no such setting as a feed counts on. */
export function currentNumbers({ lines }: OutletInUse, { headroom }: Policy): LoadNumbers | null {
  const limit = ratingOf({ lines });
  if (limit === null) return null;
  const byHeadroom = lines.length === 1 ? headroom.alone : headroom.chained;
  const load = sum(lines.map((line) => line.load));
  return { unit: 'mA', load, factor: byHeadroom, planned: times(load, ratioOf(byHeadroom)), limit };
}

import type { Policy } from '../domain/board.js';
import type { LoadNumbers } from '../domain/load-numbers.js';
import type { Violation } from '../domain/violation.js';
import { countedTotals, type CountedTotal } from './counted-totals.js';
import { ratioOf, times, whole } from './exact.js';
import { pedalsOf, type Layout } from './line.js';
import { isWithin } from './load.js';
import { violation } from './violation.js';
import { factor } from './words.js';

/** Load × supply factor ≤ the total of every bank and of every supply, in mA or in W. */
export const totalViolations = (layout: Layout): readonly Violation[] =>
  countedTotals(layout).flatMap((total) => {
    const { lines, place, where, text, limit } = total;
    const numbers = totalNumbers(total, layout.policy);
    if (isWithin(numbers)) return [];
    const sumText = `${text(numbers.load)} × ${factor(numbers.factor)} = ${text(numbers.planned)}`;
    const message = `the load on ${where} is ${sumText}; it gives ${text(whole(limit))} in total`;
    return [violation('total', pedalsOf(lines), message, { place, numbers: { kind: 'load', ...numbers } })];
  });

/** What the rule `total` compares. */
export function totalNumbers({ unit, limit, sumOf }: CountedTotal, { headroom }: Policy): LoadNumbers {
  const load = sumOf((line) => line.load);
  return { unit, load, factor: headroom.supply, planned: times(load, ratioOf(headroom.supply)), limit };
}

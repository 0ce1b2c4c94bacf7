import { compareScores, type ChoosingAim } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import type { Figures } from './box-search.js';
import type { UnbeatenPoint } from './comparison.js';

/** How many choices are shown at the most. */
export const mostChoices = 4;

/** What makes the points worth choosing from. */
export type Preferring = { readonly aim: ChoosingAim; readonly policy: Policy };

/**
 * Of the points that nothing beats those to be shown: the best under the aim, the cheapest of the quietest, the cheapest of those
 * with the fewest supplies, one within the budget if none of them is, and what lies farthest from all of these, up to four.
 */
export function choicesOf(
  best: UnbeatenPoint,
  points: readonly UnbeatenPoint[],
  preferring: Preferring,
): readonly UnbeatenPoint[] {
  const order = byAim(preferring);
  const shown: UnbeatenPoint[] = [];
  const show = (point: UnbeatenPoint | undefined): void => {
    if (point !== undefined && shown.length < mostChoices && !shown.includes(point)) shown.push(point);
  };
  show(points.find((point) => point.wiring === best.wiring) ?? best);
  show(leastBy(points, (one, other) => one.exposed - other.exposed || one.money - other.money));
  show(leastBy(points, (one, other) => one.bricks - other.bricks || one.money - other.money));
  const isWithin = ({ money }: Figures): boolean => money <= (preferring.policy.budget ?? Infinity);
  if (!shown.some(isWithin)) show(leastBy(points.filter(isWithin), order));
  while (shown.length < Math.min(mostChoices, points.length)) show(farthest(points, shown, order));
  return shown;
}

/** The best under the aim first. */
export const byAim =
  ({ aim, policy }: Preferring) =>
  (one: UnbeatenPoint, other: UnbeatenPoint): number =>
    compareScores(one.wiring.score, other.wiring.score, aim, policy);

const leastBy = <Item>(items: readonly Item[], order: (one: Item, other: Item) => number): Item | undefined =>
  [...items].sort(order)[0];

/**
 * The point whose nearest one of those shown is the farthest, a proven one if there is any; of several the best. Each figure counts by its share of what lies
 * between its least and its most among all points, times the other two spans, so that distances are whole numbers.
 */
function farthest(
  points: readonly UnbeatenPoint[],
  shown: readonly UnbeatenPoint[],
  order: (one: UnbeatenPoint, other: UnbeatenPoint) => number,
): UnbeatenPoint | undefined {
  const spanOf = (figure: keyof Figures): number => {
    const values = points.map((point) => point[figure]);
    return Math.max(1, Math.max(...values) - Math.min(...values));
  };
  const [money, exposed, bricks] = [spanOf('money'), spanOf('exposed'), spanOf('bricks')];
  const distance = (one: Figures, other: Figures): number =>
    Math.abs(one.money - other.money) * exposed * bricks +
    Math.abs(one.exposed - other.exposed) * money * bricks +
    Math.abs(one.bricks - other.bricks) * money * exposed;
  const nearest = (point: UnbeatenPoint): number => Math.min(...shown.map((other) => distance(point, other)));
  const left = points.filter((point) => !shown.includes(point));
  const proven = left.filter(({ isProven }) => isProven);
  return leastBy(proven.length > 0 ? proven : left, (one, other) => nearest(other) - nearest(one) || order(one, other));
}

import type { TradeOff, Unbeaten } from './comparison.js';

/** What money buys in quiet and in fewer supplies; nothing of either where no plan is known. */
export const tradeOffs = (unbeaten: Unbeaten): readonly TradeOff[] =>
  unbeaten.points.length === 0 ? [] : [tradeOff('exposed', unbeaten), tradeOff('bricks', unbeaten)];

/**
 * Every pair of money and one other figure that nothing else beats: of the plans that nothing beats in three figures, the cheapest
 * first, those that have less of the other than all that cost no more.
 */
function tradeOff(against: TradeOff['against'], { points, complete }: Unbeaten): TradeOff {
  const sorted = [...points].sort((one, other) => one.money - other.money || one[against] - other[against]);
  const kept = sorted.filter((point, at) => sorted.slice(0, at).every((other) => other[against] > point[against]));
  return { against, points: kept.map((point) => ({ ...point, amount: point[against] })), complete };
}

/**
 * The things in an order in which `cost` of every pair, the earlier one first, sums to little, in whole numbers: each in turn is put where it
 * costs least, until none gets better: each move lowers the sum, so that it ends. That is an order from which no single thing can move to gain, not the least of all.
 */
export function insertionOrder<Thing>(
  things: readonly Thing[],
  cost: (earlier: Thing, later: Thing) => number,
): readonly Thing[] {
  let order = [...things];
  let isBetter = true;
  while (isBetter) {
    isBetter = false;
    for (const thing of things) {
      const from = order.indexOf(thing);
      const others = order.filter((other) => other !== thing);
      const to = cheapestPlace(thing, others, from, cost);
      if (to === from) continue;
      order = [...others.slice(0, to), thing, ...others.slice(to)];
      isBetter = true;
    }
  }
  return order;
}

/** Where among the others it costs least; where it is, unless another place costs less. */
function cheapestPlace<Thing>(
  thing: Thing,
  others: readonly Thing[],
  from: number,
  cost: (earlier: Thing, later: Thing) => number,
): number {
  const costs: number[] = [others.reduce((sum, other) => sum + cost(thing, other), 0)];
  for (const [at, other] of others.entries()) costs.push((costs[at] ?? 0) - cost(thing, other) + cost(other, thing));
  const least = Math.min(...costs);
  return costs[from] === least ? from : costs.indexOf(least);
}

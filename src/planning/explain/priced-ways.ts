import { hasEnded, type Effort } from '../../formulation/optimiser.js';
import { ask } from '../asking/ask.js';
import { within } from '../asking/within.js';
import type { Ways, WayOut } from './way-out.js';

/** How long the cheapest plan is sought in all, in milliseconds: which ways there are is settled by then. */
const patienceMs = 1_000;

/** Each way with the cheapest plan that it allows, as far as that is found in time; the others keep the plan they have. */
export async function pricedWays({ ways, whole }: Ways, effort: Effort): Promise<Ways> {
  const priced: WayOut[] = [];
  await within(patienceMs, effort, async (limited) => {
    for (const way of ways) priced.push(hasEnded(limited) ? unpriced(way) : await withLeastMoney(way, limited));
  });
  return { ways: priced, whole };
}

const unpriced = (way: WayOut): WayOut => ({
  ...way,
  cheapest: way.cheapest === true || way.wiring.score.money === 0,
});

async function withLeastMoney(way: WayOut, effort: Effort): Promise<WayOut> {
  if (way.cheapest === true) return way;
  if (way.wiring.score.money === 0) return unpriced(way);
  const solved = await ask(way.kit, { tiers: ['money'] }, effort);
  return solved.kind === 'plan' ? { ...way, wiring: solved.wiring, cheapest: true } : unpriced(way);
}

import type { Part } from '../../domain/part.js';
import type { Purchase } from '../../domain/plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Supply } from '../../domain/supply.js';
import { withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { relaxed, type Fact } from '../conflict/facts.js';
import { notFound, noWays, type Ways } from './way-out.js';

type StockFact = Extract<Fact, { kind: 'stock' }>;

/** The fewest units of one thing beyond its stock with which a plan exists. */
export async function stockWay(fact: StockFact, kit: Kit, effort: Effort): Promise<Ways> {
  const stock = stockOf(fact, kit);
  const solved = await ask(relaxed(kit, [fact]), { tiers: [] }, effort);
  if (solved.kind !== 'plan') return notFound(solved);
  let { wiring } = solved;
  let enough = boughtOf(fact, wiring.buy) - stock;
  let tooFew = 0;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    const trial = await ask(withMore(fact, middle, kit), { tiers: [] }, effort);
    if (trial.kind === 'stopped') return { ways: [], whole: false };
    if (trial.kind === 'impossible') tooFew = middle;
    else [enough, wiring] = [Math.max(1, boughtOf(fact, trial.wiring.buy) - stock), trial.wiring];
  }
  if (enough < 1) return noWays;
  return {
    ways: [{ change: { ...fact, units: enough }, kit: withMore(fact, enough, kit), wiring }],
    whole: true,
  };
}

const stockOf = ({ of, id }: StockFact, { supplies, parts }: Kit): number =>
  [...(of === 'supply' ? supplies : parts).values()].find((thing) => thing.id === id)?.stock ?? 0;

function boughtOf(
  { of, id }: StockFact,
  buy: { readonly supplies: readonly Purchase<string>[]; readonly parts: readonly Purchase<string>[] },
): number {
  const bought = of === 'supply' ? buy.supplies : buy.parts;
  return bought.find((purchase) => purchase.id === id)?.units ?? 0;
}

/** The shop with so many units more. */
export function withMore({ of, id }: StockFact, units: number, kit: Kit): Kit {
  const more = <Thing extends Supply | Part>(thing: Thing): Thing =>
    thing.id === id && thing.stock !== null ? { ...thing, stock: thing.stock + units } : thing;
  return of === 'supply' ? withThings(kit, more) : withThings(kit, (supply) => supply, more);
}

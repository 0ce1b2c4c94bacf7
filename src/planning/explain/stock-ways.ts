import type { Part } from '../../domain/part.js';
import type { Purchase } from '../../domain/plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Supply } from '../../domain/supply.js';
import { solve, type Situation } from '../solve.js';
import { relaxed, type Fact } from './facts.js';
import { noWays, type Ways } from './way-out.js';

type StockFact = Extract<Fact, { kind: 'stock' }>;

/** The fewest units of one thing beyond its stock with which a plan exists. */
export async function stockWay(fact: StockFact, situation: Situation, effort: Effort): Promise<Ways> {
  const stock = stockOf(fact, situation);
  const solved = await solve(relaxed(situation, [fact]), { tiers: [] }, effort);
  if (solved.kind !== 'plan') return { ways: [], whole: solved.kind === 'impossible' };
  let { wiring } = solved;
  let enough = boughtOf(fact, wiring.buy) - stock;
  let tooFew = 0;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    const trial = await solve(withMore(fact, middle, situation), { tiers: [] }, effort);
    if (trial.kind === 'stopped') return { ways: [], whole: false };
    if (trial.kind === 'impossible') tooFew = middle;
    else [enough, wiring] = [Math.max(1, boughtOf(fact, trial.wiring.buy) - stock), trial.wiring];
  }
  if (enough < 1) return noWays;
  return {
    ways: [{ change: { ...fact, units: enough }, situation: withMore(fact, enough, situation), wiring }],
    whole: true,
  };
}

const thingsOf = ({ of }: StockFact, { catalogue }: Situation): readonly (Supply | Part)[] =>
  of === 'supply' ? catalogue.supplies : catalogue.parts;

const stockOf = (fact: StockFact, situation: Situation): number =>
  thingsOf(fact, situation).find(({ id }) => id === fact.id)?.stock ?? 0;

function boughtOf(
  { of, id }: StockFact,
  buy: { readonly supplies: readonly Purchase<string>[]; readonly parts: readonly Purchase<string>[] },
): number {
  const bought = of === 'supply' ? buy.supplies : buy.parts;
  return bought.find((purchase) => purchase.id === id)?.units ?? 0;
}

/** The shop with so many units more. */
export function withMore({ of, id }: StockFact, units: number, { board, catalogue }: Situation): Situation {
  const more = <Thing extends Supply | Part>(thing: Thing): Thing =>
    thing.id === id && thing.stock !== null ? { ...thing, stock: thing.stock + units } : thing;
  const shop =
    of === 'supply'
      ? { ...catalogue, supplies: catalogue.supplies.map(more) }
      : { ...catalogue, parts: catalogue.parts.map(more) };
  return { board, catalogue: shop };
}

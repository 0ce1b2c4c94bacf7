import type { ProofApart } from '../domain/proof.js';
import type { ProofGround } from './claim.js';
import { Flaw } from './flaw.js';
import type { StockGroup } from './stock.js';

/**
 * The same ground with units told apart: each of them is a group of its own with at most one unit, and what is left of its
 * group has the rest. A plan may number its units as it likes, so whatever is told apart, every plan is among the cases.
 * @throws Flaw when it names what there is not, or the units of one group twice.
 */
export function toldApart(ground: ProofGround, apart: readonly ProofApart[]): ProofGround {
  const units = new Map<string, number>();
  for (const { supply, source, units: count } of apart) {
    if (!ground.stock.supplies.has(supply)) throw new Flaw(`it names the supply "${supply}", which there is not`);
    const key = JSON.stringify([supply, source]);
    if (units.has(key)) throw new Flaw(`it tells the ${source} units of "${supply}" apart twice`);
    units.set(key, count);
  }
  const unitsOf = ({ supply, source }: StockGroup): number => units.get(JSON.stringify([supply.id, source])) ?? 0;
  const carriers = new Map(
    [...ground.carriers].flatMap(([group, carrier]) =>
      partsOf(group, group.unit === null ? unitsOf(group) : 0).map((part) => [part, carrier]),
    ),
  );
  return { ...ground, carriers, stock: { ...ground.stock, groups: [...carriers.keys()], apart } };
}

/** Slots beyond the most units of the group stay empty in every plan, so there need not be any. */
function partsOf(group: StockGroup, units: number): readonly StockGroup[] {
  if (units === 0) return [group];
  const slots = Array.from({ length: Math.min(units, group.most) }, (_, index) => ({
    ...group,
    slot: index + 1,
    most: 1,
  }));
  const rest = group.most - slots.length;
  return rest === 0 ? slots : [{ ...group, most: rest }, ...slots];
}

import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { MinorUnits, PartId, SupplyId } from '../../domain/quantities.js';
import type { Inventory } from './inventory.js';
import { isLead } from '../../domain/part.js';
import { leadsOf } from '../../domain/plan.js';
import { unitsInUse, type UnitUse } from './usage.js';

/** One thing on the shopping list, so many units of it. */
export type ShoppingItem = {
  readonly kind: 'supply' | 'lead' | 'battery';
  readonly id: SupplyId | PartId;
  readonly name: string;
  readonly units: number;
  /** Of one unit. */
  readonly price: MinorUnits;
};

/** What to buy, supplies first. */
export const shoppingItems = (inventory: Inventory, { buy }: JudgedPlan): readonly ShoppingItem[] => [
  ...buy.supplies.map((one) => ({ kind: 'supply', name: inventory.supplyName(one.id), ...one }) as const),
  ...buy.parts.map((one): ShoppingItem => ({
    kind: isLead(inventory.part(one.id)) ? 'lead' : 'battery',
    name: inventory.partName(one.id),
    ...one,
  })),
];

/** An owned thing that the plan uses, so many of it; at least one. */
export type OwnedItem = { readonly name: string; readonly units: number };

/** Every owned supply and lead that the plan uses. */
export function ownedInUse(inventory: Inventory, wiring: JudgedPlan, units: readonly UnitUse[]): readonly OwnedItem[] {
  const bought = new Map<string, number>(wiring.buy.parts.map(({ id, units: count }) => [id, count]));
  const mine = units.filter(({ owned }) => owned);
  const boxes = units.filter(({ supply }) => supply.source.kind !== 'battery');
  const supplies = [...new Set(boxes.map(({ supply }) => supply.id))].map((id) => ({
    name: inventory.supplyName(id),
    units: unitsInUse(mine, id),
  }));
  const parts = [...partsInUse(units)].map(([id, count]) => ({
    name: inventory.partName(id),
    units: count - (bought.get(id) ?? 0),
  }));
  return [...supplies, ...parts].filter((item) => item.units > 0);
}

/** A chain lead counts once for all pedals on it. */
function partsInUse(units: readonly UnitUse[]): ReadonlyMap<PartId, number> {
  const counts = new Map<PartId, number>();
  for (const { feeds } of units.flatMap(({ outputs }) => outputs)) {
    const own = feeds.flatMap((feed) => feed.adapters);
    for (const id of [...leadsOf({ ...feeds[0], adapters: [] }), ...own]) counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return counts;
}

import type { Board } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { factorText, type MinorUnits, type PartId, type SupplyId } from '../../domain/quantities.js';
import type { Inventory } from './inventory.js';
import { isLead } from '../../domain/part.js';
import { leadsOf } from '../../domain/plan.js';
import type { Speech } from './speech.js';
import { unitsInUse, type UnitUse } from './usage.js';

/** One thing on the shopping list, so many units of it. */
export type ShoppingItem = {
  readonly kind: 'supply' | 'lead' | 'battery';
  /** "for 100 h of playing"; null of what is not used up. */
  readonly lasts: string | null;
  readonly id: SupplyId | PartId;
  readonly name: string;
  readonly units: number;
  /** Of one unit. */
  readonly price: MinorUnits;
};

/** What to buy, supplies first. */
export const shoppingItems = (
  { board, inventory }: Pick<Speech, 'board' | 'inventory'>,
  { buy }: Pick<JudgedPlan, 'buy'>,
): readonly ShoppingItem[] => [
  ...buy.supplies.map((one) => ({ kind: 'supply', name: inventory.supplyName(one.id), lasts: null, ...one }) as const),
  ...buy.parts.map((one): ShoppingItem => {
    const name = inventory.partName(one.id);
    return isLead(inventory.part(one.id))
      ? { kind: 'lead', name, lasts: null, ...one }
      : { kind: 'battery', name, lasts: lastsText(board), ...one };
  }),
];

function lastsText({ policy: { batteries } }: Board): string | null {
  return batteries === null ? null : `for ${factorText(batteries.pay)} h of playing`;
}

/** "Nine-volt block for 100 h of playing". */
export const itemText = ({ name, lasts }: Pick<ShoppingItem, 'name' | 'lasts'>): string =>
  lasts === null ? name : `${name} ${lasts}`;

/** An owned thing that the plan uses, so many of it; at least one. */
export type OwnedItem = { readonly name: string; readonly units: number };

/** Every owned supply, lead and battery that the plan uses. */
export function ownedInUse(inventory: Inventory, wiring: JudgedPlan, units: readonly UnitUse[]): readonly OwnedItem[] {
  const bought = new Map<string, number>(wiring.buy.parts.map(({ id, units: count }) => [id, count]));
  const mine = units.filter(({ owned }) => owned);
  const boxes = units.filter(({ supply }) => supply.source.kind !== 'battery');
  const supplies = [...new Set(boxes.map(({ supply }) => supply.id))].map((id) => ({
    name: inventory.supplyName(id),
    units: unitsInUse(mine, id),
  }));
  const parts = [...partsInUse(inventory, wiring, units)].map(([id, count]) => ({
    name: inventory.partName(id),
    units: count - (bought.get(id) ?? 0),
  }));
  return [...supplies, ...parts].filter((item) => item.units > 0);
}

/** A chain lead counts once for all pedals on it. */
function partsInUse(
  inventory: Inventory,
  { batteries }: JudgedPlan,
  units: readonly UnitUse[],
): ReadonlyMap<PartId, number> {
  const counts = new Map<PartId, number>();
  const count = (id: PartId, used: number): void => {
    counts.set(id, (counts.get(id) ?? 0) + used);
  };
  for (const { feeds } of units.flatMap(({ outputs }) => outputs)) {
    const own = feeds.flatMap((feed) => feed.adapters);
    for (const id of [...leadsOf({ ...feeds[0], adapters: [] }), ...own]) count(id, 1);
  }
  for (const { supply, pieces } of batteries) {
    const { source } = inventory.supply(supply);
    if (source.kind === 'battery') count(source.battery, pieces);
  }
  return counts;
}

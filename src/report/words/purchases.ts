import type { JudgedPlan } from '../../domain/judged-plan.js';
import { factorText, minorUnits, type MinorUnits, type PartId, type SupplyId } from '../../domain/quantities.js';
import type { Inventory } from './inventory.js';
import { isLead } from '../../domain/part.js';
import { leadsOf } from '../../domain/plan.js';
import type { Speech } from './speech.js';
import type { UnitUse } from './usage.js';
import { priceText } from './words.js';

/** One thing on the shopping list, so many units of it. */
export type ShoppingItem = {
  readonly kind: 'supply' | 'lead' | 'battery';
  readonly id: SupplyId | PartId;
  readonly name: string;
  /** The name, of what is used up with how long it lasts: "Nine-volt block for 100 h of playing". */
  readonly text: string;
  readonly units: number;
  /** Of one unit. */
  readonly price: MinorUnits;
  /** The price in words, of one and of all. */
  readonly each: string;
  readonly together: string;
};

/** What to buy, supplies first. */
export function shoppingItems(
  { board, inventory }: Pick<Speech, 'board' | 'inventory'>,
  { buy }: Pick<JudgedPlan, 'buy'>,
): readonly ShoppingItem[] {
  const priced = <Bought extends { readonly units: number; readonly price: MinorUnits }>(one: Bought) => ({
    ...one,
    each: priceText(one.price, board),
    together: priceText(minorUnits(one.price * one.units), board),
  });
  const { batteries } = board.policy;
  const lasts = batteries === null ? '' : ` for ${factorText(batteries.pay)} h of playing`;
  return [
    ...buy.supplies.map((one): ShoppingItem => {
      const name = inventory.supplyName(one.id);
      return { kind: 'supply', name, text: name, ...priced(one) };
    }),
    ...buy.parts.map((one): ShoppingItem => {
      const name = inventory.partName(one.id);
      const kind = isLead(inventory.part(one.id)) ? 'lead' : 'battery';
      return { kind, name, text: kind === 'lead' ? name : `${name}${lasts}`, ...priced(one) };
    }),
  ];
}

/** "2 × Quay 6" for each thing that is bought, supplies first. */
export const boughtTexts = ({ inventory }: Pick<Speech, 'inventory'>, { supplies, parts }: JudgedPlan['buy']) => [
  ...supplies.map(({ id, units }) => `${units} × ${inventory.supplyName(id)}`),
  ...parts.map(({ id, units }) => `${units} × ${inventory.partName(id)}`),
];

/** An owned thing that the plan uses, so many of it; at least one. */
export type OwnedItem = { readonly name: string; readonly units: number };

/** Every owned supply, lead and battery that the plan uses. */
export function ownedInUse(inventory: Inventory, wiring: JudgedPlan, units: readonly UnitUse[]): readonly OwnedItem[] {
  const bought = new Map<string, number>(wiring.buy.parts.map(({ id, units: count }) => [id, count]));
  const mine = units.filter(({ owned }) => owned);
  const boxes = units.filter(({ supply }) => supply.source.kind !== 'battery');
  const supplies = [...new Set(boxes.map(({ supply }) => supply.id))].map((id) => ({
    name: inventory.supplyName(id),
    units: mine.filter(({ supply }) => supply.id === id).length,
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

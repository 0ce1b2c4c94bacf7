import type { Purchase, Wiring } from '../domain/plan.js';
import { minorUnits, type PartId } from '../domain/quantities.js';
import { beside, block, widthOf } from './layout.js';
import type { Screen } from './screen.js';
import { leadsOf, unitsInUse, type UnitUse } from './usage.js';
import { priceText } from './words.js';

type Row = { readonly item: string; readonly each: string; readonly together: string };

/** What to buy with its prices, then the owned things that the plan uses. */
export function shoppingLines(screen: Screen, wiring: Wiring, units: readonly UnitUse[]): string[] {
  const { inventory, width } = screen;
  const rows = [
    ...wiring.buy.supplies.map((purchase) => rowOf(screen, purchase, inventory.supplyName(purchase.id))),
    ...wiring.buy.parts.map((purchase) => rowOf(screen, purchase, inventory.partName(purchase.id))),
  ];
  const owned = ownedInUse(screen, wiring, units);
  const use = owned.length === 0 ? [] : block([{ text: `Use what you own: ${owned.join(', ')}.`, hang: 2 }], width, 2);
  if (rows.length === 0) return [...block([{ text: 'Nothing to buy.' }], width, 2), ...use];
  return [...table(screen, rows, priceText(wiring.score.money, screen.board)), ...use];
}

function rowOf<Id>({ board, marks }: Screen, { units, price }: Purchase<Id>, name: string): Row {
  return {
    item: `${units} ${marks.times} ${name}`,
    each: units > 1 ? `${priceText(price, board)} each` : '',
    together: priceText(minorUnits(price * units), board),
  };
}

function table({ width, paints }: Screen, rows: readonly Row[], total: string): string[] {
  const each = Math.max(0, ...rows.map((row) => row.each.length));
  const together = Math.max(total.length, ...rows.map((row) => row.together.length));
  const gap = 2;
  const room = width - gap - (each + gap) - (together + gap);
  const item = Math.min(room, Math.max('Total'.length, ...rows.map((row) => widthOf(row.item))));
  const line = (row: Row, paint?: (text: string) => string) =>
    beside(
      [
        { pieces: [{ text: row.item, hang: 4, ...(paint && { paint }) }], width: item },
        { pieces: [right(row.each, each)], width: each },
        { pieces: [{ ...right(row.together, together), ...(paint && { paint }) }], width: together },
      ],
      gap,
      gap,
    );
  return [...rows.flatMap((row) => line(row)), ...line({ item: 'Total', each: '', together: total }, paints.strong)];
}

const right = (text: string, width: number) => ({ text, indent: width - text.length });

/** "1 × Quay 6" for every owned supply and lead that the plan uses. */
function ownedInUse({ inventory, marks }: Screen, wiring: Wiring, units: readonly UnitUse[]): string[] {
  const text = (count: number, name: string): string[] => (count > 0 ? [`${count} ${marks.times} ${name}`] : []);
  const bought = new Map<string, number>(wiring.buy.parts.map(({ id, units: count }) => [id, count]));
  const supplies = [...new Set(units.map(({ supply }) => supply.id))].flatMap((id) => {
    const mine = units.filter(({ owned }) => owned);
    return text(unitsInUse(mine, id), inventory.supplyName(id));
  });
  const parts = [...partsInUse(units)].flatMap(([id, count]) =>
    text(count - (bought.get(id) ?? 0), inventory.partName(id)),
  );
  return [...supplies, ...parts];
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

import { groupBy } from '../domain/group-by.js';
import type { Board } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { Purchase } from '../domain/plan.js';
import type { PartId, SupplyId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import type { Violation } from '../domain/violation.js';
import { batteriesIn } from './batteries.js';
import { chainIds } from './chains.js';
import { pedalsOf, type Layout, type Line } from './line.js';
import { counted, violation } from './violation.js';
import { are, count, list } from './words.js';

/** The units of supplies and the parts that a wiring needs beyond the owned ones, as far as they are for sale. */
export type Buying = {
  readonly supplies: readonly Purchase<SupplyId>[];
  readonly parts: readonly Purchase<PartId>[];
};

/** The supplies and parts that a wiring uses. */
export type InUse = { readonly supplies: readonly SupplyInUse[]; readonly parts: readonly PartInUse[] };

export const inUseOf = (layout: Layout): InUse => ({ supplies: suppliesInUse(layout), parts: partsInUse(layout) });

/** No more units or parts than are owned plus in stock. */
export function stockViolations(layout: Layout, inUse: InUse, owned: Board['owned']): readonly Violation[] {
  const supplies = inUse.supplies.flatMap(({ supply, units, lines }) => {
    const inHand = owned.supplies.get(supply.id) ?? 0;
    const available = availableOf(supply, inHand);
    const beyond = units.filter((unit) => unit > available);
    const [first, ...others] = beyond;
    if (first === undefined) return [];
    const pedals = pedalsOf(lines.filter((line) => line.feed.unit > available));
    const which = `unit${others.length === 0 ? '' : 's'} ${list(beyond.map(String))} of ${supply.name}`;
    const message = `${which} ${are(beyond.length)} in use; ${availableText(supply, inHand)}`;
    const numbers = counted(others.at(-1) ?? first, available);
    const place = { supply: supply.id, unit: first, outputs: [] };
    return [violation('stock', pedals, message, others.length === 0 ? { place, numbers } : { numbers })];
  });
  return [...supplies, ...inUse.parts.flatMap((part) => partViolations(part, layout, owned))];
}

function partViolations({ id, used, lines }: PartInUse, layout: Layout, owned: Board['owned']): readonly Violation[] {
  const part = layout.parts.get(id);
  const pedals = pedalsOf(lines);
  if (part === undefined)
    return [violation('stock', pedals, `"${id}" is a part that is neither described nor for sale`)];
  const inHand = owned.parts.get(id) ?? 0;
  if (used <= availableOf(part, inHand)) return [];
  const message = `${used} × ${part.name} ${are(used)} in use; ${availableText(part, inHand)}`;
  return [violation('stock', pedals, message, { numbers: counted(used, availableOf(part, inHand)) })];
}

/**
 * What has to be bought, in the order of the files. Units are numbered with the owned ones first, so that a higher number is a
 * bought one.
 */
export function buyingOf(layout: Layout, inUse: InUse, owned: Board['owned']): Buying {
  return {
    supplies: inOrder(inUse.supplies, layout.supplies, ({ supply }) => supply.id).flatMap(({ supply, units }) => {
      const inHand = owned.supplies.get(supply.id) ?? 0;
      return purchase(supply.id, supply.price, units.filter((unit) => unit > inHand).length);
    }),
    parts: inOrder(inUse.parts, layout.parts, ({ id }) => id).flatMap(({ id, used }) => {
      return purchase(id, layout.parts.get(id)?.price ?? null, used - (owned.parts.get(id) ?? 0));
    }),
  };
}

function inOrder<Thing, Id>(
  things: readonly Thing[],
  files: ReadonlyMap<Id, unknown>,
  idOf: (thing: Thing) => Id,
): readonly Thing[] {
  const order = new Map([...files.keys()].map((id, index) => [id, index]));
  const placeOf = (thing: Thing): number => order.get(idOf(thing)) ?? order.size;
  return [...things].sort((first, second) => placeOf(first) - placeOf(second));
}

function purchase<Id>(id: Id, price: Purchase<Id>['price'] | null, units: number): readonly Purchase<Id>[] {
  return price === null || units <= 0 ? [] : [{ id, units, price }];
}

type SupplyInUse = { readonly supply: Supply; readonly units: readonly number[]; readonly lines: readonly Line[] };

function suppliesInUse(layout: Layout): readonly SupplyInUse[] {
  return groupBy(layout.lines, (line) => line.supply.id).map((lines) => ({
    supply: lines[0].supply,
    units: [...new Set(lines.map((line) => line.feed.unit))].sort((first, second) => first - second),
    lines,
  }));
}

type PartInUse = { readonly id: PartId; readonly used: number; readonly lines: readonly Line[] };

/**
 * A chain lead counts once for its output, a join lead once for its two outputs, an adapter for every pedal, a battery as often
 * as it is paid for.
 */
function partsInUse(layout: Layout): readonly PartInUse[] {
  const uses = layout.outlets.flatMap((outlet) => {
    const joins = new Set(outlet.lines.flatMap((line) => line.feed.join?.part ?? []));
    return [
      ...[...joins, ...chainIds(outlet)].map((id) => ({ id, lines: outlet.lines })),
      ...outlet.lines.flatMap((line) =>
        [...line.feed.adapters, ...batteriesIn(line, layout.policy)].map((id) => ({ id, lines: [line] })),
      ),
    ];
  });
  return groupBy(uses, (use) => use.id).map((group) => ({
    id: group[0].id,
    used: group.length,
    lines: group.flatMap((use) => use.lines),
  }));
}

/** What has no price is not for sale, whatever its stock says. */
function availableOf(thing: Supply | Part, owned: number): number {
  if (thing.price === null) return owned;
  return thing.stock === null ? Infinity : owned + thing.stock;
}

function availableText(thing: Supply | Part, owned: number): string {
  const sale = thing.price === null ? 'none is for sale' : `${thing.stock ?? 'any number'} in stock`;
  return `${count(owned, 'unit')} owned, ${sale}`;
}

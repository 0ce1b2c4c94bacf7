import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Currency } from '../../domain/money.js';
import { plainName } from '../../domain/names.js';
import type { MinorUnits } from '../../domain/quantities.js';
import type { SeenIds } from './resolve-id.js';
import { resolveMoney } from './resolve-quantity.js';

/** What a thing that may be for sale is resolved with. */
export type Counter = {
  /** Null when the file's currency was reported. */
  readonly currency: Currency | null;
  /** False for gear: its price and stock count for nothing. */
  readonly forSale: boolean;
  readonly seen: SeenIds;
  readonly report: Report;
};

/** A thing with an id; each part is null when it was reported. */
export type Found<Id, Thing> = { readonly id: Id | null; readonly thing: Thing | null };

/** The price of a supply or part: null for gear. */
export function resolvePrice(
  entry: Entry<{ readonly price?: number | undefined }>,
  counter: Counter,
): MinorUnits | null | 'reported' {
  if (entry.fields.price === undefined) return counter.forSale ? 'reported' : null;
  const price = resolveMoney(entry.fields.price, counter.currency, entry.spotOf('price'), counter.report);
  if (price === null) return 'reported';
  return counter.forSale ? price : null;
}

/** A thing with the name that it has in its file; null when that was reported. */
export type Called<Id, Thing> = Found<Id, Thing> & { readonly name: string | null };

/** Supplies or parts by id, and whether the list is known to be whole. */
export type Shelf<Id, Thing> = {
  /** The thing is null when something about it was reported. */
  readonly byId: ReadonlyMap<Id, Thing | null>;
  /** The ids of things with that name, as `plainName` has it. */
  readonly byName: ReadonlyMap<string, readonly Id[]>;
  /** False when an id is not known because of something reported: then no other id can be called unknown. */
  readonly complete: boolean;
};

/** The shelf of all that was found in the gear and the catalogue; the first of two with the same id counts. */
export function shelfOf<Id, Thing>(found: readonly Called<Id, Thing>[], complete: boolean): Shelf<Id, Thing> {
  const byId = new Map<Id, Thing | null>();
  const byName = new Map<string, Id[]>();
  for (const { id, name, thing } of found) {
    if (id === null || byId.has(id)) continue;
    byId.set(id, thing);
    if (name !== null) byName.set(plainName(name), [...(byName.get(plainName(name)) ?? []), id]);
  }
  return { byId, byName, complete: complete && found.every(({ id }) => id !== null) };
}

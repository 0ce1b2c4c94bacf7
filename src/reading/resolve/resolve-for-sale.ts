import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Currency } from '../../domain/money.js';
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

/** Supplies or parts by id, and whether the list is known to be whole. */
export type Shelf<Id, Thing> = {
  /** The thing is null when something about it was reported. */
  readonly byId: ReadonlyMap<Id, Thing | null>;
  /** False when an id is not known because of something reported: then no other id can be called unknown. */
  readonly complete: boolean;
};

/** The shelf of all that was found in the gear and the catalogue; the first of two with the same id counts. */
export function shelfOf<Id, Thing>(found: readonly Found<Id, Thing>[], complete: boolean): Shelf<Id, Thing> {
  const byId = new Map<Id, Thing | null>();
  for (const { id, thing } of found) if (id !== null && !byId.has(id)) byId.set(id, thing);
  return { byId, complete: complete && found.every(({ id }) => id !== null) };
}

import type { Board, Catalogue } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { Supply } from '../domain/supply.js';
import { nothingToday, unitsInUse, type Today } from './today.js';

/** A supply model and how many of its units there are. */
export type Offer = {
  readonly supply: Supply;
  readonly owned: number;
  /** How many units more can be bought; Infinity is no limit. */
  readonly forSale: number;
  /** The number of the one unit that this is, where it matters what is plugged into it today; null for any unit. */
  readonly unit: number | null;
};

/** A lead and how many of it there are. */
export type PartOffer = { readonly part: Part; readonly owned: number; readonly forSale: number };

/**
 * Every supply of the catalogue and the gear, the catalogue's first, each in its file's order; the units that are in use
 * today are offers of their own.
 */
export function supplyOffers(board: Board, catalogue: Catalogue | null, today: Today = nothingToday): readonly Offer[] {
  const all = [...(catalogue?.supplies ?? []), ...board.gear.supplies];
  return all.flatMap((supply): Offer[] => {
    const inUse = unitsInUse(supply, today);
    const owned = (board.owned.supplies.get(supply.id) ?? 0) - inUse.length;
    const forSale = supply.price === null ? 0 : (supply.stock ?? Infinity);
    return [...inUse.map((unit) => ({ supply, owned: 1, forSale: 0, unit })), { supply, owned, forSale, unit: null }];
  });
}

/** Every lead of the catalogue and the gear of which there is at least one to be had. */
export function partOffers(board: Board, catalogue: Catalogue | null): readonly PartOffer[] {
  const all = [...(catalogue?.parts ?? []), ...board.gear.parts];
  return all
    .map((part) => ({
      part,
      owned: board.owned.parts.get(part.id) ?? 0,
      forSale: part.price === null ? 0 : (part.stock ?? Infinity),
    }))
    .filter(({ owned, forSale }) => owned + forSale > 0);
}

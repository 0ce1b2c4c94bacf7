import type { Board, Catalogue } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { Supply } from '../domain/supply.js';

/** A supply model and how many of its units there are. */
export type Offer = {
  readonly supply: Supply;
  readonly owned: number;
  /** How many units more can be bought; Infinity is no limit. */
  readonly forSale: number;
};

/** A lead and how many of it there are. */
export type PartOffer = { readonly part: Part; readonly owned: number; readonly forSale: number };

/** Every supply of the catalogue and the gear, the catalogue's first, each in its file's order. */
export function supplyOffers(board: Board, catalogue: Catalogue | null): readonly Offer[] {
  const all = [...(catalogue?.supplies ?? []), ...board.gear.supplies];
  return all.map((supply) => ({
    supply,
    owned: board.owned.supplies.get(supply.id) ?? 0,
    forSale: supply.price === null ? 0 : (supply.stock ?? Infinity),
  }));
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

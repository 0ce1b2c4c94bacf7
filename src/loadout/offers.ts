import { gathered } from '../../solver/gathered.js';
import { forSaleOf, ownedOf, type Kit } from '../domain/kit.js';
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
 * Every supply of the catalogue and the gear, in the order of the kit; the units that are in use
 * today are offers of their own.
 */
export function supplyOffers(kit: Kit, today: Today = nothingToday): readonly Offer[] {
  return gathered([...kit.supplies.values()], (supply): Offer[] => {
    const inUse = unitsInUse(supply, today);
    const owned = ownedOf(kit, supply) - inUse.length;
    const forSale = forSaleOf(supply);
    return [...inUse.map((unit) => ({ supply, owned: 1, forSale: 0, unit })), { supply, owned, forSale, unit: null }];
  });
}

/** Every lead of the catalogue and the gear of which there is at least one to be had. */
export function partOffers(kit: Kit): readonly PartOffer[] {
  return [...kit.parts.values()]
    .map((part) => ({ part, owned: ownedOf(kit, part), forSale: forSaleOf(part) }))
    .filter(({ owned, forSale }) => owned + forSale > 0);
}

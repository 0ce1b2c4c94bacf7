import { gathered } from '../../solver/gathered.js';
import { groupBy } from '../domain/group-by.js';
import type { PartRole } from '../domain/part.js';
import type { MinorUnits, PartId } from '../domain/quantities.js';
import type { PartOffer } from './offers.js';

/** Leads that do the same: they fit, give and reverse alike and have the same role. They may differ in price. */
export type LeadKind = {
  /** Its place in the list of kinds. */
  readonly index: number;
  readonly fits: string;
  readonly gives: string;
  readonly reverses: boolean;
  readonly role: PartRole;
  /** In the order in which they are taken: owned ones cost nothing, then the cheapest for sale. */
  readonly supplyOf: readonly LeadSource[];
};

/** Some pieces of one part at one price: the owned ones at 0, or those for sale. */
type LeadSource = {
  readonly part: PartId;
  readonly price: MinorUnits;
  readonly owned: boolean;
  /** How many; Infinity is no limit. */
  readonly pieces: number;
};

/** All kinds of leads that can be had. */
export function leadKinds(offers: readonly PartOffer[]): readonly LeadKind[] {
  const kinds = groupBy(offers, ({ part: { fits, gives, reverses, role } }) =>
    JSON.stringify([fits, gives, reverses, role]),
  );
  return kinds.map((group, index) => {
    const [{ part }] = group;
    const { fits, gives, reverses, role } = part;
    return { index, fits, gives, reverses, role, supplyOf: gathered(group, sourcesOf).sort(cheapestFirst) };
  });
}

/** How many pieces of the kind can be had at all; Infinity is no limit. */
export const piecesOf = (kind: LeadKind): number => kind.supplyOf.reduce((sum, { pieces }) => sum + pieces, 0);

/** Whether it can be had as often as one likes at one price; else a row of its own counts it. */
export const hasOnePrice = ({ supplyOf: [first] }: LeadKind): boolean => first?.pieces === Infinity;

function sourcesOf({ part, owned, forSale }: PartOffer): LeadSource[] {
  const sources: LeadSource[] = [];
  if (owned > 0) sources.push({ part: part.id, price: 0 as MinorUnits, owned: true, pieces: owned });
  if (forSale > 0 && part.price !== null) {
    sources.push({ part: part.id, price: part.price, owned: false, pieces: forSale });
  }
  return sources;
}

/** Owned pieces before bought ones even at price 0, so that nothing is bought needlessly; then by price, then by id. */
function cheapestFirst(first: LeadSource, second: LeadSource): number {
  if (first.owned !== second.owned) return first.owned ? -1 : 1;
  if (first.price !== second.price) return first.price - second.price;
  return first.part < second.part ? -1 : first.part > second.part ? 1 : 0;
}

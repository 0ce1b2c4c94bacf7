import { forSaleOf, type Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import type { Part } from '../../domain/part.js';
import { partsInUse, type LaidLeads } from '../today/parts-in-use.js';

/** What leads cost: pieces that cannot be had, money in minor units, pieces. An earlier one weighs more. */
export type Bill = { readonly lacking: number; readonly money: number; readonly pieces: number };

export const noBill: Bill = { lacking: 0, money: 0, pieces: 0 };

export const addBills = (first: Bill, second: Bill): Bill => ({
  lacking: first.lacking + second.lacking,
  money: first.money + second.money,
  pieces: first.pieces + second.pieces,
});

/** Below zero when the first is the smaller. */
export const compareBills = (first: Bill, second: Bill): number =>
  first.lacking - second.lacking || first.money - second.money || first.pieces - second.pieces;

/** One lead in the hand: owned and free, to be bought, or not to be had at all. */
type LeadPiece = { readonly part: Part; readonly bill: Bill };

/** Pieces of leads that do the same, the cheapest first. */
export type LeadShape = {
  readonly fits: string;
  readonly gives: string;
  readonly reverses: boolean;
  readonly pieces: readonly LeadPiece[];
};

/** How many pieces of a part there are beyond what other feeds use. */
type Availability = { readonly free: number; readonly forSale: number };

/** What is left of a part when these feeds have what they use. */
export function availabilityOf(owned: Board['owned'], others: readonly LaidLeads[]): (part: Part) => Availability {
  const used = partsInUse(others);
  return (part) => {
    const left = (owned.parts.get(part.id) ?? 0) - (used.get(part.id) ?? 0);
    return { free: Math.max(0, left), forSale: Math.max(0, forSaleOf(part) + Math.min(0, left)) };
  };
}

/** The first so many pieces of a part, and such as cannot be had where it has fewer. */
export function piecesOf(part: Part, { free, forSale }: Availability, most: number): readonly LeadPiece[] {
  return Array.from({ length: most }, (_, index) => {
    const isFree = index < free;
    const lacking = index < free + forSale ? 0 : 1;
    return { part, bill: { lacking, money: isFree || lacking === 1 ? 0 : (part.price ?? 0), pieces: 1 } };
  });
}

/** The adapters by what they do, each with its `most` cheapest pieces. */
export function adapterShapes(
  { parts }: Kit,
  available: (part: Part) => Availability,
  most: number,
): readonly LeadShape[] {
  const shapes = new Map<string, { readonly shape: Omit<LeadShape, 'pieces'>; readonly pieces: LeadPiece[] }>();
  for (const part of parts.values()) {
    if (part.role.kind !== 'adapter') continue;
    const { fits, gives, reverses } = part;
    const key = JSON.stringify([fits, gives, reverses]);
    const shape = shapes.get(key) ?? { shape: { fits, gives, reverses }, pieces: [] };
    shape.pieces.push(...piecesOf(part, available(part), most));
    shapes.set(key, shape);
  }
  return [...shapes.values()].map(({ shape, pieces }) => ({
    ...shape,
    pieces: pieces.sort((first, second) => compareBills(first.bill, second.bill)).slice(0, most),
  }));
}

import type { Catalogue } from '../../domain/board.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { supplyId, type SupplyId } from '../../domain/quantities.js';
import { listed, quoted } from '../../domain/shown-text.js';
import type { BoughtUnits } from './purchase-tree.js';
import type { AskedSupply } from './read-purchase.js';

export type ResolvedPurchases =
  | { readonly kind: 'purchases'; readonly purchases: readonly BoughtUnits[] }
  /** A sentence for each supply that the catalogue does not sell. */
  | { readonly kind: 'unknown'; readonly faults: readonly string[] };

/** The purchases that are meant, or which ids the catalogue does not list and what is near. */
export function resolvePurchases(
  asked: readonly (readonly AskedSupply[])[],
  { supplies }: Pick<Catalogue, 'supplies'>,
): ResolvedPurchases {
  const ids = supplies.map(({ id }) => String(id));
  const unknown = [...new Set(asked.flat().map(({ id }) => id))].filter((id) => !ids.includes(id));
  if (unknown.length > 0) return { kind: 'unknown', faults: unknown.map((id) => faultFor(id, ids)) };
  return { kind: 'purchases', purchases: asked.map(boughtOf) };
}

/** The most ids that a message lists. */
const mostListed = 12;

function faultFor(id: string, ids: readonly string[]): string {
  const more = ids.length > mostListed ? ` and ${ids.length - mostListed} more` : '';
  const all = more === '' ? listed(ids, 'and') : `${ids.slice(0, mostListed).join(', ')}${more}`;
  const near = didYouMean(id, ids) ?? (ids.length === 0 ? 'It sells none.' : `It sells ${all}.`);
  return `the catalogue sells no supply ${quoted(id)}. ${near}`;
}

/** A supply that is named twice is bought as often as both say. */
function boughtOf(supplies: readonly AskedSupply[]): BoughtUnits {
  const bought = new Map<SupplyId, number>();
  for (const { id, units } of supplies) bought.set(supplyId(id), (bought.get(supplyId(id)) ?? 0) + units);
  return bought;
}

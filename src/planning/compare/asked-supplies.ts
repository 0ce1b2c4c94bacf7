import type { Catalogue } from '../../domain/board.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { idsMeant, severalFault } from '../../domain/names.js';
import type { SupplyId } from '../../domain/quantities.js';
import { firstListed, quoted } from '../../domain/shown-text.js';
import type { BoughtUnits } from './purchase-tree.js';
import type { AskedSupply } from './read-purchase.js';

export type ResolvedPurchases =
  | { readonly kind: 'purchases'; readonly purchases: readonly BoughtUnits[] }
  /** A sentence for each supply that the catalogue does not sell. */
  | { readonly kind: 'unknown'; readonly faults: readonly string[] };

/** The purchases that are meant by ids, or by names that only one supply has; or which are unknown and what is near. */
export function resolvePurchases(
  asked: readonly (readonly AskedSupply[])[],
  { supplies }: Pick<Catalogue, 'supplies'>,
): ResolvedPurchases {
  const ids = supplies.map(({ id }) => String(id));
  const meant = new Map(asked.flat().map(({ id }) => [id, idsMeant(id, supplies)] as const));
  const unclear = [...meant].filter(([, named]) => named.length !== 1);
  if (unclear.length > 0)
    return {
      kind: 'unknown',
      faults: unclear.map(([text, named]) => (named.length === 0 ? faultFor(text, ids) : severalFault(text, named))),
    };
  return { kind: 'purchases', purchases: asked.map((each) => boughtOf(each, meant)) };
}

function faultFor(id: string, ids: readonly string[]): string {
  const near = didYouMean(id, ids) ?? (ids.length === 0 ? 'It sells none.' : `It sells ${firstListed(ids)}.`);
  return `the catalogue sells no supply ${quoted(id)}. ${near}`;
}

/** A supply that is named twice is bought as often as both say. */
function boughtOf(asked: readonly AskedSupply[], meant: ReadonlyMap<string, readonly SupplyId[]>): BoughtUnits {
  const bought = new Map<SupplyId, number>();
  for (const { id: text, units } of asked)
    for (const id of meant.get(text) ?? []) bought.set(id, (bought.get(id) ?? 0) + units);
  return bought;
}

import type { ChainPool } from '../../../src/loadout/uses.js';
import type { SupplyId } from '../../../src/domain/quantities.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';

/**
 * How finely the program tells things apart. It begins with all units of a supply in one pool and all chains that are
 * alike in another, which is a relaxation; where an answer cannot be dealt out to real units and chains, these are
 * told apart one by one, until it can.
 */
export type Detail = {
  /** Units that have rows of their own, by supply. */
  readonly units: ReadonlyMap<SupplyId, number>;
  /** Chains that have rows of their own, by pool (see `chainKey`). */
  readonly chains: ReadonlyMap<string, number>;
};

export const coarse: Detail = { units: new Map(), chains: new Map() };

/** A name for one pool of chains in one block of units. */
export const chainKey = (
  { supply, unit }: Pick<SupplyUses, 'supply' | 'unit'>,
  block: number,
  pool: ChainPool,
): string => JSON.stringify([supply.id, unit, block, pool.output, pool.exit, pool.mode]);

/** Something that an answer has shown to be told apart too coarsely, and how many are needed. */
export type Coarseness =
  | { readonly kind: 'units'; readonly supply: SupplyId; readonly count: number }
  | { readonly kind: 'chains'; readonly key: string; readonly count: number };

/** The detail with more told apart. */
export function refined(detail: Detail, found: readonly Coarseness[]): Detail {
  const units = new Map(detail.units);
  const chains = new Map(detail.chains);
  for (const each of found) {
    if (each.kind === 'units') units.set(each.supply, (units.get(each.supply) ?? 0) + each.count);
    else chains.set(each.key, (chains.get(each.key) ?? 0) + each.count);
  }
  return { units, chains };
}

import type { Kit } from '../../domain/kit.js';
import { isFed, type FedSupply } from '../../domain/inlet.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { questionOf } from '../../formulation/question.js';
import { classesOfSort } from '../../loadout/inlet-classes.js';
import { inletSortOf } from '../../loadout/inlet-sort.js';
import { feedable, type SupplyUses } from '../../loadout/supply-uses.js';

/**
 * The supplies that can feed each pedal, alone or in a chain, whatever else is left out: under the rules as they are, whatever
 * the limits. A fed supply that nothing can feed is none.
 */
export function feedersOf(kit: Kit): ReadonlyMap<PedalId, readonly SupplyId[]> {
  const { supplies, bench } = questionOf(kit, { tiers: [], partial: true });
  const canBeFed = inletFeeders(kit);
  const feeding = supplies
    .filter(({ supply }) => !isFed(supply) || canBeFed(supply))
    .map((uses) => ({ id: uses.supply.id, fed: feedable(withinLimits(uses)) }));
  return new Map(
    bench.classes.flatMap(({ members }, index) => {
      const ids = new Set(feeding.filter(({ fed }) => fed.has(index)).map(({ id }) => id));
      return members.map(({ id }) => [id, [...ids]] as const);
    }),
  );
}

/** Tells whether some output can feed the inlet of a supply, whatever the limits. */
export function inletFeeders(kit: Kit): (supply: FedSupply) => boolean {
  if (![...kit.supplies.values()].some(isFed)) return () => false;
  const { supplies, bench } = questionOf(kit, { tiers: [], partial: true });
  const fed = new Set(supplies.flatMap((uses) => [...feedable(withinLimits(uses))]));
  return (supply) => classesOfSort(bench, inletSortOf(supply) ?? '').some((index) => fed.has(index));
}

/** Without the uses that by themselves are too much for a total. */
function withinLimits(uses: SupplyUses): SupplyUses {
  const holds = (weights: readonly bigint[]): boolean =>
    uses.limits.every(({ capacity }, index) => (weights[index] ?? 0n) <= capacity);
  const chains = uses.chains.map((pool) => ({ ...pool, places: pool.places.filter(({ weights }) => holds(weights)) }));
  return { ...uses, solos: uses.solos.filter(({ weights }) => holds(weights)), chains };
}

import { withGear } from '../../domain/changed-kit.js';
import { inletPedal, isFed } from '../../domain/inlet.js';
import type { Kit } from '../../domain/kit.js';
import type { Effort } from '../../formulation/optimiser.js';
import { supplyOffers } from '../../loadout/offers.js';
import { ask } from '../asking/ask.js';
import { suppliesFor, withOneMore } from './missing-supply.js';
import { noWays, notFound, waysFor, type Ways, type WayOut } from './way-out.js';

/**
 * For each fed supply that can be had: whether one more supply that is made for its inlet would do. All of them are tried at once
 * first. A plan in which the new supply does not feed that inlet says nothing that the other ways do not say.
 */
export async function missingFeeds(kit: Kit, effort: Effort): Promise<Ways> {
  const fed = supplyOffers(kit)
    .flatMap(({ supply, owned, forSale }) => (isFed(supply) && owned + forSale > 0 ? [supply] : []))
    .map((supply) => ({ of: supply.id, inlet: inletPedal(supply, 1) }));
  if (fed.length === 0) return noWays;
  const supplies = fed.flatMap(({ inlet }) => suppliesFor(inlet, kit));
  const together = await ask(withGear(kit, { supplies }), { tiers: [] }, effort);
  if (together.kind !== 'plan') return notFound(together);
  return waysFor(fed, async ({ of, inlet }) => {
    const found = await withOneMore(inlet, kit, effort, (supply) => ({ kind: 'inlet', of, supply }));
    const feeds = ({ change, wiring }: WayOut): boolean =>
      wiring.inlets.some(
        ({ supply, inletOf }) => change.kind === 'inlet' && supply === change.supply.id && inletOf.supply === of,
      );
    return { ...found, ways: found.ways.filter(feeds) };
  });
}

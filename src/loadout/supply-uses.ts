import { acceptsVenues, isAllowed, natureOf, type Nature } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';
import type { Bench } from './bench.js';
import type { Offer } from './offers.js';
import { chainPools } from './chain-pools.js';
import type { GroundMode } from './ground-mode.js';
import { mayFeedInlet } from './inlet-classes.js';
import { usesOnOwn } from './own-uses.js';
import { soloUses } from './solo-uses.js';
import { totalLimits, type TotalLimit } from './totals.js';
import type { ChainPool, SoloUse } from './uses.js';

/** All that a unit of one supply can do for a board. */
export type SupplyUses = {
  readonly supply: Supply;
  readonly owned: number;
  readonly forSale: number;
  /** The number of the one unit that this is, where it matters what is plugged into it today; null for any unit. */
  readonly unit: number | null;
  readonly limits: readonly TotalLimit[];
  /** Pedals by themselves; those on the common ground need a mode that admits them. */
  readonly solos: readonly SoloUse[];
  readonly chains: readonly ChainPool[];
  /** The modes of the common ground that are of use; empty for a supply whose outputs are all isolated. */
  readonly modes: readonly GroundMode[];
};

/** Null when the policy or the venue's mains rule the supply out or none of its outputs can feed any pedal. */
export function supplyUses(offer: Offer, bench: Bench): SupplyUses | null {
  const { supply } = offer;
  if (offer.owned + offer.forSale === 0 || !isAllowed(supply.source, bench.policy)) return null;
  if (!acceptsVenues(supply.source, bench.policy.mains)) return null;
  const limits = totalLimits(
    supply,
    bench.policy,
    bench.classes.map(({ like }) => like),
  );
  const { solos, chains } = waysFrom[natureOf(supply.source).wayStartsAt](supply, limits, bench);
  if (solos.length === 0 && chains.length === 0) return null;
  const common = supply.banks.some(({ isolated }) => !isolated);
  const { owned, forSale, unit } = offer;
  return { supply, owned, forSale, unit, limits, solos, chains, modes: common ? bench.modes : [] };
}

type SupplyWays = Pick<SupplyUses, 'solos' | 'chains'>;

/** The ways to pedals, by where they start. */
const waysFrom: Readonly<
  Record<Nature['wayStartsAt'], (supply: Supply, limits: readonly TotalLimit[], bench: Bench) => SupplyWays>
> = {
  plug: (supply, limits, bench) => ({
    solos: soloUses(supply, limits, bench).filter(
      (use) => bench.classes[use.pedal]?.inlet === null || mayFeedInlet(supply.source, use),
    ),
    chains: chainPools(supply, limits, bench),
  }),
  'its pedal': (supply, _, bench) => ({ solos: usesOnOwn(supply, bench), chains: [] }),
};

/** How many of the board's pedals the supply can feed at the most, counted by class. */
export function feedable(uses: SupplyUses): ReadonlySet<number> {
  const classes = new Set(uses.solos.map(({ pedal }) => pedal));
  for (const pool of uses.chains) for (const { pedal } of pool.places) classes.add(pedal);
  return classes;
}

/** Whether all these outputs have a ground of their own; else they hang on the supply's common ground. */
export const isIsolated = (outputs: readonly { readonly bank: number }[], supply: Supply): boolean =>
  outputs.every(({ bank }) => supply.banks[bank]?.isolated === true);

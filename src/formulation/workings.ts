import { loadoutPricer, type LoadoutPricer } from '../loadout/best-loadout.js';
import type { Bench } from '../loadout/bench.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import { LoadoutPool } from './loadout-pool.js';
import { Tables } from './tables.js';

/**
 * What has been worked out so far, for the many questions that one command puts about one kit. Nothing in it is a claim: what
 * a later question takes from it is held against its own rules, limits and prices.
 */
export class Workings {
  readonly tables = new Tables();
  readonly #pricers = new Map<SupplyUses['solos'], { readonly uses: SupplyUses; readonly pricer: LoadoutPricer }[]>();
  readonly #pools = new Map<Bench['classes'], LoadoutPool>();

  /** What prices the loadouts of a supply; the same for all that can be used alike, however many units there are. */
  pricerFor(uses: SupplyUses, bench: Bench): LoadoutPricer {
    const alike = this.#pricers.get(uses.solos) ?? [];
    this.#pricers.set(uses.solos, alike);
    const known = alike.find((each) => isUsedAlike(each.uses, uses));
    if (known !== undefined) return known.pricer;
    const pricer = loadoutPricer(uses, bench);
    alike.push({ uses, pricer });
    return pricer;
  }

  /** The loadouts and plans of these classes of pedals. */
  poolFor({ classes }: Bench): LoadoutPool {
    const pool = this.#pools.get(classes) ?? new LoadoutPool();
    this.#pools.set(classes, pool);
    return pool;
  }
}

const isUsedAlike = (one: SupplyUses, other: SupplyUses): boolean =>
  one.supply === other.supply &&
  one.limits === other.limits &&
  one.solos === other.solos &&
  one.chains === other.chains &&
  one.modes === other.modes;

import { remembered } from '../../solver/remembered.js';
import type { Policy } from '../domain/board.js';
import type { Kit } from '../domain/kit.js';
import type { Pedal } from '../domain/pedal.js';
import type { Supply } from '../domain/supply.js';
import type { Bench } from '../loadout/bench.js';
import { chainExitsBy } from '../loadout/chain-exits.js';
import { groundModes } from '../loadout/ground-mode.js';
import { leadKinds } from '../loadout/lead-kinds.js';
import { partOffers, supplyOffers, type Offer } from '../loadout/offers.js';
import { inletClasses } from '../loadout/inlet-classes.js';
import { pedalClasses } from '../loadout/pedal-class.js';
import { router } from '../loadout/routes.js';
import { supplyUses, type SupplyUses } from '../loadout/supply-uses.js';
import type { Today } from '../loadout/today.js';

/** What a kit brings to a question: pedals and leads, and what each supply that can feed anything can do for them. */
export type Offered = { readonly bench: Bench; readonly supplies: readonly SupplyUses[] };

/**
 * What has been worked out of kits, and is not worked out again for kits that differ in limits, prices of the policy or units
 * for sale alone: their uses are then the very same objects.
 */
export class Tables {
  readonly #known: Table[] = [];

  offeredBy(kit: Kit, today: Today): Offered {
    const offers = supplyOffers(kit, today);
    const table = this.#tableOf(kit, offers, today);
    const bench = { ...table.bench, policy: kit.board.policy };
    return { bench, supplies: offers.map((offer) => usesOf(offer, bench, table)).filter((uses) => uses !== null) };
  }

  #tableOf(kit: Kit, offers: readonly Offer[], today: Today): Table {
    const { pedals, policy } = kit.board;
    const kinds = leadKinds(partOffers(kit));
    const inlets = inletClasses(offers, pedals.length, today);
    const fed = inlets.map(({ inlet, members }) => [inlet, members.length]);
    const key = lazily(() =>
      JSON.stringify([rulesOf(policy), kinds, [...today.berths], [...today.exposed], [...today.pinned], fed]),
    );
    const known = this.#known.find((table) => areSame(table.pedals, pedals) && table.key() === key());
    if (known !== undefined) return known;
    const classes = [...pedalClasses(pedals, today), ...inlets];
    const [routes, chainExits] = [router(kinds), chainExitsBy(kinds)];
    const bench = { classes, modes: groundModes(classes), kinds, routes, chainExits };
    const table = { pedals, key, bench, uses: new Map() };
    this.#known.push(table);
    return table;
  }
}

type Table = {
  readonly pedals: readonly Pedal[];
  /** Whatever else the uses depend on. */
  readonly key: () => string;
  readonly bench: Omit<Bench, 'policy'>;
  /** By supply, then by unit; null for a supply that can feed nothing. */
  readonly uses: Map<Supply, Map<Offer['unit'], SupplyUses | null>>;
};

/** Made when it is asked for, and once: a kit that is asked about but once needs no key. */
function lazily<Made>(make: () => Made): () => Made {
  let made: { readonly of: Made } | null = null;
  return () => (made ??= { of: make() }).of;
}

/** The policy without what no use depends on: what is limited for a plan as a whole, and what is counted as money. */
function rulesOf({ budget: _b, bricks: _u, sockets: _s, noisePrice: _n, supplyPrice: _p, ...rules }: Policy): object {
  return rules;
}

const areSame = (one: readonly Pedal[], other: readonly Pedal[]): boolean =>
  one.length === other.length && one.every((pedal, index) => pedal === other[index]);

function usesOf(offer: Offer, bench: Bench, { uses }: Table): SupplyUses | null {
  const { supply, unit, owned, forSale } = offer;
  if (owned + forSale === 0) return null;
  const units = remembered(uses, supply, () => new Map<Offer['unit'], SupplyUses | null>());
  const found = remembered(units, unit, () => supplyUses(offer, bench));
  return found === null || (found.owned === owned && found.forSale === forSale) ? found : { ...found, owned, forSale };
}

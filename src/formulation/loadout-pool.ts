import type { Supply } from '../domain/supply.js';
import type { Hung, Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { ChainPool } from '../loadout/uses.js';

/** A plan as the loadouts that make it up. */
export type LoadoutPlan = readonly Loadout[];

/**
 * The loadouts and plans of earlier questions, for later ones to begin with. A loadout is handed on only where every use in it
 * is one of the later question's own, by identity: whatever has been struck out there is in none of them.
 */
export class LoadoutPool {
  readonly #bySupply = new Map<Supply, Map<string, Loadout>>();
  readonly #plans: LoadoutPlan[] = [];
  readonly #numbers = new Map<object, number>();

  add(loadout: Loadout): void {
    const known = this.#bySupply.get(loadout.supply) ?? new Map<string, Loadout>();
    this.#bySupply.set(loadout.supply, known);
    const key = this.#keyOf(loadout);
    if (!known.has(key)) known.set(key, loadout);
  }

  addPlan(plan: LoadoutPlan): void {
    this.#plans.push(plan);
  }

  /** The loadouts of what can be used so, each once, in the order in which they were added. */
  fitting(uses: SupplyUses): readonly Loadout[] {
    const known = this.#bySupply.get(uses.supply);
    return known === undefined ? [] : [...known.values()].filter(fits(uses));
  }

  /** The plans of nothing but what can be used so, whatever the limits, the latest first. */
  fittingPlans(supplies: readonly SupplyUses[]): readonly LoadoutPlan[] {
    if (this.#plans.length === 0) return [];
    const tests = supplies.map(fits);
    return this.#plans.filter((plan) => plan.every((loadout) => tests.some((isFit) => isFit(loadout)))).reverse();
  }

  #keyOf({ mode, hung }: Loadout): string {
    const items = hung.map((each) => objectsOf(each).map((object) => this.#numberOf(object)));
    const numbers = items.map((item) => item.sort(rising).join()).sort();
    return `${mode === null ? '' : this.#numberOf(mode)}:${numbers.join(';')}`;
  }

  #numberOf(object: object): number {
    const known = this.#numbers.get(object) ?? this.#numbers.size;
    this.#numbers.set(object, known);
    return known;
  }
}

const rising = (one: number, other: number): number => one - other;

const objectsOf = (hung: Hung): readonly object[] => (hung.kind === 'solo' ? [hung.use] : [hung.pool, ...hung.places]);

function fits(uses: SupplyUses): (loadout: Loadout) => boolean {
  const solos = new Set(uses.solos);
  return ({ supply, unit, hung }) =>
    supply === uses.supply &&
    unit === uses.unit &&
    hung.every((each) =>
      each.kind === 'solo' ? solos.has(each.use) : uses.chains.some((pool) => carries(pool, each)),
    );
}

/** Whether it is this pool's chain, though the pool may have lost other places and leads. */
const carries = (pool: ChainPool, chain: Extract<Hung, { kind: 'chain' }>): boolean =>
  pool === chain.pool ||
  (pool.output === chain.pool.output &&
    pool.exit === chain.pool.exit &&
    pool.mode === chain.pool.mode &&
    pool.leads.some(({ kind }) => kind === chain.lead) &&
    chain.places.every((place) => pool.places.includes(place)));

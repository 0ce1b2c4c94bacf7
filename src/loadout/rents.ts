import { COLD, Simplex, type SimplexRow, type SparseColumn } from '../../solver/cover/simplex.js';
import { byDensity, searchPatterns, type Candidate } from './chain-pattern.js';
import { allAtTheirBest, chainItem, type Item, type Job, type Pool } from './content.js';
import type { ChainOption, PlaceOption } from './frame.js';

/**
 * What pedals pay for being there once, outputs for being taken and totals for being used, such that no content of an
 * output earns more than its rent; whole numbers, but for the prices of totals, which are rounded where they are used.
 */
export type Rents = {
  /** No unit is worth more: the sum of all rents. */
  readonly bound: number;
  /** By pedal class. */
  readonly pedals: readonly number[];
  /** By bank, for each of its outputs. */
  readonly outputs: readonly number[];
  /** By limit, for each unit of weight. */
  readonly prices: readonly number[];
  /** The items of the last relaxation, those that it uses most first. */
  readonly items: readonly Item[];
};

/** Chain patterns that proved useful for a frame before; worth trying first when the tags have changed. */
export type PatternStore = Map<ChainOption, Map<string, readonly PlaceOption[]>>;

const mostRounds = 60;
const storedPatterns = 40;

/**
 * Rents by column generation on one unit's own relaxation ("Decomposition principle for linear programs", 1960): its duals
 * are the rents, and what outputs can earn above them is found exactly. Stops as soon as the bound is at most the floor.
 */
export function rentsOf(job: Job, floor: number, store: PatternStore): Rents {
  const relaxation = new UnitRelaxation(job);
  for (const item of job.solos) relaxation.add(item);
  for (const pool of job.pools) for (const item of storedItems(pool, store)) relaxation.add(item);
  relaxation.start();
  let best: Omit<Rents, 'items'> | null = null;
  for (let round = 0; round < mostRounds; round += 1) {
    const asked = relaxation.solve();
    const { rents, fresh } = earnings(job, asked);
    if (best === null || rents.bound < best.bound) best = rents;
    if (best.bound <= floor || fresh.length === 0) break;
    for (const { pool, places } of fresh) {
      remember(pool.chain, places, store);
      relaxation.add(chainItem(pool, places));
    }
  }
  const most = allAtTheirBest(job);
  return { ...(best ?? { bound: most, pedals: [], outputs: [], prices: [] }), items: relaxation.used() };
}

/** The duals of a relaxation, as rents. */
type Asked = Pick<Rents, 'pedals' | 'outputs' | 'prices'>;

/** The relaxation of one unit over the items made so far: most value within outputs, pedals and totals. */
class UnitRelaxation {
  readonly #job: Job;
  readonly #classes: readonly number[];
  readonly #rowOfClass: ReadonlyMap<number, number>;
  readonly #firstLimit: number;
  readonly #simplex: Simplex;
  readonly #items: Item[] = [];

  constructor(job: Job) {
    const { frame, solos, pools, counts } = job;
    this.#job = job;
    const inChains = pools.flatMap(({ candidates }) => candidates.map(({ place }) => place.pedal));
    this.#classes = [...new Set([...solos.flatMap(({ pedals }) => pedals), ...inChains])];
    this.#rowOfClass = new Map(this.#classes.map((pedal, index) => [pedal, frame.outputs.length + index]));
    this.#firstLimit = frame.outputs.length + this.#classes.length;
    const atMost = (bound: number): SimplexRow => ({ sense: 'at most', bound });
    const rows = [
      ...frame.outputs.map(atMost),
      ...this.#classes.map((pedal) => atMost(counts[pedal] ?? 0)),
      ...frame.capacities.map((capacity) => atMost(capacity > 0 ? 1 : 0)),
    ];
    this.#simplex = new Simplex(rows, 1, 0.5);
  }

  add(item: Item): void {
    this.#items.push(item);
    this.#simplex.add(this.#sparse(item));
  }

  #sparse(item: Item): SparseColumn {
    const entries = new Map<number, number>();
    const put = (row: number, value: number): void => void entries.set(row, (entries.get(row) ?? 0) + value);
    for (const bank of item.banks) put(bank, 1);
    for (const pedal of item.pedals) put(this.#rowOfClass.get(pedal) ?? 0, 1);
    for (const [at, weight] of item.weights.entries()) {
      if (weight > 0) put(this.#firstLimit + at, weight / (this.#job.frame.capacities[at] || 1));
    }
    return { rows: [...entries.keys()], values: [...entries.values()], cost: -item.value };
  }

  start(): void {
    this.#simplex.start(COLD);
  }

  solve(): Asked {
    this.#simplex.solve(500);
    const { duals } = this.#simplex;
    const rent = (row: number): number => Math.max(0, -(duals[row] ?? 0));
    const pedals: number[] = [];
    for (const pedal of this.#classes) pedals[pedal] = Math.round(rent(this.#rowOfClass.get(pedal) ?? 0));
    return {
      pedals,
      outputs: this.#job.frame.outputs.map((_, bank) => rent(bank)),
      prices: this.#job.frame.capacities.map((capacity, at) => rent(this.#firstLimit + at) / (capacity || 1)),
    };
  }

  /** The items, those that are used most first. */
  used(): readonly Item[] {
    const { point } = this.#simplex;
    return this.#items
      .map((item, index) => ({ item, share: point[index] ?? 0 }))
      .sort((a, b) => b.share - a.share || b.item.value - a.item.value)
      .map(({ item }) => item);
  }
}

function* storedItems(pool: Pool, store: PatternStore): Generator<Item> {
  const known = new Map(pool.candidates.map(({ place }) => [place.pedal, place]));
  for (const places of store.get(pool.chain)?.values() ?? []) {
    const now = places.flatMap(({ pedal }) => known.get(pedal) ?? []);
    if (now.length === places.length) yield chainItem(pool, now);
  }
}

/** Keeps a pattern as the latest one; the oldest goes when there are too many. */
function remember(chain: ChainOption, places: readonly PlaceOption[], store: PatternStore): void {
  const patterns = store.get(chain) ?? new Map<string, readonly PlaceOption[]>();
  if (patterns.size === 0) store.set(chain, patterns);
  const key = places.map(({ pedal }) => pedal).join();
  patterns.delete(key);
  patterns.set(key, places);
  const [oldest] = patterns.keys();
  if (patterns.size > storedPatterns && oldest !== undefined) patterns.delete(oldest);
}

type Earnings = {
  readonly rents: Omit<Rents, 'items'>;
  /** Patterns that earn more than the relaxation asks for their output. */
  readonly fresh: readonly { readonly pool: Pool; readonly places: readonly PlaceOption[] }[];
};

/** What every output earns at the most when pedals and totals are paid, exactly; the bound that follows; new patterns. */
function earnings(job: Job, asked: Asked): Earnings {
  const { frame, counts, solos, pools } = job;
  const outputs = frame.outputs.map(() => 0);
  for (const item of solos) if (item.banks.length === 1) raise(outputs, item.banks, netOf(item, asked));
  const fresh: { pool: Pool; places: readonly PlaceOption[] }[] = [];
  let complete = true;
  for (const pool of pools) {
    const { bank } = pool.chain;
    let places: readonly PlaceOption[] | null = null;
    let most = outputs[bank] ?? 0;
    complete &&= searchPatterns(pool.chain, rentedCandidates(pool, asked), pool.leads, frame.capacities, {
      floor: most,
      found: (chosen, value) => {
        [places, most] = [chosen, value];
        return value;
      },
    });
    outputs[bank] = most;
    if (places !== null && most > (asked.outputs[bank] ?? 0) + 1) fresh.push({ pool, places });
  }
  for (const item of solos) if (item.banks.length > 1) raise(outputs, item.banks, netOf(item, asked));
  let bound = priceOfCapacities(frame.capacities, asked.prices);
  asked.pedals.forEach((rent, pedal) => (bound += rent * (counts[pedal] ?? 0)));
  frame.outputs.forEach((count, bank) => (bound += count * (outputs[bank] ?? 0)));
  const { pedals, prices } = asked;
  return { rents: { bound: complete ? bound : Infinity, pedals, outputs, prices }, fresh };
}

/** Lifts the rents of outputs so that what takes them all earns nothing beyond. */
function raise(outputs: number[], banks: readonly number[], net: number): void {
  const sum = banks.reduce((all, bank) => all + (outputs[bank] ?? 0), 0);
  const bank = banks[0] ?? 0;
  if (net > sum) outputs[bank] = (outputs[bank] ?? 0) + net - sum;
}

/** The candidates of a pool with what is left of their value when their rents are paid, the densest first. */
export const rentedCandidates = (pool: Pool, rents: Pick<Rents, 'pedals' | 'prices'>): readonly Candidate[] =>
  pool.candidates
    .map((each) => {
      const { pedal, weights } = each.place;
      return { ...each, value: netOf({ value: each.value, pedals: [pedal], weights }, rents) };
    })
    .sort(byDensity);

/** What is left of a value when the rents of pedals and the prices of weights are paid; never less than that. */
export function netOf(
  { value, pedals, weights }: Pick<Item, 'value' | 'pedals' | 'weights'>,
  rents: Pick<Rents, 'pedals' | 'prices'>,
): number {
  let net = value;
  for (const pedal of pedals) net -= rents.pedals[pedal] ?? 0;
  for (const [at, weight] of weights.entries()) net -= paid(rents.prices[at] ?? 0, weight);
  return net;
}

/** A price that never comes to more than it should for a weight, whatever is rounded. */
export const paid = (price: number, weight: number): number =>
  Math.max(0, Math.floor(price * weight * (1 - 2 ** -50)));

/** What all capacities cost, never less than they should. */
export const priceOfCapacities = (capacities: readonly number[], prices: readonly number[]): number =>
  capacities.reduce((sum, capacity, at) => sum + Math.ceil((prices[at] ?? 0) * capacity * (1 + 2 ** -50)), 0);

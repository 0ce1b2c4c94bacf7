import { gathered } from '../../solver/gathered.js';
import { COLD, Simplex, type SimplexRow } from '../../solver/cover/simplex.js';
import type { SparseColumn } from '../../solver/cover/sparse-columns.js';
import { leadSizes, type ChainCandidate, type LeadCosts } from './chain-pattern.js';
import { bestChains } from './chain-search.js';
import { allAtTheirBest, chainItem, pedalsAtTheirBest, type ContentItem, type FrameJob, type Pool } from './content.js';
import type { ChainOption, PlaceOption, UnitFrame } from './frame.js';
import { greedilyFilled } from './greedy-fill.js';

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
  /** On top for every pedal, where their number is bounded; below zero where more are wanted. */
  readonly perPedal: number;
  /** On top for a chain, likewise, by its number of pedals; nothing for one that is not listed. */
  readonly perChain: readonly number[];
  /** The items of the last relaxation, those that it uses most first. */
  readonly items: readonly ContentItem[];
  /** How many pedals that relaxation has and how many chains of so many pedals or more, perhaps in parts. */
  readonly numbers: ReadonlyMap<Counted, number>;
};

/** What is counted in a unit: its pedals, or its chains of at least so many. */
export type Counted = 'pedals' | number;

/** How many a unit may have of what is counted, both ends included. */
export type Span = ReadonlyMap<Counted, Range>;
export type Range = { readonly least: number; readonly most: number };

/** What was found out about the frames of a unit before; worth trying first when the dual prices have changed. */
export type UnitMemory = {
  /** Chain patterns that proved useful. */
  readonly patterns: Map<ChainOption, Map<string, readonly PlaceOption[]>>;
  /** The last rents where no span was set, and what every pedal was worth at its best. */
  readonly rents: Map<UnitFrame, LastRents>;
};

type LastRents = { readonly rents: Rents; readonly values: Values };

/** By class. */
type Values = ReadonlyMap<number, number>;

export const noMemory = (): UnitMemory => ({ patterns: new Map(), rents: new Map() });

/** How often new patterns are looked for, and how many beginnings of chains each search may make. */
const patience = {
  quick: { rounds: 25, labels: 80 },
  exact: { rounds: 60, labels: 20_000 },
} as const;
type Effort = keyof typeof patience;
const storedPatterns = 40;

/**
 * Rents by column generation on one unit's own relaxation ("Decomposition principle for linear programs", 1960): its duals
 * are the rents, and what outputs can earn above them is found exactly. Stops as soon as the bound is at most the
 * floor, for which the rents of other dual prices often do; where that is enough, also when what the relaxation uses makes
 * a content that is worth more.
 */
export function rentsOf(job: FrameJob, span: Span, floor: number, memory: UnitMemory, effort: Effort = 'exact'): Rents {
  if (span.size > 0) return generatedRents(job, span, floor, memory, effort);
  const values = pedalsAtTheirBest(job);
  const last = memory.rents.get(job.frame);
  const changed = last === undefined ? null : changedRents(job, last, values, effort);
  if (changed !== null && changed.bound <= floor) return { ...changed, items: [], numbers: new Map() };
  const rents = generatedRents(job, span, floor, memory, effort);
  memory.rents.set(job.frame, { rents, values });
  return rents;
}

/** The last rents, where pedals pay what they have become worth since: any rents bound what a unit is worth. */
function changedRents(job: FrameJob, { rents, values }: LastRents, now: Values, effort: Effort): Earnings['rents'] {
  const pedals: number[] = [];
  for (const [pedal, value] of now) {
    pedals[pedal] = Math.max(0, (rents.pedals[pedal] ?? 0) + value - (values.get(pedal) ?? 0));
  }
  return earnings(job, { ...rents, pedals, fixed: 0 }, patience[effort].labels).rents;
}

function generatedRents(job: FrameJob, span: Span, floor: number, memory: UnitMemory, effort: Effort): Rents {
  const { rounds, labels } = patience[effort];
  const most = allAtTheirBest(job);
  const relaxation = new UnitRelaxation(job, span, most);
  for (const item of job.solos) relaxation.add(item);
  for (const pool of job.pools) for (const item of storedItems(pool, memory)) relaxation.add(item);
  relaxation.start();
  let { rents: best, fresh } = earnings(job, relaxation.solve(), labels);
  for (let round = 1; round < rounds && best.bound > floor && fresh.length > 0; round += 1) {
    if (effort === 'quick' && round > 1 && greedilyFilled(job, relaxation.used().items).value > floor) break;
    for (const { pool, places } of fresh) {
      remember(pool.chain, places, memory);
      relaxation.add(chainItem(pool, places));
    }
    const next = earnings(job, relaxation.solve(), labels);
    if (next.rents.bound < best.bound) best = next.rents;
    ({ fresh } = next);
  }
  return { ...best, ...relaxation.used() };
}

/** The duals of a relaxation, as rents; `fixed` is what the ends of the span add to the bound. */
type Asked = Pick<Rents, 'pedals' | 'outputs' | 'prices' | 'perPedal' | 'perChain'> & { readonly fixed: number };

/** The relaxation of one unit over the items made so far: most value within outputs, pedals and totals. */
class UnitRelaxation {
  readonly #job: FrameJob;
  readonly #classes: readonly number[];
  readonly #rowOfClass: ReadonlyMap<number, number>;
  readonly #firstLimit: number;
  readonly #ends: readonly End[];
  readonly #simplex: Simplex;
  readonly #items: ContentItem[] = [];

  constructor(job: FrameJob, span: Span, elastic: number) {
    const { frame, solos, pools, counts } = job;
    this.#job = job;
    const inChains = gathered(pools, ({ candidates }) => candidates.map(({ place }) => place.pedal));
    this.#classes = [...new Set([...gathered(solos, ({ pedals }) => pedals), ...inChains])];
    this.#rowOfClass = new Map(this.#classes.map((pedal, index) => [pedal, frame.outputs.length + index]));
    this.#firstLimit = frame.outputs.length + this.#classes.length;
    const atMost = (bound: number): SimplexRow => ({ sense: 'at most', bound });
    const rows = [
      ...frame.outputs.map(atMost),
      ...this.#classes.map((pedal) => atMost(counts[pedal] ?? 0)),
      ...frame.capacities.map((capacity) => atMost(capacity > 0 ? 1 : 0)),
    ];
    this.#ends = endsOf(span, rows.length);
    this.#simplex = new Simplex([...rows, ...this.#ends.map(({ row }) => row)], elastic, 0.5);
  }

  add(item: ContentItem): void {
    this.#items.push(item);
    this.#simplex.add(this.#sparse(item));
  }

  #sparse(item: ContentItem): SparseColumn {
    const rows: number[] = [];
    const values: number[] = [];
    const put = (row: number, value: number): void => {
      const known = rows.indexOf(row);
      const at = known < 0 ? rows.push(row) - 1 : known;
      values[at] = (values[at] ?? 0) + value;
    };
    for (const bank of item.banks) put(bank, 1);
    for (const pedal of item.pedals) put(this.#rowOfClass.get(pedal) ?? 0, 1);
    for (const [at, weight] of item.weights.entries()) {
      if (weight > 0) put(this.#firstLimit + at, weight / Math.max(1, this.#job.frame.capacities[at] ?? 1));
    }
    for (const { of, at } of this.#ends) {
      const number = numberOf(item, of);
      if (number > 0) put(at, number);
    }
    return { rows, values, cost: -item.value };
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
    const ends = this.#ends.map(({ of, at, row }) => {
      const dual = Math.round(duals[at] ?? 0);
      return { of, row, charge: row.sense === 'at most' ? Math.max(0, -dual) : -Math.max(0, dual) };
    });
    const charged = (isMeant: (of: Counted) => boolean): number =>
      ends.reduce((all, { of, charge }) => (isMeant(of) ? all + charge : all), 0);
    return {
      perPedal: charged((of) => of === 'pedals'),
      perChain: chainLengths(this.#job).map((length) => charged((of) => of !== 'pedals' && of <= length)),
      fixed: ends.reduce((all, { row, charge }) => all + row.bound * charge, 0),
      pedals,
      outputs: this.#job.frame.outputs.map((_, bank) => rent(bank)),
      prices: this.#job.frame.capacities.map((capacity, at) => rent(this.#firstLimit + at) / (capacity || 1)),
    };
  }

  /** The items, those that are used most first, and how many pedals and chains that makes. */
  used(): Pick<Rents, 'items' | 'numbers'> {
    const { point } = this.#simplex;
    const shares = this.#items.map((item, index) => ({ item, share: point[index] ?? 0 }));
    const number = (of: Counted): number =>
      shares.reduce((sum, { item, share }) => sum + share * numberOf(item, of), 0);
    const order = shares.toSorted((a, b) => b.share - a.share || b.item.value - a.item.value);
    return {
      items: order.map(({ item }) => item),
      numbers: new Map((['pedals', ...lengthSteps(this.#job)] as const).map((of) => [of, number(of)])),
    };
  }
}

/** How many pedals an item has, or whether it is a chain of so many. */
const numberOf = ({ pedals, content }: ContentItem, of: Counted): number =>
  of === 'pedals' ? pedals.length : content.kind === 'chain' && pedals.length >= of ? 1 : 0;

/** An end of a span that binds, as a row of its own. */
type End = { readonly of: Counted; readonly at: number; readonly row: SimplexRow };

function endsOf(span: Span, first: number): readonly End[] {
  const rows = gathered([...span], ([of, { least, most }]): Omit<End, 'at'>[] => [
    ...(most < Infinity ? [{ of, row: { sense: 'at most' as const, bound: most } }] : []),
    ...(least > 0 ? [{ of, row: { sense: 'at least' as const, bound: least } }] : []),
  ]);
  return rows.map((end, index) => ({ ...end, at: first + index }));
}

/** 0 to the most pedals of a chain. */
const chainLengths = ({ pools }: FrameJob): readonly number[] => [
  ...Array(Math.max(0, ...pools.map(({ leads }) => leads.length))).keys(),
];

/** From how many pedals on chains are counted: all of them, and those that need a longer lead. */
const lengthSteps = ({ pools }: FrameJob): readonly number[] => {
  const steps = gathered(pools, ({ leads }) => leadSizes(leads).map(({ tails }) => tails + 1));
  const longest = Math.max(0, ...pools.map(({ leads }) => leads.length - 1));
  return [2, ...new Set(steps)].filter((length) => length <= longest).sort((a, b) => a - b);
};

/** What a lead costs for so many pedals with what is charged for a chain of them. */
export const chargedLeads = ({ leads }: Pool, { perChain }: Pick<Rents, 'perChain'>): LeadCosts =>
  leads.map(({ kind, cost }, pedals) => ({ kind, cost: cost + (perChain[Math.max(2, pedals)] ?? 0) }));

function* storedItems(pool: Pool, { patterns }: UnitMemory): Generator<ContentItem> {
  const known = new Map(pool.candidates.map(({ place }) => [place.pedal, place]));
  for (const places of patterns.get(pool.chain)?.values() ?? []) {
    const now = places.map(({ pedal }) => known.get(pedal)).filter((place) => place !== undefined);
    if (now.length === places.length) yield chainItem(pool, now);
  }
}

/** Keeps a pattern as the latest one; the oldest goes when there are too many. */
function remember(chain: ChainOption, places: readonly PlaceOption[], memory: UnitMemory): void {
  const patterns = memory.patterns.get(chain) ?? new Map<string, readonly PlaceOption[]>();
  if (patterns.size === 0) memory.patterns.set(chain, patterns);
  const key = places.map(({ pedal }) => pedal).join();
  patterns.delete(key);
  patterns.set(key, places);
  const [oldest] = patterns.keys();
  if (patterns.size > storedPatterns && oldest !== undefined) patterns.delete(oldest);
}

type Earnings = {
  readonly rents: Asked & { readonly bound: number };
  /** Patterns that earn more than the relaxation asks for their output. */
  readonly fresh: readonly { readonly pool: Pool; readonly places: readonly PlaceOption[] }[];
};

/** What every output earns at the most when pedals and totals are paid, exactly; the bound that follows; new patterns. */
function earnings(job: FrameJob, asked: Asked, labels: number): Earnings {
  const { frame, counts, solos, pools } = job;
  const outputs = frame.outputs.map(() => 0);
  for (const item of solos) if (item.banks.length === 1) raise(outputs, item.banks, netOf(item, asked), asked.outputs);
  const fresh: { pool: Pool; places: readonly PlaceOption[] }[] = [];
  for (const pool of pools) {
    const { bank } = pool.chain;
    const beside = paidFor(pool.chain.weights, asked);
    const leads = chargedLeads(pool, asked).map(({ kind, cost }) => ({ kind, cost: cost + beside }));
    const candidates = rentedCandidates(pool, asked);
    const question = { chain: pool.chain, candidates, leads };
    const { bound, found } = bestChains(question, outputs[bank] ?? 0, labels);
    outputs[bank] = bound;
    for (const { places, value } of found) if (value > (asked.outputs[bank] ?? 0) + 1) fresh.push({ pool, places });
  }
  for (const item of solos) if (item.banks.length > 1) raise(outputs, item.banks, netOf(item, asked), asked.outputs);
  let bound = asked.fixed + priceOfCapacities(frame.capacities, asked.prices);
  asked.pedals.forEach((rent, pedal) => (bound += rent * (counts[pedal] ?? 0)));
  frame.outputs.forEach((count, bank) => (bound += count * (outputs[bank] ?? 0)));
  const { pedals, prices, perPedal, perChain, fixed } = asked;
  return { rents: { bound, pedals, outputs, prices, perPedal, perChain, fixed }, fresh };
}

/** Lifts the rents of outputs so that what takes them all earns nothing beyond: first to what the relaxation asks for. */
function raise(outputs: number[], banks: readonly number[], net: number, asked: readonly number[]): void {
  const [first = 0, second = first] = banks;
  const rentOf = (bank: number): number => outputs[bank] ?? 0;
  const excess = net - banks.reduce((all, bank) => all + rentOf(bank), 0);
  if (excess <= 0) return;
  if (first === second) {
    outputs[first] = rentOf(first) + Math.ceil(excess / banks.length);
    return;
  }
  const lift = Math.min(excess, Math.max(0, Math.ceil((asked[first] ?? 0) - rentOf(first))));
  outputs[first] = rentOf(first) + lift;
  outputs[second] = rentOf(second) + excess - lift;
}

/** The candidates of a pool with what is left of their value when their rents are paid. */
export const rentedCandidates = (
  pool: Pool,
  rents: Pick<Rents, 'pedals' | 'prices' | 'perPedal'>,
): readonly ChainCandidate[] =>
  pool.candidates.map(({ place, value, count }) => {
    const { pedal, weights } = place;
    return { place, value: netOf({ value, pedals: [pedal], weights }, rents), count };
  });

/** What is left of a value when the rents of pedals and the prices of weights are paid; never less than that. */
export function netOf(
  { value, pedals, weights }: Pick<ContentItem, 'value' | 'pedals' | 'weights'>,
  rents: Pick<Rents, 'pedals' | 'prices' | 'perPedal'>,
): number {
  let net = value;
  for (const pedal of pedals) net -= (rents.pedals[pedal] ?? 0) + rents.perPedal;
  return net - paidFor(weights, rents);
}

/** The prices of all weights. */
export function paidFor(weights: readonly number[], { prices }: Pick<Rents, 'prices'>): number {
  let sum = 0;
  for (let at = 0; at < weights.length; at += 1) sum += paid(prices[at] ?? 0, weights[at] ?? 0);
  return sum;
}

/** A price that never comes to more than it should for a weight, whatever is rounded. */
export const paid = (price: number, weight: number): number => Math.max(0, Math.floor(price * weight * (1 - 2 ** -50)));

/** What all capacities cost, never less than they should. */
export const priceOfCapacities = (capacities: readonly number[], prices: readonly number[]): number =>
  capacities.reduce((sum, capacity, at) => sum + Math.ceil((prices[at] ?? 0) * capacity * (1 + 2 ** -50)), 0);

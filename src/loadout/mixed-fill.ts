import { COLD, Simplex, type SimplexRow, type SparseColumn } from '../../solver/cover/simplex.js';
import {
  candidatesOf,
  leadCostsOf,
  placeValue,
  searchPatterns,
  type Candidate,
  type LeadCosts,
  type Pattern,
} from './chain-pattern.js';
import type { ChainOption, Frame, PlaceOption, SoloOption } from './frame.js';
import type { Filling } from './solo-fill.js';
import type { Tags } from './tags.js';

/** What may take an output, or two. */
export type Content = { readonly kind: 'solo'; readonly option: SoloOption } | { readonly kind: 'chain'; readonly pattern: Pattern };

type Item = {
  readonly content: Content;
  readonly value: number;
  readonly banks: readonly number[];
  readonly pedals: readonly number[];
  readonly weights: readonly number[];
};

/** Chain patterns that proved useful for a frame before; worth trying first when the tags have changed. */
export type PatternStore = Map<ChainOption, Map<string, readonly PlaceOption[]>>;

/** Branches of one packing; one that needs more leaves its bound. */
const mostNodes = 80;
const mostRounds = 60;
/** How deep the numbers of pedals and chains are split before contents are searched. */
const splits = 6;
/** More near-tight contents than this are not searched. */
const mostItems = 1_500;

/**
 * The most that pedals, alone and in chains, are worth on one unit with several outputs. Pedals pay a rent for being there
 * once, outputs for being taken, totals for being used: with any rents, what outputs can earn above them is a bound
 * ("Decomposition principle for linear programs", 1960). Contents are made on demand, and where the rents leave a gap, a
 * search through those contents that lose no more than it closes it.
 */
export function fillWithChains(
  frame: Frame,
  tags: Tags,
  counts: readonly number[],
  floor: number,
  store: PatternStore,
): Filling<Content> {
  const job = jobOf(frame, tags, counts);
  if (job.quickBound <= floor) return { bound: job.quickBound, found: null };
  return fillWithin({ pedals: everything, chains: everything }, splits, job, floor, store);
}

/** How many pedals, and how many chains, a unit may have: both ends included. */
type Span = { readonly pedals: Range; readonly chains: Range };
type Range = { readonly least: number; readonly most: number };
const everything: Range = { least: 0, most: Infinity };

/**
 * The best content within a span. The number of pedals and that of chains must be whole: where the relaxation has them
 * in parts, each side is filled by itself, which closes most gaps, for pedals are often worth the same.
 */
function fillWithin(span: Span, left: number, job: Job, floor: number, store: PatternStore): Filling<Content> {
  const rented = rentsOf(job, span, floor, store);
  const { bound, pedals, chains } = rented;
  if (bound <= floor) return { bound, found: null };
  const greedy = greedilyFilled(job, rented.items);
  if (greedy !== null && greedy.value > floor) {
    return { bound, found: { value: greedy.value, contents: greedy.items.map(({ content }) => content) } };
  }
  const sides = left === 0 ? null : isPart(pedals) ? sidesOf(span, 'pedals', pedals) : isPart(chains) ? sidesOf(span, 'chains', chains) : null;
  if (sides === null) return searchItems(job, rented, floor);
  let most = 0;
  for (const side of sides) {
    const filling = fillWithin(side, left - 1, job, floor, store);
    if (filling.found !== null) return { bound, found: filling.found };
    most = Math.max(most, filling.bound);
  }
  return { bound: Math.min(bound, most), found: null };
}

const isPart = (value: number): boolean => Math.abs(value - Math.round(value)) > 1e-5;

function sidesOf(span: Span, key: keyof Span, value: number): readonly Span[] {
  const whole = Math.floor(value);
  return [
    { ...span, [key]: { least: whole + 1, most: span[key].most } },
    { ...span, [key]: { least: span[key].least, most: whole } },
  ];
}

type Job = {
  readonly frame: Frame;
  readonly counts: readonly number[];
  readonly solos: readonly Item[];
  readonly pools: readonly Pool[];
  readonly quickBound: number;
};

type Pool = { readonly chain: ChainOption; readonly leads: LeadCosts; readonly candidates: readonly Candidate[] };

function jobOf(frame: Frame, tags: Tags, counts: readonly number[]): Job {
  const solos = frame.solos.flatMap((option): Item[] => {
    const value = placeValue(option, tags);
    if (value <= 0 || (counts[option.pedal] ?? 0) === 0) return [];
    const content = { kind: 'solo' as const, option };
    return [{ content, value, banks: option.banks, pedals: [option.pedal], weights: option.weights }];
  });
  const pools = frame.chains.flatMap((chain): Pool[] => {
    const candidates = candidatesOf(chain, tags, counts);
    return candidates.some(({ value }) => value > 0) ? [{ chain, leads: leadCostsOf(chain, tags), candidates }] : [];
  });
  return { frame, counts, solos, pools, quickBound: quickBound(solos, pools, counts) };
}

/** The lesser of what all pedals are worth at their best, and what all outputs are when they need not share pedals. */
function quickBound(solos: readonly Item[], pools: readonly Pool[], counts: readonly number[]): number {
  const best = new Map<number, number>();
  const note = (pedal: number, value: number): void => {
    if (value > (best.get(pedal) ?? 0)) best.set(pedal, value);
  };
  for (const { pedals, value } of solos) note(pedals[0] ?? 0, value);
  for (const { candidates } of pools) for (const { place, value } of candidates) note(place.pedal, value);
  let all = 0;
  for (const [pedal, value] of best) all += value * (counts[pedal] ?? 0);
  return all;
}

type Rented = {
  readonly bound: number;
  /** How many pedals and chains the last relaxation has. */
  readonly pedals: number;
  readonly chains: number;
  /** What is paid on top for every pedal and for every chain; below zero where more are wanted. */
  readonly perPedal: number;
  readonly perChain: number;
  readonly rents: readonly number[];
  readonly outputRents: readonly number[];
  readonly limitPrices: readonly number[];
  /** The contents of the last relaxation, those that it uses most first. */
  readonly items: readonly Item[];
};

/** Column generation on the unit's own relaxation, whose duals are the rents. */
function rentsOf(job: Job, span: Span, floor: number, store: PatternStore): Rented {
  const { frame, counts, solos, pools } = job;
  const classes = [...new Set([...solos.flatMap(({ pedals }) => pedals), ...pools.flatMap((p) => p.candidates.map((c) => c.place.pedal))])];
  const rowOfClass = new Map(classes.map((pedal, index) => [pedal, frame.outputs.length + index]));
  const firstLimit = frame.outputs.length + classes.length;
  const rows: SimplexRow[] = [
    ...frame.outputs.map((count) => ({ sense: 'at most' as const, bound: count })),
    ...classes.map((pedal) => ({ sense: 'at most' as const, bound: counts[pedal] ?? 0 })),
    ...frame.capacities.map((capacity) => ({ sense: 'at most' as const, bound: capacity > 0 ? 1 : 0 })),
  ];
  const ends = spanRows(span);
  const simplex = new Simplex([...rows, ...ends.map(({ row }) => row)], job.quickBound, 0.5);
  const items: Item[] = [];
  const add = (item: Item): void => {
    items.push(item);
    const { rows: at, values, cost } = sparse(item, rowOfClass, firstLimit, frame.capacities);
    const more = ends.map(({ of }) => (of === 'pedals' ? item.pedals.length : item.content.kind === 'chain' ? 1 : 0));
    const used = more.flatMap((amount, index) => (amount > 0 ? [index] : []));
    simplex.add({
      rows: [...at, ...used.map((index) => rows.length + index)],
      values: [...values, ...used.map((index) => more[index] ?? 0)],
      cost,
    });
  };
  for (const item of solos) add(item);
  for (const pool of pools) for (const item of storedItems(pool, store)) add(item);
  simplex.start(COLD);
  let best: Omit<Rented, 'items' | 'pedals' | 'chains'> | null = null;
  for (let round = 0; round < mostRounds; round += 1) {
    simplex.solve(500);
    const duals = simplex.duals;
    const rents: number[] = [];
    for (const pedal of classes) rents[pedal] = Math.max(0, Math.round(-(duals[rowOfClass.get(pedal) ?? 0] ?? 0)));
    const limitPrices = frame.capacities.map((capacity, at) => Math.max(0, -(duals[firstLimit + at] ?? 0)) / (capacity || 1));
    const paidEnds = ends.map(({ row }, index) => {
      const dual = Math.round(duals[rows.length + index] ?? 0);
      return row.sense === 'at most' ? Math.max(0, -dual) : -Math.max(0, dual);
    });
    const sumOf = (of: keyof Span): number => ends.reduce((sum, end, index) => (end.of === of ? sum + (paidEnds[index] ?? 0) : sum), 0);
    const extras = { perPedal: sumOf('pedals'), perChain: sumOf('chains') };
    const earned = earnings(job, rents, limitPrices, extras, frame.outputs.map((_, bank) => Math.max(0, -(duals[bank] ?? 0))));
    const bound = ends.reduce((sum, { row }, index) => sum + row.bound * (paidEnds[index] ?? 0), earned.bound);
    if (best === null || bound < best.bound) {
      best = { bound: Math.min(bound, job.quickBound), rents, outputRents: earned.outputRents, limitPrices, ...extras };
    }
    if (best.bound <= floor || earned.fresh.length === 0) break;
    for (const { pool, places } of earned.fresh) {
      remember(pool.chain, places, store);
      add(chainItem(pool, places));
    }
  }
  const point = simplex.point;
  const order = items.map((item, index) => ({ item, share: point[index] ?? 0 })).sort((a, b) => b.share - a.share || b.item.value - a.item.value);
  const count = (of: (item: Item) => number): number => order.reduce((sum, { item, share }) => sum + share * of(item), 0);
  return {
    ...(best ?? { bound: job.quickBound, rents: [], outputRents: [], limitPrices: [], perPedal: 0, perChain: 0 }),
    items: order.map(({ item }) => item),
    pedals: count(({ pedals }) => pedals.length),
    chains: count(({ content }) => (content.kind === 'chain' ? 1 : 0)),
  };
}

/** The ends of a span that bind, as rows. */
function spanRows(span: Span): readonly { readonly of: keyof Span; readonly row: SimplexRow }[] {
  return (['pedals', 'chains'] as const).flatMap((of) => [
    ...(span[of].most < Infinity ? [{ of, row: { sense: 'at most' as const, bound: span[of].most } }] : []),
    ...(span[of].least > 0 ? [{ of, row: { sense: 'at least' as const, bound: span[of].least } }] : []),
  ]);
}

function* storedItems(pool: Pool, store: PatternStore): Generator<Item> {
  const known = new Map(pool.candidates.map(({ place }) => [place.pedal, place]));
  for (const places of store.get(pool.chain)?.values() ?? []) {
    const now = places.flatMap(({ pedal }) => known.get(pedal) ?? []);
    if (now.length === places.length) yield chainItem(pool, now);
  }
}

function remember(chain: ChainOption, places: readonly PlaceOption[], store: PatternStore): void {
  const patterns = store.get(chain) ?? new Map<string, readonly PlaceOption[]>();
  if (patterns.size === 0) store.set(chain, patterns);
  const key = places.map(({ pedal }) => pedal).join();
  patterns.delete(key);
  patterns.set(key, places);
  if (patterns.size > 40) for (const oldest of patterns.keys()) {
    patterns.delete(oldest);
    break;
  }
}

function chainItem({ chain, leads, candidates }: Pool, places: readonly PlaceOption[]): Item {
  const lead = leads[places.length] ?? { kind: -1, cost: Infinity };
  const value = places.reduce((sum, { pedal }) => sum + (candidates.find(({ place }) => place.pedal === pedal)?.value ?? 0), -lead.cost);
  const weights = (places[0]?.weights ?? []).map((_, at) => places.reduce((sum, place) => sum + (place.weights[at] ?? 0), 0));
  return {
    content: { kind: 'chain', pattern: { chain, places, lead: lead.kind, value } },
    value,
    banks: [chain.bank],
    pedals: places.map(({ pedal }) => pedal),
    weights,
  };
}

/** What is left of an item's value once the rents of its pedals and the prices of its weights are paid; never too little. */
function netOf(item: Pick<Item, 'value' | 'pedals' | 'weights'>, rents: readonly number[], prices: readonly number[]): number {
  let net = item.value;
  for (const pedal of item.pedals) net -= rents[pedal] ?? 0;
  item.weights.forEach((weight, at) => (net -= paid(prices[at] ?? 0, weight)));
  return net;
}

const paid = (price: number, weight: number): number => Math.max(0, Math.floor(price * weight * (1 - 2 ** -50)));

/** What is paid on top for every pedal and for every chain. */
type Extras = { readonly perPedal: number; readonly perChain: number };

type Earnings = {
  readonly bound: number;
  readonly outputRents: readonly number[];
  /** Patterns that earn more than the output's rent in the relaxation. */
  readonly fresh: readonly { readonly pool: Pool; readonly places: readonly PlaceOption[] }[];
};

/** What every output earns at the most under the rents, exactly; the bound that follows, and patterns worth adding. */
function earnings(
  job: Job,
  rents: readonly number[],
  prices: readonly number[],
  extras: Extras,
  now: readonly number[],
): Earnings {
  const { frame, counts, solos, pools } = job;
  const outputRents = frame.outputs.map(() => 0);
  for (const item of solos) {
    if (item.banks.length > 1) continue;
    const bank = item.banks[0] ?? 0;
    outputRents[bank] = Math.max(outputRents[bank] ?? 0, netOf(item, rents, prices) - extras.perPedal);
  }
  const fresh: { pool: Pool; places: readonly PlaceOption[] }[] = [];
  let complete = true;
  for (const pool of pools) {
    const bank = pool.chain.bank;
    const rented = rentedCandidates(pool, rents, prices, extras);
    const leads = pool.leads.map(({ kind, cost }) => ({ kind, cost: cost + extras.perChain }));
    let places: readonly PlaceOption[] | null = null;
    let most = outputRents[bank] ?? 0;
    const whole = searchPatterns(pool.chain, rented, leads, frame.capacities, {
      floor: most,
      found: (chosen, value) => {
        places = chosen;
        most = value;
        return value;
      },
    });
    complete &&= whole;
    outputRents[bank] = most;
    if (places !== null && most > (now[bank] ?? 0) + 1) fresh.push({ pool, places });
  }
  for (const item of solos) {
    if (item.banks.length < 2) continue;
    const sum = item.banks.reduce((all, bank) => all + (outputRents[bank] ?? 0), 0);
    const lacking = netOf(item, rents, prices) - extras.perPedal - sum;
    const bank = item.banks[0] ?? 0;
    if (lacking > 0) outputRents[bank] = (outputRents[bank] ?? 0) + lacking;
  }
  let bound = 0;
  rents.forEach((rent, pedal) => (bound += rent * (counts[pedal] ?? 0)));
  frame.outputs.forEach((count, bank) => (bound += count * (outputRents[bank] ?? 0)));
  frame.capacities.forEach((capacity, at) => (bound += Math.ceil((prices[at] ?? 0) * capacity * (1 + 2 ** -50))));
  return { bound: complete ? bound : Infinity, outputRents, fresh };
}

/** The candidates with what they are worth once everything is paid, the most value for its load first. */
function rentedCandidates(
  pool: Pool,
  rents: readonly number[],
  prices: readonly number[],
  { perPedal }: Pick<Extras, 'perPedal'>,
): readonly Candidate[] {
  return pool.candidates
    .map((each) => {
      const { pedal, weights } = each.place;
      return { ...each, value: netOf({ value: each.value, pedals: [pedal], weights }, rents, prices) - perPedal };
    })
    .sort((a, b) => b.value * (a.place.load || 1e-6) - a.value * (b.place.load || 1e-6));
}

type Draft = { readonly items: readonly Item[]; readonly value: number };

/** Takes items in their order as long as they fit. */
function greedilyFilled(job: Job, items: readonly Item[]): Draft | null {
  const room = new Room(job);
  const taken: Item[] = [];
  let value = 0;
  for (const item of [...items, ...[...job.solos].sort((a, b) => b.value - a.value)]) {
    if (item.value <= 0) continue;
    while (room.fits(item)) {
      room.take(item, 1);
      taken.push(item);
      value += item.value;
    }
  }
  return taken.length === 0 ? null : { items: taken, value };
}

/** What is left of a unit while it is being filled. */
class Room {
  readonly outputs: number[];
  readonly pedals: number[];
  readonly weights: number[];

  constructor({ frame, counts }: Job) {
    this.outputs = [...frame.outputs];
    this.pedals = [...counts];
    this.weights = [...frame.capacities];
  }

  fits({ banks, pedals, weights }: Item): boolean {
    const [first, second] = banks;
    if ((this.outputs[first ?? 0] ?? 0) < (first === second ? 2 : 1)) return false;
    if (second !== undefined && (this.outputs[second] ?? 0) < 1) return false;
    if (weights.some((weight, at) => weight > (this.weights[at] ?? 0))) return false;
    return pedals.every((pedal) => (this.pedals[pedal] ?? 0) >= occurrences(pedals, pedal));
  }

  take({ banks, pedals, weights }: Item, times: 1 | -1): void {
    for (const bank of banks) this.outputs[bank] = (this.outputs[bank] ?? 0) - times;
    for (const pedal of pedals) this.pedals[pedal] = (this.pedals[pedal] ?? 0) - times;
    weights.forEach((weight, at) => (this.weights[at] = (this.weights[at] ?? 0) - times * weight));
  }
}

function occurrences(pedals: readonly number[], pedal: number): number {
  let count = 0;
  for (const each of pedals) if (each === pedal) count += 1;
  return count;
}

/** Lists every item that loses less than the gap, and packs these exactly. */
function searchItems(job: Job, rented: Rented, floor: number): Filling<Content> {
  const { bound } = rented;
  const items = nearTight(job, rented, bound - floor);
  if (items === null) return { bound, found: null };
  const packed = packItems(job, items, floor, bound);
  const found =
    packed.best === null
      ? null
      : { value: packed.best.value, contents: packed.best.items.map(({ content }) => content) };
  return { bound: packed.bound, found };
}

type Branch = { readonly taken: readonly Item[]; readonly out: ReadonlySet<Item>; readonly bound: number };

/** Branch and bound over items that are all known: relaxations guide it, rents in whole numbers bound it. */
function packItems(
  job: Job,
  items: readonly Item[],
  floor: number,
  bound: number,
): { readonly bound: number; readonly best: Draft | null } {
  const open: Branch[] = [{ taken: [], out: new Set(), bound }];
  let best: Draft | null = null;
  for (let node = 0; node < mostNodes; node += 1) {
    open.sort((a, b) => a.bound - b.bound);
    const branch = open.pop();
    const beaten = best?.value ?? floor;
    if (branch === undefined || branch.bound <= beaten) return { bound: Math.max(0, beaten), best };
    const room = new Room(job);
    for (const item of branch.taken) room.take(item, 1);
    const free = items.filter((item) => !branch.out.has(item) && room.fits(item));
    const taken = branch.taken.reduce((sum, { value }) => sum + value, 0);
    const relaxed = relaxedPacking(job, room, free);
    const reached = greedilyFrom(room, branch.taken, relaxed.order);
    if (reached.value > (best?.value ?? floor)) best = reached;
    const limit = Math.min(branch.bound, taken + relaxed.bound);
    if (limit <= (best?.value ?? floor)) continue;
    const [on] = relaxed.fractional;
    const split = on ?? relaxed.order[0];
    if (split === undefined) continue;
    open.push({ taken: branch.taken, out: new Set([...branch.out, split]), bound: limit });
    open.push({ taken: [...branch.taken, split], out: branch.out, bound: limit });
  }
  return { bound: Math.max(best?.value ?? 0, ...open.map((each) => each.bound)), best };
}

/** The relaxation of what is left of a unit over the items that fit, with a bound in whole numbers. */
function relaxedPacking(
  job: Job,
  room: Room,
  items: readonly Item[],
): { readonly bound: number; readonly order: readonly Item[]; readonly fractional: readonly Item[] } {
  const { outputs, pedals, weights } = room;
  const classes = [...new Set(items.flatMap((item) => item.pedals))];
  const rowOfClass = new Map(classes.map((pedal, index) => [pedal, outputs.length + index]));
  const firstLimit = outputs.length + classes.length;
  const simplex = new Simplex(
    [
      ...outputs.map((count) => ({ sense: 'at most' as const, bound: count })),
      ...classes.map((pedal) => ({ sense: 'at most' as const, bound: pedals[pedal] ?? 0 })),
      ...weights.map((capacity) => ({ sense: 'at most' as const, bound: capacity > 0 ? 1 : 0 })),
    ],
    1,
    0.5,
  );
  for (const item of items) simplex.add(sparse(item, rowOfClass, firstLimit, weights));
  simplex.start(COLD);
  simplex.solve(500);
  const { duals, point } = simplex;
  const rents: number[] = [];
  for (const pedal of classes) rents[pedal] = Math.max(0, Math.round(-(duals[rowOfClass.get(pedal) ?? 0] ?? 0)));
  const prices = weights.map((capacity, at) => Math.max(0, -(duals[firstLimit + at] ?? 0)) / (capacity || 1));
  const outputRents = outputs.map(() => 0);
  for (const item of items) raise(outputRents, item, netOf(item, rents, prices));
  let bound = 0;
  rents.forEach((rent, pedal) => (bound += rent * (pedals[pedal] ?? 0)));
  outputs.forEach((count, bank) => (bound += count * (outputRents[bank] ?? 0)));
  weights.forEach((capacity, at) => (bound += Math.ceil((prices[at] ?? 0) * capacity * (1 + 2 ** -50))));
  const shares = items.map((item, index) => ({ item, share: point[index] ?? 0 })).filter(({ share }) => share > 1e-6);
  const order = shares.sort((a, b) => b.share - a.share || b.item.value - a.item.value).map(({ item }) => item);
  const fractional = shares
    .filter(({ share }) => Math.abs(share - Math.round(share)) > 1e-6)
    .sort((a, b) => Math.abs((a.share % 1) - 0.5) - Math.abs((b.share % 1) - 0.5))
    .map(({ item }) => item);
  void job;
  return { bound, order, fractional };
}

/** Lifts the rents of an item's outputs, so that it earns nothing above them. */
function raise(outputRents: number[], { banks }: Item, net: number): void {
  const sum = banks.reduce((all, bank) => all + (outputRents[bank] ?? 0), 0);
  const bank = banks[0] ?? 0;
  if (net > sum) outputRents[bank] = (outputRents[bank] ?? 0) + net - sum;
}

function greedilyFrom(room: Room, taken: readonly Item[], order: readonly Item[]): Draft {
  const items = [...taken];
  for (const item of order) {
    while (room.fits(item)) {
      room.take(item, 1);
      items.push(item);
    }
  }
  return { items, value: items.reduce((sum, { value }) => sum + value, 0) };
}

function sparse(
  item: Item,
  rowOfClass: ReadonlyMap<number, number>,
  firstLimit: number,
  capacities: readonly number[],
): SparseColumn {
  const entries = new Map<number, number>();
  const put = (row: number, value: number): void => void entries.set(row, (entries.get(row) ?? 0) + value);
  for (const bank of item.banks) put(bank, 1);
  for (const pedal of item.pedals) put(rowOfClass.get(pedal) ?? 0, 1);
  item.weights.forEach((weight, at) => {
    if (weight > 0) put(firstLimit + at, weight / (capacities[at] || 1));
  });
  return { rows: [...entries.keys()], values: [...entries.values()], cost: -item.value };
}

/** The items that lose less than the gap against the rents; null when they are too many. */
function nearTight(job: Job, { rents, outputRents, limitPrices, perPedal, perChain }: Rented, gap: number): readonly Item[] | null {
  const rentOf = (banks: readonly number[]): number => banks.reduce((sum, bank) => sum + (outputRents[bank] ?? 0), 0);
  const items = job.solos.filter((item) => rentOf(item.banks) - netOf(item, rents, limitPrices) + perPedal < gap);
  for (const pool of job.pools) {
    const rented = rentedCandidates(pool, rents, limitPrices, { perPedal });
    const leads = pool.leads.map(({ kind, cost }) => ({ kind, cost: cost + perChain }));
    const floor = rentOf([pool.chain.bank]) - gap;
    const complete = searchPatterns(pool.chain, rented, leads, job.frame.capacities, {
      floor,
      found: (places) => {
        if (items.length <= mostItems) items.push(chainItem(pool, places));
        return floor;
      },
    });
    if (!complete || items.length > mostItems) return null;
  }
  return items;
}

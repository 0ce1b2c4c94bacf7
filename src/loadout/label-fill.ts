import { byDensity } from './chain-pattern.js';
import { bonusOf, chainItem, type LoadoutContent, type ContentItem, type FrameJob, type Pool } from './content.js';
import type { PlaceOption } from './frame.js';
import { netOf, paidFor, type Rents } from './rents.js';
import { alsoBarred, barsNoMore, replaceable, replacersFirst, type Barred } from './replacement.js';
import type { Filling } from './solo-fill.js';

/** Labels at one stage; a search that needs more gives up and leaves its bound. */
const mostLabels = 6_000;

/**
 * Pedal by pedal all beginnings that may become something better than the floor. Every choice loses something against the
 * rents, and what has lost more than the gap is dropped; of two beginnings that look alike the one that is worth less is.
 * A pedal that is left out takes with it all that another could replace at no loss: if any best content uses those, one
 * that uses this pedal instead is as good.
 */
export function fillByLabels(job: FrameJob, rents: Rents, floor: number): Filling<LoadoutContent> {
  const { bound } = rents;
  const stages = stagesOf(job, rents);
  const later = laterOnes(stages, job.pools.length);
  const best: { label: Label | null; value: number } = { label: null, value: floor };
  let labels: readonly Label[] = [firstLabel(job)];
  for (const [index, stage] of stages.entries()) {
    const next = new Map<string, Label[]>();
    let count = 0;
    const keep = (label: Label): void => {
      if (label.value > best.value && label.chains.every((chain) => chain.places.length > 1)) {
        best.label = label;
        best.value = label.value;
      }
      if (bound - label.lost - openLoss(label, index + 1, job, rents, later) <= best.value) return;
      const key = keyOf(label);
      const alike = next.get(key);
      if (alike === undefined) next.set(key, [label]);
      else if (alike.some((other) => replaces(other, label))) return;
      else alike.push(label);
      count += 1;
    };
    for (const label of labels) for (const child of extended(label, index, stage, job, rents)) keep(child);
    if (count > mostLabels) return { bound, found: null };
    labels = [...next.values()].flat();
  }
  const { label, value } = best;
  return { bound: value, found: label === null ? null : { value, contents: contentsOf(label, job) } };
}

/** One pedal with everything that it may do. */
type Stage = {
  readonly pedal: number;
  /** How much it pays for being there. */
  readonly rent: number;
  readonly solos: readonly ContentItem[];
  /** Its place in each pool, with its value and what is left of that when rents are paid; null where it cannot hang. */
  readonly places: readonly (Placed | null)[];
  /** It begins chains that others do not, so that it comes before them, whatever it is worth. */
  readonly isEarly: boolean;
  /** The later stages that it could replace at no loss. */
  readonly replaceable: readonly number[];
};

type Placed = { readonly place: PlaceOption; readonly value: number; readonly net: number };

/** A chain that more pedals may join. */
type OpenChain = {
  readonly pool: number;
  readonly places: readonly PlaceOption[];
  readonly load: number;
  readonly surge: number;
  readonly soles: number;
  readonly net: number;
};

/** A beginning: what is decided for the first pedals. */
type Label = {
  readonly value: number;
  /** What it has lost against the rents, but for its open chains. */
  readonly lost: number;
  readonly outputs: readonly number[];
  readonly rooms: readonly number[];
  readonly chains: readonly OpenChain[];
  readonly solos: readonly ContentItem[];
  /** Stages that are left out along with another. */
  readonly barred: Barred;
};

const firstLabel = ({ frame }: FrameJob): Label => ({
  value: 0,
  lost: 0,
  outputs: frame.outputs,
  rooms: frame.capacities,
  chains: [],
  solos: [],
  barred: new Set(),
});

/** A stage for every pedal, those that can replace others before these. */
function stagesOf(job: FrameJob, rents: Rents): readonly Stage[] {
  const { solos, pools, counts } = job;
  const classes = new Set(solos.flatMap(({ pedals }) => pedals));
  for (const { candidates } of pools) for (const { place } of candidates) classes.add(place.pedal);
  const picky = pools.map(({ chain }) => chain.places.some(({ begins }) => !begins));
  const plain = [...classes].map((pedal) => ({
    pedal,
    isEarly: pools.some(
      ({ candidates }, pool) => picky[pool] && candidates.some(({ place }) => place.pedal === pedal && place.begins),
    ),
    rent: rents.pedals[pedal] ?? 0,
    solos: solos.filter((item) => item.pedals[0] === pedal),
    places: pools.map(({ candidates }): Placed | null => {
      const candidate = candidates.find(({ place }) => place.pedal === pedal);
      if (candidate === undefined) return null;
      const { place, value } = candidate;
      return { place, value, net: netOf({ value, pedals: [pedal], weights: place.weights }, rents) };
    }),
  }));
  const worth = ({ solos: alone, places }: PlainStage): number =>
    Math.max(0, ...alone.map(({ value }) => value), ...places.map((placed) => placed?.value ?? 0));
  const order = replacersFirst(plain, worth, canReplace).toSorted((a, b) => Number(b.isEarly) - Number(a.isEarly));
  const copies = order.flatMap((stage) =>
    Array.from({ length: Math.min(counts[stage.pedal] ?? 0, mostCopies) }, () => stage),
  );
  const others = replaceable(copies, canReplace);
  return copies.map((stage, index) => ({ ...stage, replaceable: others[index] ?? [] }));
}

/** More pedals of one class than this find no place on one unit. */
const mostCopies = 100;

type PlainStage = Omit<Stage, 'replaceable'>;

/** Whether a pedal can do all that another does, for no less and without taking more. */
function canReplace(one: PlainStage, two: PlainStage): boolean {
  return (
    two.solos.every((item) => one.solos.some((other) => coversSolo(other, item))) &&
    two.places.every((placed, pool) => placed === null || coversPlace(one.places[pool] ?? null, placed))
  );
}

const coversSolo = (other: ContentItem, item: ContentItem): boolean =>
  other.value >= item.value &&
  other.banks.length === item.banks.length &&
  other.banks.every((bank, index) => bank === item.banks[index]) &&
  other.weights.every((weight, at) => weight <= (item.weights[at] ?? 0));

const coversPlace = (one: Placed | null, two: Placed): boolean =>
  one !== null &&
  one.value >= two.value &&
  one.place.load <= two.place.load &&
  one.place.surge <= two.place.surge &&
  (!one.place.sole || two.place.sole) &&
  one.place.weights.every((weight, at) => weight <= (two.place.weights[at] ?? 0));

/** Everything that the pedal of a stage may do next. */
function* extended(label: Label, index: number, stage: Stage, job: FrameJob, rents: Rents): Generator<Label> {
  if (!label.barred.has(index)) {
    for (const item of stage.solos) {
      const next = withSolo(label, item, rents);
      if (next !== null) yield next;
    }
    for (const [at, chain] of label.chains.entries()) {
      const placed = stage.places[chain.pool];
      const next = placed === undefined || placed === null ? null : withPlace(label, at, placed, job);
      if (next !== null) yield next;
    }
    for (const [pool, placed] of stage.places.entries()) {
      const next = placed === null ? null : withChain(label, pool, placed, stage, job, rents);
      if (next !== null) yield next;
    }
  }
  const barred = alsoBarred(label.barred, stage.replaceable);
  yield { ...label, lost: label.lost + stage.rent, barred };
}

function lessRoom(rooms: readonly number[], weights: readonly number[]): readonly number[] | null {
  if (weights.some((weight, at) => weight > (rooms[at] ?? 0))) return null;
  return rooms.map((room, at) => room - (weights[at] ?? 0));
}

function lessOutputs(outputs: readonly number[], banks: readonly number[]): readonly number[] | null {
  const left = [...outputs];
  for (const bank of banks) {
    left[bank] = (left[bank] ?? 0) - 1;
    if ((left[bank] ?? 0) < 0) return null;
  }
  return left;
}

const rentsFor = ({ outputs }: Rents, banks: readonly number[]): number =>
  banks.reduce((sum, bank) => sum + (outputs[bank] ?? 0), 0);

function withSolo(label: Label, item: ContentItem, rents: Rents): Label | null {
  const outputs = lessOutputs(label.outputs, item.banks);
  const rooms = outputs === null ? null : lessRoom(label.rooms, item.weights);
  if (outputs === null || rooms === null) return null;
  return {
    ...label,
    value: label.value + item.value,
    lost: label.lost + rentsFor(rents, item.banks) - netOf(item, rents),
    outputs,
    rooms,
    solos: [...label.solos, item],
  };
}

/** One pedal more on an open chain; the difference between the leads is paid. */
function withPlace(label: Label, at: number, { place, value, net }: Placed, { pools }: FrameJob): Label | null {
  const chain = label.chains[at];
  const pool = pools[chain?.pool ?? -1];
  if (chain === undefined || pool === undefined) return null;
  const size = chain.places.length;
  const load = chain.load + place.load;
  const surge = chain.surge + place.surge;
  if (size >= pool.chain.mostTails || load > pool.chain.mostLoad || surge > pool.chain.mostSurge) return null;
  const soles = chain.soles + (place.sole ? 1 : 0);
  const rooms = soles > 1 ? null : lessRoom(label.rooms, place.weights);
  if (rooms === null || (value <= 0 && size !== 1)) return null;
  const longer = { ...chain, places: [...chain.places, place], load, surge, soles, net: chain.net + net };
  const paidMore = leadCost(pool, size + 1) - leadCost(pool, size);
  return { ...label, value: label.value + value - paidMore, rooms, chains: label.chains.with(at, longer) };
}

function withChain(
  label: Label,
  pool: number,
  { place, value, net }: Placed,
  { isEarly }: Stage,
  { pools }: FrameJob,
  rents: Rents,
): Label | null {
  const opened = pools[pool];
  if (opened === undefined || !place.begins) return null;
  // A pedal that is worth nothing opens a chain only for what the chain is worth by itself, or before those that are worth more.
  if (value <= 0 && bonusOf(opened) === 0 && !isEarly) return null;
  const outputs = lessOutputs(label.outputs, [opened.chain.bank]);
  const ownRooms = outputs === null ? null : lessRoom(label.rooms, opened.chain.weights);
  const rooms = ownRooms === null ? null : lessRoom(ownRooms, place.weights);
  if (outputs === null || rooms === null) return null;
  const { load, surge } = place;
  const chain = { pool, places: [place], load, surge, soles: place.sole ? 1 : 0, net };
  return {
    ...label,
    value: label.value + value - leadCost(opened, 1),
    lost: label.lost + rentsFor(rents, [opened.chain.bank]),
    outputs,
    rooms,
    chains: [...label.chains, chain],
  };
}

/** A chain is paid for two from the first on. */
const leadCost = ({ leads }: Pool, pedals: number): number => leads[Math.max(2, pedals)]?.cost ?? Infinity;

/**
 * What the open chains lose at the least, less the rents that were counted as lost when they were opened: they may still
 * earn what the later pedals that fit add, the last one in part.
 */
function openLoss(
  label: Label,
  from: number,
  job: FrameJob,
  rents: Rents,
  later: ReturnType<typeof laterOnes>,
): number {
  let loss = 0;
  for (const chain of label.chains) {
    const pool = job.pools[chain.pool];
    if (pool === undefined) continue;
    const size = chain.places.length;
    const room = Math.min(pool.chain.mostLoad - chain.load, pool.chain.mostSurge - chain.surge);
    const more = laterEarnings(later[chain.pool]?.[from] ?? [], room, pool.chain.mostTails - size, label.barred);
    const earned = chain.net + more - leadCost(pool, size) - rents.perChain - paidFor(pool.chain.weights, rents);
    loss -= Math.min(earned, rents.outputs[pool.chain.bank] ?? 0);
  }
  return loss;
}

/** The fractional knapsack of the later pedals' earnings in a pool. */
function laterEarnings(later: readonly Later[], room: number, most: number, barred: Barred): number {
  if (most <= 0) return 0;
  let [left, sum, best] = [room, 0, 0];
  for (const { stage, net, load } of later) {
    if (load > room || barred.has(stage)) continue;
    if (net > best) best = net;
    if (left <= 0) continue;
    sum += load <= left ? net : Math.ceil((net * left) / load) + 1;
    left -= Math.min(left, load);
  }
  return Math.min(sum, most * best);
}

/** A later pedal that would earn something in a pool. */
type Later = { readonly stage: number; readonly net: number; readonly load: number };

/** For every pool and every stage the pedals from there on that would earn something, the densest first. */
function laterOnes(stages: readonly Stage[], pools: number): readonly (readonly (readonly Later[])[])[] {
  return Array.from({ length: pools }, (_, pool) => {
    const all = stages
      .flatMap(({ places }, stage) => {
        const placed = places[pool];
        if (placed === undefined || placed === null || placed.net <= 0) return [];
        return [{ stage, net: placed.net, load: placed.place.load, value: placed.net, place: placed.place }];
      })
      .sort(byDensity);
    return Array.from({ length: stages.length + 1 }, (_none, from) => all.filter(({ stage }) => stage >= from));
  });
}

/** Beginnings of one key have taken the same outputs and their open chains look alike. */
function keyOf({ outputs, chains }: Label): string {
  const open = chains.map(
    ({ pool, load, surge, soles, places }) => `${pool}:${load}:${surge}:${soles}:${places.length}`,
  );
  return `${outputs.join()} ${open.sort().join(' ')}`;
}

/** The losses count, too: they say what the rest may still earn beside the open chains. */
const replaces = (other: Label, label: Label): boolean =>
  other.value >= label.value &&
  other.rooms.every((room, at) => room >= (label.rooms[at] ?? 0)) &&
  barsNoMore(other.barred, label.barred);

function contentsOf({ solos, chains }: Label, { pools }: FrameJob): readonly LoadoutContent[] {
  const hung = chains.flatMap(({ pool, places }) => {
    const made = pools[pool];
    return made === undefined ? [] : [chainItem(made, places)];
  });
  return [...solos, ...hung].map(({ content }) => content);
}

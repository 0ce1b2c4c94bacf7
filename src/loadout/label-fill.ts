import { prospectsOf, type Begun, type Prospects } from './chain-prospects.js';
import { bonusOf, chainItem, type LoadoutContent, type ContentItem, type FrameJob, type Pool } from './content.js';
import type { PlaceOption } from './frame.js';
import { stagesOf, type Placed, type Stage } from './label-stages.js';
import { netOf, type Rents } from './rents.js';
import { alsoBarred, barsNoMore, type Barred } from './replacement.js';
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
  const prospects = prospectsOf(job, stages, rents);
  const best: { label: Label | null; value: number } = { label: null, value: floor };
  let labels: readonly Label[] = [firstLabel(job)];
  for (const [index, stage] of stages.entries()) {
    const next = new Map<string, Label[]>();
    let count = 0;
    const keep = (label: Label): void => {
      if (label.value > best.value && label.chains.every(({ size }) => size > 1)) {
        best.label = label;
        best.value = label.value;
      }
      if (bound - label.lost + openEarnings(label, index + 1, prospects) <= best.value) return;
      const key = keyOf(label);
      const alike = next.get(key);
      if (alike === undefined) next.set(key, [label]);
      else if (alike.some((other) => replaces(other, label))) return;
      else alike.push(label);
      count += 1;
    };
    for (const label of labels) {
      for (const child of extended(label, index, stage, job, rents)) keep(child);
      if (count > mostLabels) return { bound, found: foundOf(best, job) };
    }
    labels = [...next.values()].flat();
  }
  return { bound: best.value, found: foundOf(best, job) };
}

type Best = { readonly label: Label | null; readonly value: number };

const foundOf = ({ label, value }: Best, job: FrameJob): Filling<LoadoutContent>['found'] =>
  label === null ? null : { value, contents: contentsOf(label, job) };

/** A chain that more pedals may join, by its last one. */
type OpenChain = Begun & {
  readonly place: PlaceOption;
  readonly before: OpenChain | null;
  readonly soles: number;
};

/** A beginning: what is decided for the first pedals. */
type Label = {
  readonly value: number;
  /** What it has lost against the rents, but for its open chains. */
  readonly lost: number;
  /** The state that numbers the outputs in use. */
  readonly outputs: number;
  readonly rooms: readonly number[];
  readonly chains: readonly OpenChain[];
  readonly solos: Alone | null;
  /** Stages that are left out along with another. */
  readonly barred: Barred;
};

/** A pedal that hangs by itself, and those before it. */
type Alone = { readonly item: ContentItem; readonly before: Alone | null };

const firstLabel = ({ frame }: FrameJob): Label => ({
  value: 0,
  lost: 0,
  outputs: 0,
  rooms: frame.capacities,
  chains: [],
  solos: null,
  barred: new Set(),
});

/** Everything that the pedal of a stage may do next. */
function* extended(label: Label, index: number, stage: Stage, job: FrameJob, rents: Rents): Generator<Label> {
  if (!label.barred.has(index)) {
    for (const item of stage.solos) {
      const next = withSolo(label, item, job, rents);
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
  yield leftOut(label, stage);
}

function leftOut(
  { value, lost, outputs, rooms, chains, solos, barred }: Label,
  { rent, replaceable: others }: Stage,
): Label {
  return { value, lost: lost + rent, outputs, rooms, chains, solos, barred: alsoBarred(barred, others) };
}

function lessRoom(rooms: readonly number[], weights: readonly number[]): readonly number[] | null {
  if (rooms.length === 0) return rooms;
  for (const [at, weight] of weights.entries()) if (weight > (rooms[at] ?? 0)) return null;
  return rooms.map((room, at) => room - (weights[at] ?? 0));
}

const rentsFor = ({ outputs }: Rents, banks: readonly number[]): number =>
  banks.reduce((sum, bank) => sum + (outputs[bank] ?? 0), 0);

function withSolo(label: Label, item: ContentItem, { frame }: FrameJob, rents: Rents): Label | null {
  const { states } = frame;
  if (states.fits(item.banks)[label.outputs] !== 1) return null;
  const rooms = lessRoom(label.rooms, item.weights);
  if (rooms === null) return null;
  return {
    value: label.value + item.value,
    lost: label.lost + rentsFor(rents, item.banks) - netOf(item, rents),
    outputs: label.outputs + states.stride(item.banks),
    rooms,
    chains: label.chains,
    solos: { item, before: label.solos },
    barred: label.barred,
  };
}

/** One pedal more on an open chain; the difference between the leads is paid. */
function withPlace(label: Label, at: number, { place, value, net }: Placed, { pools }: FrameJob): Label | null {
  const chain = label.chains[at];
  const pool = pools[chain?.pool ?? -1];
  if (chain === undefined || pool === undefined) return null;
  const { size } = chain;
  const load = chain.load + place.load;
  const surge = chain.surge + place.surge;
  if (size >= pool.chain.mostTails || load > pool.chain.mostLoad || surge > pool.chain.mostSurge) return null;
  const soles = chain.soles + (place.sole ? 1 : 0);
  const rooms = soles > 1 || (value <= 0 && size !== 1) ? null : lessRoom(label.rooms, place.weights);
  if (rooms === null) return null;
  const longer = { pool: chain.pool, size: size + 1, place, before: chain, load, surge, soles, net: chain.net + net };
  const { lost, outputs, solos, barred } = label;
  const paid = label.value + value - (leadCost(pool, size + 1) - leadCost(pool, size));
  return { value: paid, lost, outputs, rooms, chains: label.chains.with(at, longer), solos, barred };
}

function withChain(
  label: Label,
  pool: number,
  { place, value, net }: Placed,
  { isEarly }: Stage,
  { pools, frame }: FrameJob,
  rents: Rents,
): Label | null {
  const opened = pools[pool];
  if (opened === undefined || !place.begins) return null;
  // A pedal that is worth nothing opens a chain only for what the chain is worth by itself, or before those that are worth more.
  if (value <= 0 && bonusOf(opened) === 0 && !isEarly) return null;
  const banks = [opened.chain.bank];
  const ownRooms = frame.states.fits(banks)[label.outputs] === 1 ? lessRoom(label.rooms, opened.chain.weights) : null;
  const rooms = ownRooms === null ? null : lessRoom(ownRooms, place.weights);
  if (rooms === null) return null;
  const { load, surge } = place;
  const chain = { pool, size: 1, place, before: null, load, surge, soles: place.sole ? 1 : 0, net };
  return {
    value: label.value + value - leadCost(opened, 1),
    lost: label.lost + rentsFor(rents, banks),
    outputs: label.outputs + frame.states.stride(banks),
    rooms,
    chains: [...label.chains, chain],
    solos: label.solos,
    barred: label.barred,
  };
}

/** A chain is paid for two from the first on. */
const leadCost = ({ leads }: Pool, pedals: number): number => leads[Math.max(2, pedals)]?.cost ?? Infinity;

/** What the open chains may still earn, against the rents that were counted as lost when they were opened. */
const openEarnings = ({ chains, barred }: Label, from: number, prospects: Prospects): number =>
  chains.reduce((sum, chain) => sum + prospects(chain, from, barred), 0);

/** Beginnings of one key have taken the same outputs and their open chains look alike. */
function keyOf({ outputs, chains }: Label): string {
  const open = chains.map(({ pool, load, surge, soles, size }) => `${pool}:${load}:${surge}:${soles}:${size}`);
  return `${outputs} ${open.sort().join(' ')}`;
}

/** The losses count, too: they say what the rest may still earn beside the open chains. */
const replaces = (other: Label, label: Label): boolean =>
  other.value >= label.value &&
  other.lost <= label.lost &&
  other.rooms.every((room, at) => room >= (label.rooms[at] ?? 0)) &&
  barsNoMore(other.barred, label.barred);

function contentsOf({ solos, chains }: Label, { pools }: FrameJob): readonly LoadoutContent[] {
  const contents: LoadoutContent[] = [];
  for (let alone = solos; alone !== null; alone = alone.before) contents.push(alone.item.content);
  for (const chain of chains) {
    const pool = pools[chain.pool];
    if (pool !== undefined) contents.push(chainItem(pool, placesOf(chain)).content);
  }
  return contents;
}

function placesOf(last: OpenChain): readonly PlaceOption[] {
  const places: PlaceOption[] = [];
  for (let chain: OpenChain | null = last; chain !== null; chain = chain.before) places.unshift(chain.place);
  return places;
}

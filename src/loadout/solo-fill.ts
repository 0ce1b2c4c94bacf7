import { gathered } from '../../solver/gathered.js';
import { remembered } from '../../solver/remembered.js';
import type { UnitFrame, SoloOption } from './frame.js';
import { placeValue } from './chain-pattern.js';
import { FrameRoom } from './content.js';
import { paid, priceOfCapacities } from './rents.js';
import type { LoadoutDuals } from './loadout-duals.js';

/** What a unit is filled with, and what that is worth. */
export type Filling<Content> = {
  /** No filling is worth more. */
  readonly bound: number;
  /** A filling that is worth more than the floor; null when there is none or none was found in time. */
  readonly found: { readonly value: number; readonly contents: readonly Content[] } | null;
};

/** An option with what it is worth and the outputs that it takes. */
type Way = {
  readonly option: SoloOption;
  readonly value: number;
  /** By how much it moves on the state that numbers the outputs in use. */
  readonly stride: number;
  /** By state, whether its outputs are still free. */
  readonly fits: Uint8Array;
};

/** One pedal that is worth anything: the ways in which it may hang, the most valuable first. */
type Stage = readonly Way[];

/** A way with what is left of its value when the prices of the limits that it uses are paid. */
type Priced = { readonly way: Way; readonly net: number };

/** Parts of contents at one stage of the search that minds totals; one that needs more gives up and leaves its bound. */
const mostLabels = 5_000;
/** How often the prices of totals are tried anew. */
const priceRounds = 12;

/**
 * The most that pedals by themselves are worth on one unit. Over the pedals and the numbers of outputs in use of every
 * bank a table says what the rest can still add ("Dynamic programming", 1957); totals have prices, as in "Lagrangian
 * relaxation for integer programming", 1974, and where these leave a gap, a search that the table bounds closes it.
 */
export function fillWithSolos(
  frame: UnitFrame,
  duals: LoadoutDuals,
  counts: readonly number[],
  floor: number,
  effort: 'quick' | 'exact',
): Filling<SoloOption> {
  const values = frame.solos.map((option) => placeValue(option, duals));
  const most = mostAlone(frame, values, counts);
  if (most <= floor) return { bound: most, found: null };
  const stages = stagesOf(frame, values, counts);
  let brackets: readonly Bracket[] = frame.capacities.map(() => ({ broken: 0, holds: Infinity, price: 0 }));
  let best: { bound: number; table: Table } | null = null;
  let unpriced: Table | null = null;
  let mended: Draft = { value: floor, contents: [] };
  for (let round = 0; round < priceRounds; round += 1) {
    const prices = brackets.map(({ price }) => price);
    const table = tableOf(frame, stages, prices);
    unpriced ??= table;
    const bound = table.most + priceOfCapacities(frame.capacities, prices);
    if (best === null || bound < best.bound) best = { bound, table };
    if (bound <= floor) return { bound, found: null };
    const picked = pickedFrom(table);
    const exceeded = frame.capacities.map(
      (capacity, at) => picked.reduce((sum, { way }) => sum + (way.option.weights[at] ?? 0), 0) > capacity,
    );
    if (!exceeded.includes(true)) {
      const value = picked.reduce((sum, { way }) => sum + way.value, 0);
      const contents = picked.map(({ way }) => way.option);
      if (value > floor) return { bound: best.bound, found: { value, contents } };
      if (prices.every((price) => price === 0)) break;
    } else {
      const draft = whatFits(frame, counts, picked, table);
      if (draft.value > mended.value) mended = draft;
    }
    brackets = brackets.map((bracket, at) =>
      nextBracket(bracket, exceeded[at] === true, table.most / (2 * Math.max(1, frame.capacities[at] ?? 1))),
    );
  }
  if (best === null || unpriced === null) return { bound: 0, found: null };
  if (mended.contents.length > 0) return { bound: best.bound, found: mended };
  return effort === 'quick' ? { bound: best.bound, found: null } : searched(best.table, unpriced, floor, best.bound);
}

type Draft = { readonly value: number; readonly contents: readonly SoloOption[] };

/** Of what was picked as much as fits, the most valuable first, then whatever else still does. */
function whatFits(
  frame: UnitFrame,
  counts: readonly number[],
  picked: readonly Priced[],
  { stages, nets }: Table,
): Draft {
  const room = new FrameRoom({ frame, counts });
  const contents: SoloOption[] = [];
  let sum = 0;
  const all = gathered(stages, (ways, stage) => ways.map((way, at): Priced => ({ way, net: nets[stage]?.[at] ?? 0 })));
  for (const some of [picked, all]) {
    for (const { way } of some.toSorted((a, b) => b.net - a.net)) {
      const { option, value } = way;
      const { banks, pedal, weights } = option;
      const taken = { banks, pedals: [pedal], weights };
      if (!room.fits(taken)) continue;
      room.take(taken);
      contents.push(option);
      sum += value;
    }
  }
  return { value: sum, contents };
}

const outputsOf = ({ outputs }: UnitFrame): number => outputs.reduce((sum, count) => sum + count, 0);

/** What as many pedals as there are outputs are worth at their best. */
function mostAlone(frame: UnitFrame, values: readonly number[], counts: readonly number[]): number {
  const outputs = outputsOf(frame);
  const best = new Float64Array(counts.length);
  for (let at = 0; at < values.length; at += 1) {
    const pedal = frame.solos[at]?.pedal ?? 0;
    best[pedal] = Math.max(best[pedal] ?? 0, values[at] ?? 0);
  }
  const all: number[] = [];
  for (let pedal = 0; pedal < best.length; pedal += 1) {
    const value = best[pedal] ?? 0;
    if (value > 0) for (let copy = Math.min(outputs, counts[pedal] ?? 0); copy > 0; copy -= 1) all.push(value);
  }
  const most = all.length > outputs ? new Float64Array(all).sort().subarray(-outputs) : all;
  let sum = 0;
  for (const value of most) sum += value;
  return sum;
}

function stagesOf(frame: UnitFrame, values: readonly number[], counts: readonly number[]): readonly Stage[] {
  const ways = new Map<number, Way[]>();
  for (let at = 0; at < values.length; at += 1) {
    const [option, value] = [frame.solos[at], values[at] ?? 0];
    if (option === undefined || value <= 0 || (counts[option.pedal] ?? 0) === 0) continue;
    const stride = frame.states.stride(option.banks);
    const fits = frame.states.fits(option.banks);
    const list = remembered(ways, option.pedal, (): Way[] => []);
    if (!list.some((other) => replaces(other, value, stride, option))) list.push({ option, value, stride, fits });
  }
  const outputs = outputsOf(frame);
  for (const list of ways.values()) list.sort((a, b) => b.value - a.value);
  const dearestFirst = [...ways].sort(([, one], [, other]) => (other[0]?.value ?? 0) - (one[0]?.value ?? 0));
  const stages: Stage[] = [];
  for (const [pedal, sorted] of dearestFirst)
    for (let left = Math.min(counts[pedal] ?? 0, outputs); left > 0; left -= 1) stages.push(sorted);
  return stages;
}

const replaces = (other: Way, value: number, stride: number, option: SoloOption): boolean =>
  other.stride === stride &&
  other.value >= value &&
  other.option.weights.every((weight, at) => weight <= (option.weights[at] ?? 0));

/** What the stages from each on can still add, by the outputs that are in use; prices are already paid. */
type Table = {
  readonly stages: readonly Stage[];
  /** By stage and way what is left of its value. */
  readonly nets: readonly (readonly number[])[];
  readonly rests: Float64Array;
  readonly most: number;
  readonly frame: UnitFrame;
};

function tableOf(frame: UnitFrame, stages: readonly Stage[], prices: readonly number[]): Table {
  const { count: states } = frame.states;
  const nets = stages.map((ways) => ways.map((way) => netOf(way, prices)));
  const rests = new Float64Array((stages.length + 1) * states);
  for (let stage = stages.length - 1; stage >= 0; stage -= 1) {
    const [here, next] = [stage * states, (stage + 1) * states];
    rests.copyWithin(here, next, next + states);
    const [ways, own] = [stages[stage] ?? [], nets[stage] ?? []];
    for (let at = 0; at < ways.length; at += 1) {
      const [way, net] = [ways[at], own[at] ?? 0];
      if (way === undefined || net <= 0) continue;
      const { stride, fits } = way;
      for (let state = 0; state < states; state += 1) {
        if (fits[state] === 0) continue;
        const value = net + (rests[next + state + stride] ?? 0);
        if (value > (rests[here + state] ?? 0)) rests[here + state] = value;
      }
    }
  }
  return { stages, nets, rests, most: rests[0] ?? 0, frame };
}

function netOf({ value, option }: Way, prices: readonly number[]): number {
  let net = value;
  for (let at = 0; at < prices.length; at += 1) net -= paid(prices[at] ?? 0, option.weights[at] ?? 0);
  return net;
}

/** The options that the table's most is made of. */
function pickedFrom({ stages, nets, rests, frame }: Table): readonly Priced[] {
  const picked: Priced[] = [];
  const { count: states } = frame.states;
  let state = 0;
  for (const [stage, ways] of stages.entries()) {
    const rest = rests[stage * states + state] ?? 0;
    if (rest === (rests[(stage + 1) * states + state] ?? 0)) continue;
    const netAt = (at: number): number => nets[stage]?.[at] ?? 0;
    const at = ways.findIndex(
      ({ stride, fits }, index) =>
        netAt(index) > 0 &&
        fits[state] === 1 &&
        netAt(index) + (rests[(stage + 1) * states + state + stride] ?? 0) === rest,
    );
    const way = ways[at];
    if (way === undefined) continue;
    picked.push({ way, net: netAt(at) });
    state += way.stride;
  }
  return picked;
}

/** A price between one at which a limit is broken and one at which it holds; Infinity while none is known that holds. */
type Bracket = { readonly broken: number; readonly holds: number; readonly price: number };

/** Dearer where more is used than there is, cheaper where there is some left: by halves once it has been both. */
function nextBracket({ broken, holds, price }: Bracket, exceeded: boolean, guess: number): Bracket {
  if (!exceeded) return price === 0 ? { broken, holds, price } : { broken, holds: price, price: (broken + price) / 2 };
  return { broken: price, holds, price: holds === Infinity ? Math.max(guess, price * 2) : (price + holds) / 2 };
}

/** A part of a content: what it is worth and what it leaves of the limits. */
type Label = {
  readonly value: number;
  readonly net: number;
  readonly rooms: readonly number[];
  readonly option: SoloOption | null;
  readonly before: Label | null;
};

/**
 * Stage by stage all parts that may become something better than the floor, by the outputs that they take; of two that
 * take the same outputs the one that is worth no more and leaves no more is dropped. Prices of limits take it that all of them is
 * used: where too little is left to use it up, what the rest can add for nothing says more.
 */
function searched(table: Table, unpriced: Table, floor: number, bound: number): Filling<SoloOption> {
  const { frame, stages, nets, rests } = table;
  const { count: states } = frame.states;
  const slack = bound - table.most;
  let best: Label = { value: floor, net: 0, rooms: [], option: null, before: null };
  let labels = new Map<number, readonly Label[]>([
    [0, [{ value: 0, net: 0, rooms: frame.capacities, option: null, before: null }]],
  ]);
  for (const [stage, ways] of stages.entries()) {
    const next = new Map<number, Label[]>();
    const keep = (state: number, label: Label): void => {
      if (label.value > best.value) best = label;
      const at = (stage + 1) * states + state;
      const most = Math.min(label.net + slack + (rests[at] ?? 0), label.value + (unpriced.rests[at] ?? 0));
      if (most <= best.value) return;
      remembered(next, state, (): Label[] => []).push(label);
    };
    const grow = (state: number, label: Label): void => {
      for (const [at, way] of ways.entries()) {
        const longer = way.fits[state] === 1 ? withOption(label, way, nets[stage]?.[at] ?? 0) : null;
        if (longer !== null) keep(state + way.stride, longer);
      }
      keep(state, label);
    };
    for (const [state, list] of labels) for (const label of list) grow(state, label);
    labels = new Map([...next].map(([state, list]) => [state, undominated(list)]));
    const count = [...labels.values()].reduce((sum, { length }) => sum + length, 0);
    if (count > mostLabels) return { bound, found: null };
  }
  if (best.option === null) return { bound: floor, found: null };
  const contents: SoloOption[] = [];
  for (let label: Label | null = best; label !== null; label = label.before) {
    if (label.option !== null) contents.push(label.option);
  }
  return { bound: best.value, found: { value: best.value, contents } };
}

/** Those that no other replaces, those that leave the most of the first limit first. */
function undominated(labels: Label[]): readonly Label[] {
  labels.sort((one, other) => (other.rooms[0] ?? 0) - (one.rooms[0] ?? 0) || other.value - one.value);
  const kept: Label[] = [];
  let most = -Infinity;
  for (const label of labels) {
    const isKept = label.rooms.length < 2 ? label.value > most : !kept.some((other) => replacesLabel(other, label));
    if (!isKept) continue;
    kept.push(label);
    most = label.value;
  }
  return kept;
}

/** The label with one pedal more; null when a limit cannot bear it. */
function withOption(before: Label, { option, value }: Way, net: number): Label | null {
  if (option.weights.some((weight, at) => weight > (before.rooms[at] ?? 0))) return null;
  const rooms = before.rooms.map((room, at) => room - (option.weights[at] ?? 0));
  return { value: before.value + value, net: before.net + net, rooms, option, before };
}

const replacesLabel = (other: Label, label: Label): boolean =>
  other.value >= label.value && other.rooms.every((room, at) => room >= (label.rooms[at] ?? 0));

import type { Frame, SoloOption } from './frame.js';
import { placeValue } from './chain-pattern.js';
import type { Tags } from './tags.js';

/** What a unit is filled with, and what that is worth. */
export type Filling<Content> = {
  /** No filling is worth more. */
  readonly bound: number;
  /** A filling that is worth more than the floor; null when there is none or none was found in time. */
  readonly found: { readonly value: number; readonly contents: readonly Content[] } | null;
};

/** An option with its value, its value less the prices of the limits that it uses, and the outputs that it takes. */
type Priced = {
  readonly option: SoloOption;
  readonly value: number;
  readonly net: number;
  /** By how much it moves on the state that numbers the outputs in use. */
  readonly stride: number;
};

/** Steps of the search that minds totals; one that takes more gives up and leaves its bound. */
const stepLimit = 20_000;
/** How often the prices of totals are tried anew. */
const priceRounds = 6;

/**
 * The most that pedals by themselves are worth on one unit. Over the pedals and the numbers of outputs in use of every
 * bank a table says what the rest can still add ("Dynamic programming", 1957); totals have prices, as in "Lagrangian
 * relaxation for integer programming", 1974, and where these leave a gap, a search that the table bounds closes it.
 */
export function fillWithSolos(
  frame: Frame,
  tags: Tags,
  counts: readonly number[],
  floor: number,
): Filling<SoloOption> {
  const strides = stridesOf(frame.outputs);
  const stages = stagesOf(frame, tags, counts, strides);
  let prices: readonly number[] = frame.capacities.map(() => 0);
  let best: { bound: number; table: Table } | null = null;
  let rate = 1;
  for (let round = 0; round < priceRounds; round += 1) {
    const table = tableOf(frame, stages, prices, strides);
    const bound = table.most + priceOfCapacities(frame, prices);
    if (best === null || bound < best.bound) best = { bound, table };
    if (bound <= floor) return { bound, found: null };
    const picked = pickedFrom(table);
    const used = frame.capacities.map((_, at) => picked.reduce((sum, { option }) => sum + (option.weights[at] ?? 0), 0));
    if (used.every((weight, at) => weight <= (frame.capacities[at] ?? 0))) {
      const value = picked.reduce((sum, each) => sum + each.value, 0);
      if (value > floor) {
        const exact = prices.every((price) => price === 0) || value === bound;
        if (exact || round > 0) {
          return { bound: exact ? value : best.bound, found: { value, contents: picked.map(({ option }) => option) } };
        }
      }
    }
    if (used.every((weight, at) => weight <= (frame.capacities[at] ?? 0)) && prices.every((price) => price === 0)) break;
    prices = nextPrices(frame, prices, used, table.most, rate);
    rate /= 1.5;
  }
  return best === null ? { bound: 0, found: null } : searched(frame, best.table, floor, best.bound);
}

function stridesOf(outputs: readonly number[]): readonly number[] {
  const strides: number[] = [];
  let stride = 1;
  for (const count of outputs) {
    strides.push(stride);
    stride *= count + 1;
  }
  return [...strides, stride];
}

/** One stage a pedal that is worth anything: the ways in which it may hang, the most valuable first. */
type Stage = readonly Omit<Priced, 'net'>[];

function stagesOf(
  frame: Frame,
  tags: Tags,
  counts: readonly number[],
  strides: readonly number[],
): readonly Stage[] {
  const ways = new Map<number, Omit<Priced, 'net'>[]>();
  for (const option of frame.solos) {
    const value = placeValue(option, tags);
    if (value <= 0 || (counts[option.pedal] ?? 0) === 0) continue;
    const stride = option.banks.reduce((sum, bank) => sum + (strides[bank] ?? 0), 0);
    const list = ways.get(option.pedal) ?? [];
    if (list.length === 0) ways.set(option.pedal, list);
    if (!list.some((other) => replaces(other, value, stride, option))) list.push({ option, value, stride });
  }
  const outputs = frame.outputs.reduce((sum, count) => sum + count, 0);
  return [...ways].flatMap(([pedal, list]) => {
    const sorted = list.sort((a, b) => b.value - a.value);
    return Array.from({ length: Math.min(counts[pedal] ?? 0, outputs) }, () => sorted);
  });
}

const replaces = (other: Omit<Priced, 'net'>, value: number, stride: number, option: SoloOption): boolean =>
  other.stride === stride &&
  other.value >= value &&
  other.option.weights.every((weight, at) => weight <= (option.weights[at] ?? 0));

/** What the stages from each on can still add, by the outputs that are in use; prices are already paid. */
type Table = {
  readonly stages: readonly (readonly Priced[])[];
  readonly states: number;
  readonly rests: Float64Array;
  readonly most: number;
  readonly frame: Frame;
  readonly strides: readonly number[];
};

/** A price that never comes to more than it should for a weight, nor to less for a capacity, whatever is rounded. */
const paid = (price: number, weight: number): number => Math.max(0, Math.floor(price * weight * (1 - 2 ** -50)));
const priceOfCapacities = ({ capacities }: Frame, prices: readonly number[]): number =>
  capacities.reduce((sum, capacity, at) => sum + Math.ceil((prices[at] ?? 0) * capacity * (1 + 2 ** -50)), 0);

function tableOf(frame: Frame, ways: readonly Stage[], prices: readonly number[], strides: readonly number[]): Table {
  const free = prices.every((price) => price === 0);
  const stages = ways.map((stage) =>
    stage.map((each) => ({
      ...each,
      net: free
        ? each.value
        : each.value - each.option.weights.reduce((sum, weight, at) => sum + paid(prices[at] ?? 0, weight), 0),
    })),
  );
  const states = strides.at(-1) ?? 1;
  const rests = new Float64Array((stages.length + 1) * states);
  const fits = fitsBy(frame.outputs, strides, states);
  for (let stage = stages.length - 1; stage >= 0; stage -= 1) {
    const [here, next] = [stage * states, (stage + 1) * states];
    rests.copyWithin(here, next, next + states);
    for (const { net, stride, option } of stages[stage] ?? []) {
      if (net <= 0) continue;
      const room = fits(option.banks);
      for (let state = 0; state < states; state += 1) {
        if (room[state] === 0) continue;
        const value = net + (rests[next + state + stride] ?? 0);
        if (value > (rests[here + state] ?? 0)) rests[here + state] = value;
      }
    }
  }
  return { stages, states, rests, most: rests[0] ?? 0, frame, strides };
}

/** Whether outputs of given banks are still free, by state. */
function fitsBy(
  outputs: readonly number[],
  strides: readonly number[],
  states: number,
): (banks: readonly number[]) => Uint8Array {
  const known = new Map<string, Uint8Array>();
  return (banks) => {
    const key = banks.join();
    let room = known.get(key);
    if (room === undefined) {
      room = Uint8Array.from({ length: states }, (_, state) => {
        const enough = banks.every((bank) => {
          const used = Math.floor(state / (strides[bank] ?? 1)) % ((outputs[bank] ?? 0) + 1);
          return used + banks.filter((each) => each === bank).length <= (outputs[bank] ?? 0);
        });
        return enough ? 1 : 0;
      });
      known.set(key, room);
    }
    return room;
  };
}

/** The options that the table's most is made of. */
function pickedFrom({ stages, states, rests, frame, strides }: Table): readonly Priced[] {
  const picked: Priced[] = [];
  const fits = fitsBy(frame.outputs, strides, states);
  let state = 0;
  for (const [stage, ways] of stages.entries()) {
    const rest = rests[stage * states + state] ?? 0;
    if (rest === (rests[(stage + 1) * states + state] ?? 0)) continue;
    const way = ways.find(
      ({ net, stride, option }) =>
        net > 0 && fits(option.banks)[state] === 1 && net + (rests[(stage + 1) * states + state + stride] ?? 0) === rest,
    );
    if (way === undefined) continue;
    picked.push(way);
    state += way.stride;
  }
  return picked;
}

/** Dearer where more is used than there is, cheaper where there is some left. */
function nextPrices(
  { capacities }: Frame,
  prices: readonly number[],
  used: readonly number[],
  most: number,
  rate: number,
): readonly number[] {
  return capacities.map((capacity, at) => {
    const excess = ((used[at] ?? 0) - capacity) / Math.max(1, capacity);
    return Math.max(0, (prices[at] ?? 0) + (rate * excess * most) / Math.max(1, capacity));
  });
}

/** Depth first over the stages with the totals kept; the table says where nothing better can come. */
function searched(frame: Frame, table: Table, floor: number, bound: number): Filling<SoloOption> {
  const { stages, states, rests, strides } = table;
  const fits = fitsBy(frame.outputs, strides, states);
  const slack = bound - table.most;
  const rooms = [...frame.capacities];
  const chosen: SoloOption[] = [];
  let best = floor;
  let found: { value: number; contents: readonly SoloOption[] } | null = null;
  let steps = 0;
  const walk = (stage: number, state: number, value: number, net: number): void => {
    if (value > best) {
      best = value;
      found = { value, contents: [...chosen] };
    }
    if (stage >= stages.length || net + slack + (rests[stage * states + state] ?? 0) <= best) return;
    if ((steps += 1) > stepLimit) return;
    for (const way of stages[stage] ?? []) {
      const { option, stride } = way;
      if (fits(option.banks)[state] !== 1) continue;
      if (option.weights.some((weight, at) => weight > (rooms[at] ?? 0))) continue;
      option.weights.forEach((weight, at) => (rooms[at] = (rooms[at] ?? 0) - weight));
      chosen.push(option);
      walk(stage + 1, state + stride, value + way.value, net + way.net);
      chosen.pop();
      option.weights.forEach((weight, at) => (rooms[at] = (rooms[at] ?? 0) + weight));
    }
    walk(stage + 1, state, value, net);
  };
  walk(0, 0, 0, 0);
  return { bound: steps > stepLimit ? bound : Math.max(best, 0), found };
}

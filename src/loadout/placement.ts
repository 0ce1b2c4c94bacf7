import { hasOnePlace, type GroundMode } from './ground-mode.js';
import type { SupplyUses } from './supply-uses.js';
import type { OutputSetting } from './uses.js';

/** Something that takes outputs of one unit: a pedal by itself, a join, or a chain with all its pedals. */
export type PlacedItem = {
  readonly outputs: readonly OutputSetting[];
  /** The mode that the unit's common ground must have; null for what hangs on isolated outputs. */
  readonly mode: GroundMode | null;
  readonly weights: readonly bigint[];
  /** How many of its pedals take the place that a ground has for one of them. */
  readonly sole: number;
};

/** How many steps the search takes before it gives up; giving up is never taken for an answer. */
const stepLimit = 50_000;

/**
 * Deals items out to units of one supply, whose common grounds have the given modes, so that every unit keeps its number
 * of outputs, its settings and its totals. Exact: depth first, largest items first, like units tried once.
 * @returns for every unit the places of its items in `items`; null when there is no way or none was found in time.
 */
export function placeItems(
  uses: SupplyUses,
  modes: readonly (GroundMode | null)[],
  items: readonly PlacedItem[],
): readonly (readonly number[])[] | null {
  const units = modes.map((mode) => new FillingUnit(uses, mode));
  const order = items.map((_, index) => index).sort((a, b) => compareItems(items[a], items[b]));
  let steps = 0;
  const place = (depth: number): boolean => {
    const index = order[depth];
    if (index === undefined) return true;
    const item = items[index];
    if (item === undefined) return false;
    const tried = new Set<string>();
    for (const unit of units) {
      const state = unit.state();
      if (tried.has(state) || !unit.fits(item)) continue;
      tried.add(state);
      if (++steps > stepLimit) return false;
      unit.add(item, index);
      if (place(depth + 1)) return true;
      unit.remove(item);
    }
    return false;
  };
  return place(0) ? units.map(({ contents }) => contents) : null;
}

/** Joins first, then the heaviest on any limit. */
function compareItems(first: PlacedItem | undefined, second: PlacedItem | undefined): number {
  if (first === undefined || second === undefined) return 0;
  if (first.outputs.length !== second.outputs.length) return second.outputs.length - first.outputs.length;
  for (const [index, weight] of first.weights.entries()) {
    const other = second.weights[index] ?? 0n;
    if (weight !== other) return weight > other ? -1 : 1;
  }
  return 0;
}

/** One unit while it is being filled. */
export class FillingUnit {
  readonly contents: number[] = [];
  readonly uses: SupplyUses;
  readonly #mode: GroundMode | null;
  readonly #free: number[];
  readonly #room: bigint[];
  /** Per bank, how many of its outputs in use stand at each setting. */
  readonly #settings: Map<number, number>[];
  #sole: number;

  constructor(uses: SupplyUses, mode: GroundMode | null) {
    this.uses = uses;
    this.#mode = mode;
    this.#free = uses.supply.banks.map(({ outputs }) => outputs);
    this.#room = uses.limits.map(({ capacity }) => capacity);
    this.#settings = uses.supply.banks.map(() => new Map<number, number>());
    this.#sole = hasOnePlace(mode) ? 1 : 0;
  }

  /** What decides whether an item fits, as a key: units of equal state are alike. */
  state(): string {
    const settings = this.#settings.map((used) => [...used.entries()].filter(([, count]) => count > 0).sort());
    return JSON.stringify([this.#mode, this.#free, this.#room.map(String), settings, this.#sole]);
  }

  /** Whether the item can be added as things are. */
  fits(item: PlacedItem): boolean {
    if (item.mode !== null && !sameMode(item.mode, this.#mode)) return false;
    if (item.sole > this.#sole && item.mode !== null) return false;
    if (item.weights.some((weight, index) => weight > (this.#room[index] ?? 0n))) return false;
    return item.outputs.every((output, index) => this.#outputFits(output, item.outputs, index));
  }

  #outputFits({ bank, setting }: OutputSetting, all: readonly OutputSetting[], index: number): boolean {
    const taken = all.slice(0, index).filter((other) => other.bank === bank).length;
    if ((this.#free[bank] ?? 0) <= taken) return false;
    if (this.uses.supply.banks[bank]?.switching !== 'together') return true;
    return [...(this.#settings[bank] ?? [])].every(([other, count]) => count === 0 || other === setting);
  }

  /** Adds an item that fits, under the number by which `contents` shall name it. */
  add(item: PlacedItem, index: number): void {
    this.contents.push(index);
    this.#change(item, 1);
  }

  /** Takes the item back that was added last. */
  remove(item: PlacedItem): void {
    this.contents.pop();
    this.#change(item, -1);
  }

  #change(item: PlacedItem, by: 1 | -1): void {
    for (const { bank, setting } of item.outputs) {
      this.#free[bank] = (this.#free[bank] ?? 0) - by;
      const used = this.#settings[bank];
      used?.set(setting, (used.get(setting) ?? 0) + by);
    }
    for (const [index, weight] of item.weights.entries()) {
      this.#room[index] = (this.#room[index] ?? 0n) - BigInt(by) * weight;
    }
    if (item.mode !== null) this.#sole -= by * item.sole;
  }
}

const sameMode = (first: GroundMode, second: GroundMode | null): boolean =>
  second !== null && first.ground === second.ground && first.noise === second.noise;

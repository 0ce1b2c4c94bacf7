import { grown } from '../../solver/cover/sparse-columns.js';

/** What the pedals of a beginning add up to. */
export type Sums = {
  readonly value: number;
  readonly load: number;
  readonly surge: number;
  /** How many of them are digital ones of which a `sole` chain holds one: none or one. */
  readonly soles: number;
};

/**
 * Beginnings of chains, numbered from 0, which is the one without pedals. One list of them serves search after search: there are so
 * many that getting memory for each would take longer than all that is done with it.
 */
export class Beginnings {
  #values = new Float64Array(256);
  #loads = new Float64Array(256);
  #surges = new Float64Array(256);
  #soles = new Uint8Array(256);
  #items = new Int32Array(256);
  #befores = new Int32Array(256);
  #count = 1;

  /** Forgets all but the one without pedals. */
  clear(): void {
    this.#count = 1;
  }

  value(of: number): number {
    return this.#values[of] ?? 0;
  }

  load(of: number): number {
    return this.#loads[of] ?? 0;
  }

  surge(of: number): number {
    return this.#surges[of] ?? 0;
  }

  soles(of: number): number {
    return this.#soles[of] ?? 0;
  }

  /** Keeps a beginning that has one item more than another. @returns its number. */
  add({ value, load, surge, soles }: Sums, item: number, before: number): number {
    const place = this.#count;
    if (place >= this.#values.length) this.#grow(2 * place);
    this.#values[place] = value;
    this.#loads[place] = load;
    this.#surges[place] = surge;
    this.#soles[place] = soles;
    this.#items[place] = item;
    this.#befores[place] = before;
    this.#count += 1;
    return place;
  }

  #grow(length: number): void {
    this.#values = grown(this.#values, new Float64Array(length));
    this.#loads = grown(this.#loads, new Float64Array(length));
    this.#surges = grown(this.#surges, new Float64Array(length));
    this.#soles = grown(this.#soles, new Uint8Array(length));
    this.#items = grown(this.#items, new Int32Array(length));
    this.#befores = grown(this.#befores, new Int32Array(length));
  }

  /** The items of a beginning, the first one first. */
  items(of: number): readonly number[] {
    const items: number[] = [];
    for (let at = of; at > 0; at = this.#befores[at] ?? 0) items.unshift(this.#items[at] ?? 0);
    return items;
  }

  /**
   * Two lists of beginnings as long as one another as one, the least load first, as both are. Of two of which one is worth no more and
   * draws no less it is dropped ("Discrete dynamic programming and capital allocation", 1969).
   */
  merged(one: readonly number[], other: readonly number[]): readonly number[] {
    const kept: number[] = [];
    const [without, withSole] = [new Frontier(), new Frontier()];
    for (let [at, next] = [0, 0]; at < one.length || next < other.length;) {
      const [first, second] = [one[at] ?? -1, other[next] ?? -1];
      const isFirst = second < 0 || (first >= 0 && this.#isLess(first, second));
      if (isFirst) at += 1;
      else next += 1;
      const beginning = isFirst ? first : second;
      const [value, surge] = [this.value(beginning), this.surge(beginning)];
      if (without.replaces(value, surge)) continue;
      if (this.soles(beginning) > 0) {
        if (withSole.replaces(value, surge)) continue;
        withSole.add(value, surge);
      } else without.add(value, surge);
      kept.push(beginning);
    }
    return kept;
  }

  /** Whether the one draws less, or as much and is worth no less. */
  #isLess(one: number, other: number): boolean {
    const difference = this.load(one) - this.load(other);
    return difference < 0 || (difference === 0 && this.value(one) >= this.value(other));
  }
}

/** Values, and what they take at switch-on, of which none replaces another: the greatest value, and with it the greatest surge, last. */
class Frontier {
  readonly #values: number[] = [];
  readonly #surges: number[] = [];

  /** Whether anything here is worth no less and takes no more at switch-on. */
  replaces(value: number, surge: number): boolean {
    for (let at = this.#values.length - 1; at >= 0 && (this.#values[at] ?? 0) >= value; at -= 1)
      if ((this.#surges[at] ?? 0) <= surge) return true;
    return false;
  }

  /** Takes in what nothing here replaces. */
  add(value: number, surge: number): void {
    let to = this.#values.length;
    while (to > 0 && (this.#values[to - 1] ?? 0) > value) to -= 1;
    let from = to;
    while (from > 0 && (this.#surges[from - 1] ?? 0) >= surge) from -= 1;
    this.#values.splice(from, to - from, value);
    this.#surges.splice(from, to - from, surge);
  }
}

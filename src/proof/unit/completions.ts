import type { CaseModel } from './case-model.js';
import { rentOf, type CaseRents } from './rents.js';

/** A pedal by itself, on one output or on two that are joined. */
export type Single = { readonly worth: number; readonly banks: readonly number[]; readonly burdens: readonly number[] };

/** One a pedal: the ways in which it can be fed. */
export type Stage = readonly Single[];

/** No more than this can be added from a stage on to what leaves so many outputs of each bank, and so much of each total. */
export type Completion = (at: number, outputs: readonly number[], caps: readonly number[]) => number;

/**
 * Bounds by tables, which are made when they are asked for, those first that mostly bound best. Each has rents for the totals
 * in place of their limits, whole shares of those given; for such rents a table tells exactly what outputs can carry.
 */
export function completionsOf(
  stages: readonly Stage[],
  { outputs }: CaseModel,
  { caps }: CaseRents,
): readonly Completion[] {
  const places = placesOf(outputs);
  const wished = shares.map((share) => caps.map((rent) => Math.floor(rent * share)));
  const unlike = new Map(wished.map((rents) => [rents.join(), rents]));
  return [...unlike.values()].map((rents) => {
    let tables: readonly Float64Array[] | null = null;
    return (at, left, rest) => {
      tables ??= tablesOf(stages, rents, places);
      return (tables[at]?.[places.of(left)] ?? 0) + rentOf(rest, rents);
    };
  });
}

/** The rents given suit what is left at first. Where much of a total is left over others are better, or where it is scarce. */
const shares = [1, 0, 0.5, 0.75, 0.875, 1.125, 1.25, 1.5, 2];

/** Tables have a place for each number of outputs that is left of each bank; of all banks together where that is too many. */
type Places = {
  readonly size: number;
  readonly of: (outputs: readonly number[]) => number;
  /** Whether at a place there are outputs of all these banks, and where what they leave stands; the same bank may come twice. */
  readonly behind: (banks: readonly number[]) => {
    readonly fits: (place: number) => boolean;
    readonly back: number;
  };
};
const mostPlaces = 2_000;

function placesOf(outputs: readonly number[]): Places {
  const isApart = outputs.reduce((product, count) => product * (count + 1), 1) <= mostPlaces;
  const counts = isApart ? outputs : [outputs.reduce((sum, count) => sum + count, 0)];
  const strides = counts.map((_, index) => counts.slice(0, index).reduce((product, count) => product * (count + 1), 1));
  const pooled = (bank: number): number => (isApart ? bank : 0);
  const strideOf = (bank: number): number => strides[pooled(bank)] ?? 0;
  return {
    size: counts.reduce((product, count) => product * (count + 1), 1),
    of: (left) => left.reduce((sum, count, bank) => sum + count * strideOf(bank), 0),
    behind: (banks) => {
      const taken = counts.map((_, index) => banks.filter((bank) => pooled(bank) === index).length);
      const leftAt = (place: number, index: number): number =>
        Math.floor(place / (strides[index] ?? 1)) % ((counts[index] ?? 0) + 1);
      return {
        fits: (place) => taken.every((count, index) => count <= leftAt(place, index)),
        back: banks.reduce((sum, bank) => sum + strideOf(bank), 0),
      };
    },
  };
}

/** By stage and place: the most that the pedals from there on are worth after the rents of totals. */
function tablesOf(stages: readonly Stage[], rents: readonly number[], places: Places): readonly Float64Array[] {
  let after = new Float64Array(places.size);
  const tables = [after];
  for (const stage of stages.toReversed()) {
    const own = after.slice();
    for (const { worth, banks, burdens } of stage) {
      const adds = worth - rentOf(burdens, rents);
      if (adds <= 0) continue;
      const { fits, back } = places.behind(banks);
      for (let place = back; place < places.size; place += 1) {
        const sum = adds + (after[place - back] ?? 0);
        if (sum > (own[place] ?? 0) && fits(place)) own[place] = sum;
      }
    }
    tables.unshift(own);
    after = own;
  }
  return tables;
}

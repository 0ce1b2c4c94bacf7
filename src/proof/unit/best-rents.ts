import type { CaseModel } from './case-model.js';
import { packingProgram, solve, type PackingColumn, type PackingProgram } from './packing-program.js';
import { boundOf, type Bound, type Filled, type CaseRents } from './rents.js';
import type { CaseValues } from './values.js';

/** The search for good rents of one case, kept from one set of tags to the next. */
export type RentSearch = {
  readonly program: PackingProgram;
  /** The chains that stand behind the columns after those of the places. */
  readonly chains: Filled[];
};

export function rentSearch(model: CaseModel): RentSearch {
  const program = packingProgram([...model.counts, ...model.outputs, ...model.caps.map(() => 1)]);
  program.columns.push(...model.places.map(({ item, banks, burdens }) => columnOf(model, [item], banks, burdens)));
  return { program, chains: [] };
}

const mostRounds = 60;

/**
 * Rents whose bound is about as low as rents can make it, found by linear programming over chains that come in as they are
 * needed. Stops early when the bound does not exceed `enough` steps.
 */
export function bestRents(model: CaseModel, values: CaseValues, search: RentSearch, enough: number): Bound {
  let best: Bound | null = null;
  for (let round = 0; round < mostRounds; round += 1) {
    const prices = solve(search.program, worthsOf(values, search));
    const bound = boundOf(model, values, rentsAt(model, prices));
    const isBetter = best === null || bound.most < best.most;
    if (best === null || isBetter) best = bound;
    const known = search.chains.length;
    if (best.most <= enough) return best;
    for (const filled of bound.chains) addChain(model, values, search, filled, prices);
    if (search.chains.length === known) return best;
  }
  return best ?? boundOf(model, values, { items: [], banks: [], caps: [] });
}

function rentsAt({ counts, outputs, caps }: CaseModel, prices: Float64Array): CaseRents {
  const part = (from: number, length: number): number[] => [...prices.subarray(from, from + length)];
  return {
    items: part(0, counts.length),
    banks: part(counts.length, outputs.length),
    // A row of a total is in shares of the whole.
    caps: part(counts.length + outputs.length, caps.length).map(
      (price, index) => price / Math.max(1, caps[index] ?? 1),
    ),
  };
}

function worthsOf(values: CaseValues, { chains }: RentSearch): readonly number[] {
  // What cannot be had may still be in the basis from before: a loss drives it out.
  const least = -2 * values.ceiling;
  return [...values.places, ...chains.map((filled) => worthOf(values, filled))].map((worth) => Math.max(worth, least));
}

function worthOf(values: CaseValues, { chain, links }: Filled): number {
  const worths = values.links[chain] ?? [];
  const sum = links.reduce((total, link) => total + (worths[link] ?? -Infinity), 0);
  return sum - (values.leads[chain]?.[links.length] ?? Infinity);
}

/** Takes a chain in when it is worth more than the prices of what it takes. */
function addChain(
  model: CaseModel,
  values: CaseValues,
  search: RentSearch,
  filled: Filled,
  prices: Float64Array,
): void {
  const chain = model.chains[filled.chain];
  if (chain === undefined) return;
  const links = filled.links.flatMap((link) => chain.links[link] ?? []);
  const burdens = model.caps.map((_, index) =>
    links.reduce((sum, link) => sum + (link.burdens[index] ?? 0), chain.burdens[index] ?? 0),
  );
  const column = columnOf(
    model,
    links.map(({ item }) => item),
    [chain.bank],
    burdens,
  );
  const price = column.rows.reduce((sum, row, entry) => sum + (prices[row] ?? 0) * (column.amounts[entry] ?? 0), 0);
  const worth = worthOf(values, filled);
  if (worth - price <= Math.max(1, worth) * 1e-9) return;
  search.chains.push(filled);
  search.program.columns.push(column);
}

function columnOf(
  { counts, outputs, caps }: CaseModel,
  items: readonly number[],
  banks: readonly number[],
  burdens: readonly number[],
): PackingColumn {
  const entries = new Map<number, number>();
  const add = (row: number, amount: number): void => {
    if (amount > 0) entries.set(row, (entries.get(row) ?? 0) + amount);
  };
  for (const item of items) add(item, 1);
  for (const bank of banks) add(counts.length + bank, 1);
  for (const [index, burden] of burdens.entries())
    add(counts.length + outputs.length + index, burden / Math.max(1, caps[index] ?? 1));
  return { rows: [...entries.keys()], amounts: [...entries.values()] };
}

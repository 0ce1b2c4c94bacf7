import type { CaseModel } from './case-model.js';
import { searchChains } from './search-chains.js';
import type { CaseValues } from './values.js';

/** Whole, nonnegative rents: of a pedal of each item, of an output of each bank, of a step of each total. */
export type CaseRents = {
  readonly items: readonly number[];
  readonly banks: readonly number[];
  readonly caps: readonly number[];
};

/** A chain that could hang on an output: its links, one entry a pedal. */
export type Filled = { readonly chain: number; readonly links: readonly number[] };

/** No content is worth more than `most` steps: nothing that fills outputs is worth more than the rents of what it takes. */
export type Bound = { readonly most: number; readonly rents: CaseRents; readonly chains: readonly Filled[] };

/**
 * The bound that rents of pedals and totals give, whatever they are: the outputs' rents are made so high that nothing is
 * worth more than its rents. `wished` rents may be any numbers; `chains` are the best ones under them.
 */
export function boundOf(model: CaseModel, values: CaseValues, wished: CaseRents): Bound {
  // Beyond these no rent makes sense, and sums of rents would not be exact.
  const { bests, ceiling } = values;
  const items = wished.items.map((rent, item) => wholeRent(rent, bests[item] ?? 0));
  const caps = wished.caps.map((rent, index) => wholeRent(rent, ceiling / Math.max(1, model.caps[index] ?? 1)));
  const banks = model.outputs.map(() => 0);
  const raise = (bank: number, rent: number): void => {
    banks[bank] = Math.max(banks[bank] ?? 0, rent);
  };
  for (const [index, { item, banks: taken, burdens }] of model.places.entries()) {
    const adds = (values.places[index] ?? -Infinity) - (items[item] ?? 0) - rentOf(burdens, caps);
    const [bank = 0] = taken;
    if (taken.length === 1) raise(bank, adds);
    else for (const each of taken) raise(each, wholeRent(wished.banks[each] ?? 0, ceiling));
  }
  const chains = model.chains.flatMap((_, chain) => bestChain(model, values, { items, banks, caps }, chain, raise));
  raiseForJoins(model, values, { items, banks, caps });
  return { most: totalOf(model, { items, banks, caps }), rents: { items, banks, caps }, chains };
}

const wholeRent = (rent: number, most: number): number => (rent > 0 ? Math.floor(Math.min(Math.round(rent), most)) : 0);

export const rentOf = (burdens: readonly number[], caps: readonly number[]): number =>
  burdens.reduce((sum, burden, index) => sum + burden * (caps[index] ?? 0), 0);

function bestChain(
  model: CaseModel,
  values: CaseValues,
  rents: CaseRents,
  chain: number,
  raise: (bank: number, rent: number) => void,
): readonly Filled[] {
  const shape = model.chains[chain];
  if (shape === undefined) return [];
  let best: readonly number[] = [];
  searchChains(shape, chainWorth(model, values, rents, chain), (rents.banks[shape.bank] ?? 0) + 1, (links, adds) => {
    best = [...links];
    raise(shape.bank, adds);
    return adds + 1;
  });
  return best.length === 0 ? [] : [{ chain, links: best }];
}

/** What the pedals of a chain are worth after their rents. */
export function chainWorth(model: CaseModel, values: CaseValues, { items, caps }: CaseRents, chain: number) {
  const worths = values.links[chain] ?? [];
  const { links = [], burdens: own = [] } = model.chains[chain] ?? {};
  const beside = rentOf(own, caps);
  return {
    links: links.map(
      ({ item, burdens }, link) => (worths[link] ?? -Infinity) - (items[item] ?? 0) - rentOf(burdens, caps),
    ),
    idle: worths.map((worth) => worth <= 0),
    leads: (values.leads[chain] ?? []).map((cost) => cost + beside),
  };
}

/** A join may still be worth more than its two outputs: then its pedal's rent is raised. */
function raiseForJoins(model: CaseModel, values: CaseValues, { items, banks, caps }: CaseRents): void {
  const raised = items as number[];
  for (const [index, { item, banks: taken, burdens }] of model.places.entries()) {
    if (taken.length === 1) continue;
    const outputs = taken.reduce((sum, bank) => sum + (banks[bank] ?? 0), 0);
    const worth = (values.places[index] ?? -Infinity) - rentOf(burdens, caps) - outputs;
    raised[item] = Math.max(raised[item] ?? 0, worth);
  }
}

function totalOf({ counts, outputs, caps: mosts }: CaseModel, { items, banks, caps }: CaseRents): number {
  const product = (amounts: readonly number[], rents: readonly number[]): number =>
    amounts.reduce((sum, amount, index) => sum + amount * (rents[index] ?? 0), 0);
  return product(counts, items) + product(outputs, banks) + product(mosts, caps);
}

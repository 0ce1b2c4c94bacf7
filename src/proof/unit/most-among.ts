import { Flaw } from '../flaw.js';
import { bestRents, rentSearch, type RentSearch } from './best-rents.js';
import type { CaseTree } from './cases.js';
import type { CaseModel } from './case-model.js';
import { fillsWithin } from './fills.js';
import { pack } from './pack.js';
import { packSingles } from './pack-singles.js';
import type { Bound } from './rents.js';
import { bestSingle } from './single.js';
import { valuesOf, type CasePrices, type CaseValues } from './values.js';

/** The most that a unit carries: soon, and never too little; or exactly, as far as that does not take too long. */
export type Carried = { readonly bound: number; readonly exactly: () => number };

/** A case with its search for rents, which is begun when it is needed. */
export type SearchTree = {
  readonly model: CaseModel;
  readonly parts: readonly SearchTree[];
  readonly search: () => RentSearch;
};

export function searchTree({ model, parts }: CaseTree): SearchTree {
  let search: RentSearch | null = null;
  return { model, parts: parts.map(searchTree), search: () => (search ??= rentSearch(model)) };
}

export const leavesOf = ({ model, parts }: SearchTree): readonly CaseModel[] =>
  parts.length === 0 ? [model] : parts.flatMap(leavesOf);

/** An exact case of which it is left open whether it carries more than is enough. */
type OpenCase = {
  /** Never too little. */ readonly most: number;
  /** Exactly, or as much as is known to be in another case. */ readonly exactly: (known: number) => number;
};

/** `values` are those of the whole tree, in single steps; nothing below `enough` is told apart from it, and it is not negative. */
export function mostAmong(tree: SearchTree, prices: CasePrices, values: CaseValues, enough: number): Carried {
  const open = [...openCases(tree, prices, values, enough)].sort((one, other) => other.most - one.most);
  let exact: number | null = null;
  return {
    bound: open[0]?.most ?? enough,
    exactly: () =>
      (exact ??= open.reduce(
        (known, { most, exactly }) => (most <= known ? known : Math.min(most, exactly(known))),
        enough,
      )),
  };
}

function openCases(
  { model, parts, search }: SearchTree,
  prices: CasePrices,
  whole: CaseValues,
  enough: number,
): readonly OpenCase[] {
  if (quickBound(model, whole) <= enough) return [];
  const { most, exactly } = isSingle(model)
    ? single(bestSingle(model, prices, enough))
    : withRents(model, prices, whole, search(), enough);
  if (most <= enough) return [];
  if (parts.length === 0) return [{ most, exactly }];
  return parts
    .flatMap((part) => openCases(part, prices, valuesOf(part.model, prices, 1), enough))
    .map((each) => ({ ...each, most: Math.min(each.most, most) }));
}

const isSingle = ({ outputs }: CaseModel): boolean => outputs.reduce((sum, count) => sum + count, 0) === 1;
const single = (most: number): OpenCase => ({ most, exactly: (known) => Math.max(known, most) });

function withRents(
  model: CaseModel,
  prices: CasePrices,
  whole: CaseValues,
  search: RentSearch,
  enough: number,
): OpenCase {
  const steps = stepsFor(model, whole);
  const values = steps === 1 ? whole : valuesOf(model, prices, steps);
  const rented = bestRents(model, values, search, (enough + 1) * steps - 1);
  return {
    most: Math.floor(rented.most / steps),
    exactly: (known) => mostPacked(model, values, rented, steps, known),
  };
}

/** What everything would be worth if each pedal had its best place, as far as there is room. */
function quickBound({ counts, chains, outputs }: CaseModel, { bests, leads }: CaseValues): number {
  const fed = bests.flatMap((worth, item) => Array.from({ length: counts[item] ?? 0 }, () => worth));
  fed.sort((first, second) => second - first);
  const room = outputs.reduce((sum, count, bank) => sum + count * longestOn(chains, bank), 0);
  const paid = leads.flat().reduce((most, cost) => Math.max(most, -cost), 0);
  const leadsPaid = outputs.reduce((sum, count) => sum + count * paid, 0);
  return fed.slice(0, room).reduce((sum, worth) => sum + worth, leadsPaid);
}

const longestOn = (chains: CaseModel['chains'], bank: number): number =>
  chains.reduce(
    (most, chain) =>
      chain.bank === bank ? chain.leads.reduce((longest, { tails }) => Math.max(longest, tails), most) : most,
    1,
  );

/** Sums in steps stay below this, so that they are exact. */
export const largestExact = 2 ** 51;

/** All rents of pedals together, the rent of every output and that of every total are each below the ceiling. */
export const rentsIn = ({ outputs, caps }: CaseModel): number =>
  outputs.reduce((sum, count) => sum + count, 2 + caps.length);

/** How fine the steps of rents can be. @throws Flaw when not even whole numbers are small enough. */
function stepsFor(model: CaseModel, { ceiling }: CaseValues): number {
  const room = largestExact / ceiling / rentsIn(model);
  if (room < 1) throw new Flaw('its numbers are too large to be checked exactly');
  return 2 ** Math.min(20, Math.floor(Math.log2(room)));
}

const mostFills = 20_000;
const mostNodes = 300_000;

/** The exact most above `enough`, found among what loses little against the rents; more and more loss is looked at. */
function mostPacked(model: CaseModel, values: CaseValues, rented: Bound, steps: number, enough: number): number {
  const most = rented.most - (enough + 1) * steps;
  // Where all hang by themselves, what loses much costs the search little.
  const first = model.chains.length === 0 ? most : Math.max(steps, rented.most / 500);
  let cleared = 0;
  for (let spare = Math.min(most, first); ; spare = Math.min(most, spare * 4)) {
    const limit = Math.floor(spare);
    const fills = fillsWithin(model, values, rented, limit, mostFills);
    const packed =
      fills === null
        ? null
        : model.chains.length === 0
          ? packSingles(model, rented, fills, limit, mostNodes)
          : pack(model, rented.rents, fills, limit, { step: steps, mostNodes });
    if (packed?.kind !== 'least') return Math.floor((rented.most - cleared) / steps);
    if (packed.loss !== null) return (rented.most - packed.loss) / steps;
    if (limit >= most) return enough;
    cleared = limit + 1;
  }
}

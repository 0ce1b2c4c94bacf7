import { Flaw } from '../flaw.js';
import { bestRents, rentSearch, type RentSearch } from './best-rents.js';
import { caseTree, type CaseTree } from './cases.js';
import type { CaseModel } from './case-model.js';
import { fillsWithin } from './fills.js';
import { partitionKey, type CaseItem } from './items.js';
import { pack } from './pack.js';
import type { AlikePedals } from './pedal-class.js';
import type { Bound } from './rents.js';
import type { UnitShape } from './shape.js';
import { bestSingle, largestSum } from './single.js';
import { inGrains, valuesOf, type CasePrices, type CaseValues } from './values.js';

/**
 * The most that one unit with a pedal on it can carry: the tags of what hangs on it, less its leads, its exposed pedals and
 * those off their preferred volts. Never too little; too much only when the exact answer would take too long. What does
 * not exceed `enough` is not told apart from it.
 */
export type MostCarried = (items: readonly CaseItem[], prices: Omit<CasePrices, 'tags'>, enough: number) => number;

/** Keeps what it has worked out from one set of tags to the next. */
export function mostCarriedBy(shape: UnitShape, classes: readonly AlikePedals[]): MostCarried {
  const trees = new Map<string, SearchTree>();
  return (items, others, enough) => {
    const prices: CasePrices = { ...others, tags: items.map(({ tag }) => tag) };
    const key = partitionKey(items);
    const tree = trees.get(key) ?? searchTree(caseTree({ shape, items, classes }));
    trees.set(key, tree);
    const grain = grainFor(tree.model, prices, enough);
    if (grain === 1) return mostAbove(tree, prices, enough);
    const floor = Math.floor(enough / grain);
    const most = mostAbove(tree, inGrains(prices, grain), floor);
    return most === floor ? enough : most * grain;
  };
}

function mostAbove(tree: SearchTree, prices: CasePrices, enough: number): number {
  if (enough >= 0) return mostIn(tree, prices, enough);
  // A unit that carries nothing is not in use: where all there is to hang on it is worth less than nothing, the best of
  // that hangs on it by itself.
  const single = leavesOf(tree).reduce((best, model) => bestSingle(model, prices, best), enough);
  return single < 0 ? single : mostIn(tree, prices, single);
}

/** A case with its search for rents, which is begun when it is needed. */
type SearchTree = {
  readonly model: CaseModel;
  readonly parts: readonly SearchTree[];
  readonly search: () => RentSearch;
};

function searchTree({ model, parts }: CaseTree): SearchTree {
  let search: RentSearch | null = null;
  return { model, parts: parts.map(searchTree), search: () => (search ??= rentSearch(model)) };
}

const leavesOf = ({ model, parts }: SearchTree): readonly CaseModel[] =>
  parts.length === 0 ? [model] : parts.flatMap(leavesOf);

function mostIn(tree: SearchTree, prices: CasePrices, enough: number): number {
  const { model } = tree;
  const whole = valuesOf(model, prices, 1);
  if (quickBound(model, whole) <= enough) return enough;
  const steps = stepsFor(model, whole);
  const values = steps === 1 ? whole : valuesOf(model, prices, steps);
  const bound = bestRents(model, values, tree.search(), (enough + 1) * steps - 1);
  if (Math.floor(bound.most / steps) <= enough) return enough;
  if (tree.parts.length === 0) return exactly(model, values, bound, enough, steps);
  const most = tree.parts.reduce((found, part) => mostIn(part, prices, found), enough);
  return Math.min(most, Math.floor(bound.most / steps));
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
const largest = 2 ** 51;

/** All rents of pedals together, the rent of every output and that of every total are each below the ceiling. */
const rentsIn = ({ outputs, caps }: CaseModel): number => outputs.reduce((sum, count) => sum + count, 2 + caps.length);

/** How fine the steps of rents can be. @throws Flaw when not even whole numbers are small enough. */
function stepsFor(model: CaseModel, { ceiling }: CaseValues): number {
  const room = largest / ceiling / rentsIn(model);
  if (room < 1) throw new Flaw('its numbers are too large to be checked exactly');
  return 2 ** Math.min(20, Math.floor(Math.log2(room)));
}

/** How coarsely very large numbers are counted, so that sums of them are exact: a power of 2, mostly 1. */
function grainFor(model: CaseModel, prices: CasePrices, enough: number): number {
  const { ceiling } = valuesOf(model, prices, 1);
  // The cases of the model may have one total more.
  const needed = (ceiling * (rentsIn(model) + 1)) / largest;
  const greatest = enough < 0 ? largestSum(model, prices) / largest : 0;
  return 2 ** Math.max(0, Math.ceil(Math.log2(Math.max(needed, greatest))));
}

const mostFills = 20_000;
const mostNodes = 300_000;

/** The exact most above `enough`, found among what loses little against the rents; more and more loss is looked at. */
function exactly(model: CaseModel, values: CaseValues, bound: Bound, enough: number, steps: number): number {
  const most = bound.most - (enough + 1) * steps;
  let cleared = 0;
  for (let spare = Math.min(most, Math.max(steps, bound.most / 500)); ; spare = Math.min(most, spare * 4)) {
    const limit = Math.floor(spare);
    const fills = fillsWithin(model, values, bound, limit, mostFills);
    const packed = fills === null ? null : pack(model, bound.rents, fills, limit, { step: steps, mostNodes });
    if (packed?.kind !== 'least') return Math.floor((bound.most - cleared) / steps);
    if (packed.loss !== null) return (bound.most - packed.loss) / steps;
    if (limit >= most) return enough;
    cleared = limit + 1;
  }
}

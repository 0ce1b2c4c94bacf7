import { caseTree } from './cases.js';
import type { CaseModel } from './case-model.js';
import { partitionKey, type CaseItem } from './items.js';
import { largestExact, leavesOf, mostAmong, rentsIn, searchTree, type Carried, type SearchTree } from './most-among.js';
import type { AlikePedals } from './pedal-class.js';
import type { UnitShape } from './shape.js';
import { bestSingle, largestSum } from './single.js';
import { inGrains, valuesOf, type CasePrices, type CaseValues } from './values.js';

/**
 * The most that one unit with a pedal on it can carry: the tags of what hangs on it, less its leads, its exposed pedals and
 * those off their preferred volts. Never too little; too much only when the exact answer would take too long. What does
 * not exceed `enough` is not told apart from it.
 */
export type MostCarried = (items: readonly CaseItem[], prices: Omit<CasePrices, 'tags'>, enough: number) => Carried;

/** Keeps what it has worked out from one set of tags to the next. */
export function mostCarriedBy(shape: UnitShape, classes: readonly AlikePedals[]): MostCarried {
  const trees = new Map<string, SearchTree>();
  return (items, others, enough) => {
    const prices: CasePrices = { ...others, tags: items.map(({ tag }) => tag) };
    const key = partitionKey(items);
    const tree = trees.get(key) ?? searchTree(caseTree({ shape, items, classes }));
    trees.set(key, tree);
    const values = valuesOf(tree.model, prices, 1);
    const grain = grainFor(tree.model, prices, values, enough);
    if (grain === 1) return mostAbove(tree, prices, values, enough);
    const coarse = inGrains(prices, grain);
    const floor = Math.floor(enough / grain);
    const { bound, exactly } = mostAbove(tree, coarse, valuesOf(tree.model, coarse, 1), floor);
    const fine = (most: number): number => (most === floor ? enough : most * grain);
    return { bound: fine(bound), exactly: () => fine(exactly()) };
  };
}

function mostAbove(tree: SearchTree, prices: CasePrices, values: CaseValues, enough: number): Carried {
  if (enough >= 0) return mostAmong(tree, prices, values, enough);
  // A unit that carries nothing is not in use: where all there is to hang on it is worth less than nothing, the best of
  // that hangs on it by itself.
  const single = leavesOf(tree).reduce((best, model) => bestSingle(model, prices, best), enough);
  return single < 0 ? { bound: single, exactly: () => single } : mostAmong(tree, prices, values, single);
}

/** How coarsely very large numbers are counted, so that sums of them are exact: a power of 2, mostly 1. */
function grainFor(model: CaseModel, prices: CasePrices, { ceiling }: CaseValues, enough: number): number {
  // The cases of the model may have one total more.
  const needed = (ceiling * (rentsIn(model) + 1)) / largestExact;
  const greatest = enough < 0 ? largestSum(model, prices) / largestExact : 0;
  return 2 ** Math.max(0, Math.ceil(Math.log2(Math.max(needed, greatest))));
}

import type { CaseModel } from './case-model.js';
import { searchChains } from './search-chains.js';
import { plainValues, type CasePrices } from './values.js';

/**
 * The most that one output, or two that are joined, can carry if nothing else of the unit is in use, or `enough` where that
 * is more.
 */
export function bestSingle(model: CaseModel, prices: CasePrices, enough: number): number {
  const { places, links, leads } = plainValues(model, prices);
  let best = places.reduce((most, worth) => Math.max(most, worth), enough);
  for (const [index, chain] of model.chains.entries()) {
    const worths = links[index] ?? [];
    const worth = { links: worths, idle: worths.map((each) => each <= 0), leads: leads[index] ?? [] };
    searchChains(chain, worth, best + 1, (_, adds) => {
      best = adds;
      return adds + 1;
    });
  }
  return best;
}

/** No sum that the search for the best comes by is greater: a chain has one lead and no more pedals than there are. */
export function largestSum(model: CaseModel, prices: CasePrices): number {
  const { places, links, leads } = plainValues(model, prices);
  const sizes = [places, ...links, ...leads].flat().map(Math.abs).filter(Number.isFinite);
  const summands = model.counts.reduce((sum, count) => sum + count, 1);
  return summands * sizes.reduce((most, size) => Math.max(most, size), 0);
}

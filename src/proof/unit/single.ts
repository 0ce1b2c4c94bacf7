import { Flaw } from '../flaw.js';
import type { CaseModel } from './case-model.js';
import { searchChains } from './search-chains.js';
import { plainValues, type Prices } from './values.js';

/**
 * The most that one output, or two that are joined, can carry if nothing else of the unit is in use, or `enough` where that
 * is more.
 */
export function bestSingle(model: CaseModel, prices: Prices, enough: number): number {
  const { places, links, leads } = plainValues(model, prices);
  checkSums([places, ...links, ...leads]);
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

/** A lead and as many pedals as any lead has tails. */
const mostSummands = 2 ** 10;

function checkSums(worths: readonly (readonly number[])[]): void {
  for (const worth of worths.flat())
    if (Number.isFinite(worth) && Math.abs(worth) > Number.MAX_SAFE_INTEGER / mostSummands)
      throw new Flaw('its numbers are too large to be checked exactly');
}

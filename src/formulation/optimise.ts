import { compactSearch } from './compact-search.js';
import { loadoutSearch } from './loadout-search.js';
import type { Optimiser } from './optimiser.js';

/**
 * The best plan by the method that is asked for. By loadouts it is proven without trust in any engine; where that search
 * ends without a proof before its time, the compact program is asked, and two engines have to agree on it.
 */
export const optimise: Optimiser = async (question, effort) => {
  if (effort.method === 'compact') return compactSearch(question, effort);
  const outcome = await loadoutSearch(question, effort);
  if (outcome.kind !== 'stopped' || effort.signal?.aborted === true || effort.remainingMs() <= 0) return outcome;
  const second = await compactSearch(question, effort);
  return second.kind === 'stopped'
    ? { ...second, candidates: [...outcome.candidates, ...second.candidates] }
    : second;
};

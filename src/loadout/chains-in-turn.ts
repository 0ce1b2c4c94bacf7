import { gathered } from '../../solver/gathered.js';
import { bestChains } from './chain-search.js';
import { chainItem, FrameRoom, type ContentItem, type FrameJob } from './content.js';
import { greedilyFilled, type Draft } from './greedy-fill.js';

/** Chains to begin with, and beginnings of chains that each search may make. */
const mostFirst = 12;
const mostLabels = 2_000;

/**
 * Each of the first chains of a list, then chain by chain the best of the pedals that are left, then these by themselves: where the
 * relaxation has parts of many chains that share pedals, no two of which go together.
 */
export function chainsInTurn(job: FrameJob, items: readonly ContentItem[], floor: number): Draft | null {
  const firsts = items.filter(({ content, value }) => content.kind === 'chain' && value > 0).slice(0, mostFirst);
  for (const first of firsts) {
    const room = new FrameRoom(job);
    const taken: ContentItem[] = [];
    for (let next: ContentItem | null = first; next !== null && room.fits(next); next = bestOf(job, room)) {
      room.take(next);
      taken.push(next);
      const draft = greedilyFilled(job, taken);
      if (draft.value > floor) return draft;
    }
  }
  return null;
}

/** The best chain of the pedals that are left; null where there is none. */
function bestOf(job: FrameJob, room: FrameRoom): ContentItem | null {
  let best: ContentItem | null = null;
  for (const pool of job.pools) {
    const { chain, leads } = pool;
    if ((room.outputs[chain.bank] ?? 0) === 0) continue;
    const candidates = gathered(pool.candidates, (candidate) => {
      const count = Math.min(candidate.count, room.pedals[candidate.place.pedal] ?? 0);
      return count > 0 && candidate.value > 0 ? [{ ...candidate, count }] : [];
    });
    const [found] = bestChains({ chain, candidates, leads }, best?.value ?? 0, mostLabels).found;
    if (found !== undefined) best = chainItem(pool, found.places);
  }
  return best;
}

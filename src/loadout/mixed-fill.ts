import { allAtTheirBest, Room, type Content, type Item, type Job } from './content.js';
import { fillByLabels } from './label-fill.js';
import { rentsOf, type PatternStore } from './rents.js';
import type { Filling } from './solo-fill.js';

/**
 * The most that pedals, alone and in chains, are worth on one unit with several outputs: first a bound by rents and a quick
 * filling; where neither decides, a search that is exact.
 */
export function fillWithChains(
  job: Job,
  floor: number,
  effort: 'quick' | 'exact',
  store: PatternStore,
): Filling<Content> {
  const most = allAtTheirBest(job);
  if (most <= floor) return { bound: most, found: null };
  const rents = rentsOf(job, floor, store);
  const bound = Math.min(most, rents.bound);
  if (bound <= floor) return { bound, found: null };
  const greedy = greedilyFilled(job, rents.items);
  if (greedy.value > floor) return { bound, found: contentsOf(greedy) };
  return effort === 'quick' ? { bound, found: null } : fillByLabels(job, { ...rents, bound }, floor);
}

type Draft = { readonly items: readonly Item[]; readonly value: number };

const contentsOf = ({ items, value }: Draft): NonNullable<Filling<Content>['found']> => ({
  value,
  contents: items.map(({ content }) => content),
});

/** Takes items in their order as long as they fit, then the most valuable pedals by themselves. */
function greedilyFilled(job: Job, items: readonly Item[]): Draft {
  const room = new Room(job);
  const taken: Item[] = [];
  for (const item of [...items, ...job.solos.toSorted((a, b) => b.value - a.value)]) {
    if (item.value <= 0) continue;
    while (room.fits(item)) {
      room.take(item);
      taken.push(item);
    }
  }
  return { items: taken, value: taken.reduce((sum, { value }) => sum + value, 0) };
}

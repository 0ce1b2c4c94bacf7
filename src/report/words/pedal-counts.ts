import type { Feed } from '../../domain/plan.js';
import { isFedByOwn } from './inventory.js';
import type { Speech } from './speech.js';
import { allText, capital, countText } from './words.js';

/**
 * Every pedal of the board by what becomes of it, and from what: "All 6 pedals powered from 2 supplies", or "6 pedals: 3
 * powered, 2 right for either reading, 1 place kept, from 2 supplies".
 */
export function pedalCounts(speech: Counted, feeds: readonly Feed[], supplies: string): string {
  const { pedals } = speech.board;
  const { powered, either, kept } = pedalSorts(speech, feeds);
  const all = countText(pedals.length, 'pedal');
  if (kept + either === 0)
    return `${powered === pedals.length ? capital(allText(powered, 'pedal')) : `${powered} of ${all}`} powered from ${supplies}`;
  const spares = pedals.filter((pedal) => pedal.kept === 'spare').length;
  const left = pedals.length - feeds.length;
  const sorts = [
    `${powered} powered`,
    ...(either === 0 ? [] : [`${either} right for either reading`]),
    ...(kept === 0 ? [] : [`${countText(kept, 'place')} kept`]),
    ...(left === 0 ? [] : [`${left} without power`]),
  ];
  const what =
    countText(pedals.length - spares, 'pedal') + (spares === 0 ? '' : ` and ${countText(spares, 'spare output')}`);
  return `${what}: ${sorts.join(', ')}, from ${supplies}`;
}

/** What has to be known to count pedals. */
export type Counted = Pick<Speech, 'board' | 'inventory'>;

/**
 * How many pedals are plugged by one way, by either of two, and have a place that is only kept. What a pedal came with has one
 * way, whatever its label reads.
 */
export function pedalSorts({ board: { pedals }, inventory }: Counted, feeds: readonly Feed[]) {
  const fed = new Set(feeds.map(({ pedal }) => pedal));
  const keptIds = new Set(pedals.filter(({ id, kept }) => kept !== null && fed.has(id)).map(({ id }) => id));
  const either = feeds.filter(
    (feed) => feed.readings !== undefined && !keptIds.has(feed.pedal) && !isFedByOwn(inventory, feed),
  ).length;
  return { powered: feeds.length - keptIds.size - either, either, kept: keptIds.size };
}

import type { Board, Catalogue, WiredFeed } from '../domain/board.js';
import { feedMillivolts, type Feed } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import { exposuresOf } from './grounds.js';
import { resolve } from './resolve.js';

/** The pedals of some feeds that are plugged in today, on another unit, on other outputs or at other volts. */
export function movedPedals(feeds: readonly Feed[], today: readonly WiredFeed[]): readonly PedalId[] {
  return feeds.flatMap((feed) => {
    const wired = today.find(({ pedal }) => pedal === feed.pedal);
    if (wired === undefined) return [];
    const sameUnit = wired.supply === feed.supply && wired.unit === feed.unit;
    const sameOutputs = new Set([...wired.outputs, ...feed.outputs]).size === wired.outputs.length;
    const stays = sameUnit && sameOutputs && wired.outputs.length === feed.outputs.length;
    return stays && wired.millivolts === feedMillivolts(feed) ? [] : [feed.pedal];
  });
}

/** The pedals that are exposed as the board is plugged today; grounds ask only which outputs a pedal hangs on. */
export function exposedToday(board: Board, catalogue: Catalogue | null): ReadonlySet<PedalId> {
  const feeds = board.wiring.map((wired): Feed => ({
    ...wired,
    settings: wired.outputs.map(() => wired.millivolts),
    polarity: null,
  }));
  return new Set(exposuresOf(resolve(board, catalogue, feeds).layout).map(({ pedal }) => pedal));
}

import type { Board, Catalogue, WiredFeed } from '../domain/board.js';
import { feedMillivolts, type Feed } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import { exposuresOf } from './grounds.js';
import { resolve } from './resolve.js';

/** The pedals that are plugged in today and do not keep their unit, outputs and volts, or are left without a feed. */
export function movedPedals(feeds: readonly Feed[], today: readonly WiredFeed[]): readonly PedalId[] {
  return today.flatMap((wired) => {
    const feed = feeds.find(({ pedal }) => pedal === wired.pedal);
    if (feed === undefined) return [wired.pedal];
    const sameUnit = wired.supply === feed.supply && wired.unit === feed.unit;
    const sameOutputs = new Set([...wired.outputs, ...feed.outputs]).size === wired.outputs.length;
    const stays = sameUnit && sameOutputs && wired.outputs.length === feed.outputs.length;
    return stays && wired.millivolts === feedMillivolts(feed) ? [] : [wired.pedal];
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

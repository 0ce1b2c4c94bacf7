import type { Board, Catalogue, WiredFeed } from '../domain/board.js';
import { feedMillivolts, type Feed, type Score, type Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import { exposuresOf } from './grounds.js';
import { resolve } from './resolve.js';

/** What a plan changes of how the board is plugged today, and the score that counts it. */
export function changesOfToday(
  board: Board,
  catalogue: Catalogue | null,
  plan: Wiring,
): { readonly moved: readonly PedalId[]; readonly score: Score } {
  const moved = movedPedals(plan, board.wiring);
  const before = exposedToday(board, catalogue);
  const newlyExposed = plan.exposed.filter((pedal) => !before.has(pedal)).length;
  return { moved, score: { ...plan.score, moved: moved.length, newlyExposed } };
}

/** Pedals that are plugged in today: those that are powered elsewhere or at other volts, then those that are left without power. */
function movedPedals({ feeds, unpowered }: Wiring, today: readonly WiredFeed[]): readonly PedalId[] {
  const wiredOf = new Map(today.map((wired) => [wired.pedal, wired]));
  const elsewhere = feeds.filter((feed) => {
    const wired = wiredOf.get(feed.pedal);
    return wired !== undefined && !isWhere(feed, wired);
  });
  return [...elsewhere.map(({ pedal }) => pedal), ...unpowered.filter((pedal) => wiredOf.has(pedal))];
}

function isWhere(feed: Feed, wired: WiredFeed): boolean {
  const sameUnit = wired.supply === feed.supply && wired.unit === feed.unit;
  const sameOutputs = new Set([...wired.outputs, ...feed.outputs]).size === wired.outputs.length;
  const sameNumber = wired.outputs.length === feed.outputs.length;
  return sameUnit && sameOutputs && sameNumber && wired.millivolts === feedMillivolts(feed);
}

/** The pedals that are exposed as the board is plugged today; grounds ask only which outputs a pedal hangs on. */
function exposedToday(board: Board, catalogue: Catalogue | null): ReadonlySet<PedalId> {
  const feeds = board.wiring.map((wired): Feed => ({
    ...wired,
    settings: wired.outputs.map(() => wired.millivolts),
    polarity: null,
  }));
  return new Set(exposuresOf(resolve(board, catalogue, feeds).layout).map(({ pedal }) => pedal));
}

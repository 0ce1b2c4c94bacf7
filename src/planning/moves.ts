import { feedMillivolts, type Feed, type Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Berth, Today } from '../loadout/today.js';

/** The wiring with what it changes of today's: a pedal is moved when its unit, its outputs or its volts differ. */
export function withMoves(wiring: Wiring, today: Today): Wiring {
  const moved = movedPedals(wiring.feeds, today);
  const newlyExposed = wiring.exposed.filter((pedal) => !today.exposed.has(pedal)).length;
  return { ...wiring, moved, score: { ...wiring.score, moved: moved.length, newlyExposed } };
}

/** Powered pedals that are plugged in today, and elsewhere. */
const movedPedals = (feeds: readonly Feed[], { berths }: Today): readonly PedalId[] =>
  feeds
    .filter((feed) => {
      const berth = berths.get(feed.pedal);
      return berth !== undefined && !isAt(feed, berth);
    })
    .map(({ pedal }) => pedal);

/** Whether a feed is where its pedal is plugged already. */
export const isAt = (feed: Feed, berth: Berth): boolean =>
  feed.supply === berth.supply &&
  feed.unit === berth.unit &&
  feedMillivolts(feed) === berth.millivolts &&
  feed.outputs.join() === berth.outputs.join();

/** Whether every pinned pedal is powered and stays where it is. */
export function keepsPinned({ feeds }: Wiring, { berths, pinned }: Today): boolean {
  return [...pinned].every((pedal) => {
    const [feed, berth] = [feeds.find((each) => each.pedal === pedal), berths.get(pedal)];
    return feed !== undefined && berth !== undefined && isAt(feed, berth);
  });
}

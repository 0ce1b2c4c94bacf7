import { feedMillivolts, type Feed, type Wiring } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Berth, Today } from '../../loadout/today.js';

/** The wiring with what it changes of today's: a pedal is moved when its unit, its outputs or its volts differ, or it has none. */
export function withMoves(wiring: Wiring, today: Today): Wiring {
  const moved = movedPedals(wiring, today);
  const newlyExposed = wiring.exposed.filter((pedal) => !today.exposed.has(pedal)).length;
  return { ...wiring, moved, score: { ...wiring.score, moved: moved.length, newlyExposed } };
}

/** Pedals that are plugged in today: those that are powered elsewhere, then those that are left without power. */
function movedPedals({ feeds, unpowered }: Wiring, { berths }: Today): readonly PedalId[] {
  const elsewhere = feeds.filter((feed) => {
    const berth = berths.get(feed.pedal);
    return berth !== undefined && !isAt(feed, berth);
  });
  return [...elsewhere.map(({ pedal }) => pedal), ...unpowered.filter((pedal) => berths.has(pedal))];
}

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

import { everyFeed, feedMillivolts, type Feed, type Wiring } from '../../domain/plan.js';
import type { Berth, Today } from '../../loadout/today.js';

/** Whether every pinned pedal, or inlet, is powered and stays where it is. */
export function keepsPinned(plan: Pick<Wiring, 'feeds' | 'inlets'>, { berths, pinned }: Today): boolean {
  const feeds = everyFeed(plan);
  return [...pinned].every((pedal) => {
    const [feed, berth] = [feeds.find((each) => each.pedal === pedal), berths.get(pedal)];
    return feed !== undefined && berth !== undefined && isAt(feed, berth);
  });
}

const isAt = (feed: Feed, berth: Berth): boolean =>
  feed.supply === berth.supply &&
  feed.unit === berth.unit &&
  feedMillivolts(feed) === berth.millivolts &&
  feed.outputs.join() === berth.outputs.join();

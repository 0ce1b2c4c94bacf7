import type { WiredFeed } from '../../src/domain/board.js';
import { feedMillivolts, type Feed } from '../../src/domain/plan.js';

/** What a board file would say of a feed: neither how a polarity switch stands nor how outputs in series are set. */
export const wiredOf = (feed: Feed): WiredFeed => ({
  pedal: feed.pedal,
  supply: feed.supply,
  unit: feed.unit,
  outputs: feed.outputs,
  millivolts: feedMillivolts(feed),
  join: feed.join,
  chain: feed.chain,
  adapters: feed.adapters,
});

import type { Board, WiredFeed, WiredInlet } from '../../src/domain/board.js';
import { feedMillivolts, type Feed } from '../../src/domain/plan.js';
import { pedalId, supplyId } from '../../src/domain/quantities.js';
import { volts } from './builders.js';

/** A pedal plugged into an output of a supply, or into two joined ones: of its first unit, at 9 V, unless it is said otherwise. */
export const wiredOn = (
  supply: string,
  pedal: string,
  output: number | readonly number[],
  more: Partial<WiredFeed> = {},
): WiredFeed => ({
  pedal: pedalId(pedal),
  supply: supplyId(supply),
  unit: 1,
  outputs: [output].flat(),
  millivolts: volts(9),
  join: null,
  chain: null,
  adapters: [],
  ...more,
});

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
  ...(feed.inletOf !== undefined && { inletOf: feed.inletOf }),
});

/** The board plugged so, inlets among the rest. */
export const pluggedAs = (board: Board, wired: readonly WiredFeed[]): Board => ({
  ...board,
  wiring: wired.filter((feed) => !isOfInlet(feed)),
  inlets: wired.filter(isOfInlet),
});

export const isOfInlet = (feed: WiredFeed): feed is WiredInlet => 'inletOf' in feed;

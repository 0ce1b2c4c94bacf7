import type { Board, WiredFeed } from '../../src/domain/board.js';
import type { JoinMode } from '../../src/domain/supply.js';
import { partId, pedalId, supplyId } from '../../src/domain/quantities.js';
import { owning } from '../support/arbitrary-wirings.js';
import { volts } from '../support/builders.js';
import type { Plugging } from './arbitrary-subjects.js';
import { listAt, type Data } from './data.js';

/** The board plugged by a plan, given as `choose --partial --json` prints one. */
export function plugged(board: Board, plan: unknown, plugging: Plugging): Board {
  const feeds = listAt(plan, 'feeds').map((feed) => wiredFeed(feed as Data));
  const isFed = new Set(feeds.map(({ pedal }) => pedal));
  if (plugging === 'none' || feeds.length === 0) return board;
  const powered = { ...board, pedals: board.pedals.filter(({ id }) => isFed.has(id)) };
  return plugging === 'powered only' ? powered : owning({ ...powered, wiring: twisted(feeds, plugging) }, true);
}

function twisted(feeds: readonly WiredFeed[], plugging: Plugging): readonly WiredFeed[] {
  const [first, second, ...others] = feeds;
  if (first === undefined || second === undefined) return feeds;
  if (plugging === 'one pulled') return [second, ...others];
  if (plugging !== 'two swapped') return feeds;
  return [{ ...second, pedal: first.pedal }, { ...first, pedal: second.pedal }, ...others];
}

const wiredFeed = (feed: Data): WiredFeed => {
  const join = feed['join'] as { readonly mode: JoinMode; readonly part: string } | null;
  return {
    pedal: pedalId(feed['pedal'] as string),
    supply: supplyId(feed['supply'] as string),
    unit: feed['unit'] as number,
    outputs: feed['outputs'] as number[],
    millivolts: volts(feed['volts'] as number),
    join: join === null ? null : { mode: join.mode, part: partId(join.part) },
    chain: feed['chain'] === null ? null : partId(feed['chain'] as string),
    adapters: (feed['parts'] as string[]).map(partId),
  };
};

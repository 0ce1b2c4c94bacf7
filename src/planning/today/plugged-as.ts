import { withBoard } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Board, WiredFeed } from '../../domain/board.js';
import { feedMillivolts, type Feed } from '../../domain/plan.js';
import type { PartId, SupplyId } from '../../domain/quantities.js';
import { partsInUse } from './parts-in-use.js';

/** The kit once these feeds are plugged: they are today's wiring, and all that they use is owned. */
export const pluggedAs = (kit: Kit, feeds: readonly Feed[]): Kit =>
  withBoard(kit, { ...kit.board, owned: withUsed(kit.board, feeds), wiring: feeds.map(wiredFeed) });

const wiredFeed = (feed: Feed): WiredFeed => {
  const { pedal, supply, unit, outputs, join, chain, adapters } = feed;
  return { pedal, supply, unit, outputs, millivolts: feedMillivolts(feed), join, chain, adapters };
};

/** What is owned, and beyond that what is in use. */
function withUsed({ owned }: Board, feeds: readonly Feed[]): Board['owned'] {
  const supplies = new Map<SupplyId, number>(owned.supplies);
  for (const { supply, unit } of feeds) supplies.set(supply, Math.max(unit, supplies.get(supply) ?? 0));
  const parts = new Map<PartId, number>(owned.parts);
  for (const [part, used] of partsInUse(feeds)) parts.set(part, Math.max(used, parts.get(part) ?? 0));
  return { supplies, parts };
}

import type { Board } from '../../domain/board.js';
import type { Exposure, Feed, Wiring } from '../../domain/plan.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { firstBankOf, type Inventory } from './inventory.js';

/** Pedals whose grounds are tied together by their supply. */
export type GroundDomain = {
  readonly supply: SupplyId;
  readonly unit: number;
  /** Null for the supply's common ground, else the isolated output or the joined ones. */
  readonly outputs: readonly number[] | null;
  readonly pedals: readonly PedalId[];
};

/** Every ground domain in use, in the order of the feeds. */
export function groundDomains(inventory: Inventory, feeds: readonly Feed[]): readonly GroundDomain[] {
  const domains = new Map<string, GroundDomain>();
  for (const feed of feeds) {
    const outputs = firstBankOf(inventory.supply(feed.supply), feed).isolated ? feed.outputs : null;
    const key = JSON.stringify([feed.supply, feed.unit, outputs]);
    const pedals = [...(domains.get(key)?.pedals ?? []), feed.pedal];
    domains.set(key, { supply: feed.supply, unit: feed.unit, outputs, pedals });
  }
  return [...domains.values()];
}

/** Who is exposed by whom, in the order of the plan's exposed pedals. */
export function exposures(inventory: Inventory, wiring: Wiring): readonly Exposure[] {
  const domains = groundDomains(inventory, wiring.feeds);
  return wiring.exposed.map((pedal) => {
    const neighbours = domains.find(({ pedals }) => pedals.includes(pedal))?.pedals ?? [];
    return { pedal, by: neighbours.filter((other) => other !== pedal && inventory.pedal(other).digital) };
  });
}

/** The fed pedals whose chassis and audio ground is positive. */
export const positiveGrounds = (board: Board, wiring: Wiring): readonly PedalId[] =>
  board.pedals
    .filter(({ id, ground }) => ground === 'positive' && wiring.feeds.some(({ pedal }) => pedal === id))
    .map(({ id }) => id);

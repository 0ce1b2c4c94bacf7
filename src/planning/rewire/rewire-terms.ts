import { audit } from '../../audit/audit.js';
import type { Board, Catalogue } from '../../domain/board.js';
import type { MinorUnits, PedalId } from '../../domain/quantities.js';
import { berthsOf, type Today } from '../../loadout/today.js';
import { wiredFeeds } from '../check/wired-feeds.js';

/** What is asked for beside the board when it is to be re-plugged. */
export type Wishes = {
  /** Pedals that must stay where they are plugged today. */
  readonly keep?: readonly PedalId[];
  /** `never` forbids purchases; `allow` when left out: what must be bought comes first in the order, so none is needless. */
  readonly buy?: 'allow' | 'never';
  /** The most that may be spent, in minor units, in place of the board's own budget. */
  readonly budget?: MinorUnits;
};

/** The board, the shop and today's wiring as the wishes leave them. */
export type Terms = { readonly board: Board; readonly catalogue: Catalogue; readonly today: Today };

/** @throws RangeError when a pedal to keep is not plugged in today. */
export function termsOf(board: Board, catalogue: Catalogue | null, wishes: Wishes): Terms {
  const { keep = [], buy = 'allow', budget = board.policy.budget } = wishes;
  const allowed = { ...board, policy: { ...board.policy, budget } };
  const shop = shopFor(board, catalogue, buy);
  return { board: allowed, catalogue: shop, today: todayOf(allowed, shop, keep) };
}

function todayOf(board: Board, catalogue: Catalogue, keep: readonly PedalId[]): Today {
  const berths = berthsOf(board.wiring);
  const adrift = keep.find((pedal) => !berths.has(pedal));
  if (adrift !== undefined) throw new RangeError(`the pedal "${adrift}" is not plugged in today, so it cannot stay`);
  const { wiring } = audit(board, catalogue, wiredFeeds(board, catalogue).feeds, { partial: true });
  return { berths, exposed: new Set(wiring.exposed), pinned: new Set(keep) };
}

/** What can be bought: nothing without a catalogue, and nothing of one where purchases are forbidden. */
function shopFor(board: Board, catalogue: Catalogue | null, buy: 'allow' | 'never'): Catalogue {
  if (catalogue === null) return { name: board.name, currency: board.currency, supplies: [], parts: [] };
  if (buy === 'allow') return catalogue;
  const unsold = <Thing>(thing: Thing) => ({ ...thing, price: null, stock: 0 });
  return { ...catalogue, supplies: catalogue.supplies.map(unsold), parts: catalogue.parts.map(unsold) };
}

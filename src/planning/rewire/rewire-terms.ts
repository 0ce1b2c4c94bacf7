import { withNothingForSale, withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';
import { audit } from '../../audit/audit.js';
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

/** The kit and today's wiring as the wishes leave them; today's feeds are read once. */
export type RewireTerms = { readonly kit: Kit; readonly today: Today; readonly feeds: readonly Feed[] };

/** @throws RangeError when a pedal to keep is not plugged in today. */
export function termsOf(kit: Kit, wishes: Wishes): RewireTerms {
  const { keep = [], buy = 'allow', budget = kit.board.policy.budget } = wishes;
  const allowed = withPolicy(buy === 'never' ? withNothingForSale(kit) : kit, { budget });
  const { feeds } = wiredFeeds(allowed);
  return { kit: allowed, today: todayOf(allowed, feeds, keep), feeds };
}

function todayOf({ board, catalogue }: Kit, feeds: readonly Feed[], keep: readonly PedalId[]): Today {
  const berths = berthsOf(board.wiring);
  const adrift = keep.find((pedal) => !berths.has(pedal));
  if (adrift !== undefined) throw new RangeError(`the pedal "${adrift}" is not plugged in today, so it cannot stay`);
  const { wiring } = audit(board, catalogue, feeds, { partial: true });
  return { berths, exposed: new Set(wiring.exposed), pinned: new Set(keep) };
}

import { withNothingForSale, withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import type { MinorUnits, PedalId } from '../../domain/quantities.js';
import { berthsOf, type Today } from '../../loadout/today.js';
import type { TodaysWiring } from '../today/todays-wiring.js';

/** What is asked for beside the board when it is to be re-plugged. */
export type Wishes = {
  /** Pedals that must stay where they are plugged today. */
  readonly keep?: readonly PedalId[];
  /** `never` forbids purchases; `allow` when left out: what must be bought comes first in the order, so none is needless. */
  readonly buy?: 'allow' | 'never';
  /** The most that may be spent, in minor units, in place of the board's own budget. */
  readonly budget?: MinorUnits;
};

/** The kit as the wishes leave it, and how the new plan is compared with today's wiring. */
export type RewireTerms = { readonly kit: Kit; readonly today: Today };

/** @throws RangeError when a pedal to keep is not plugged in today. */
export function termsOf(kit: Kit, plugged: TodaysWiring, wishes: Wishes): RewireTerms {
  const { keep = [], buy = 'allow', budget = kit.board.policy.budget } = wishes;
  const allowed = buy === 'never' ? withNothingForSale(kit) : kit;
  return { kit: withPolicy(allowed, { budget }), today: todayOf(kit.board, plugged, keep) };
}

function todayOf({ wiring }: Board, { report }: TodaysWiring, keep: readonly PedalId[]): Today {
  const berths = berthsOf(wiring);
  const adrift = keep.find((pedal) => !berths.has(pedal));
  if (adrift !== undefined) throw new RangeError(`the pedal "${adrift}" is not plugged in today, so it cannot stay`);
  return { berths, exposed: new Set(report.wiring.exposed), pinned: new Set(keep) };
}

import { withNothingForSale, withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import type { ProofWishes } from '../../domain/proof.js';
import type { MinorUnits, PedalId } from '../../domain/quantities.js';
import { berthsOf, type Today } from '../../loadout/today.js';
import type { TodaysWiring } from '../today/todays-wiring.js';

/** What is asked for beside the board when it is to be re-plugged. */
export type Wishes = {
  /** Pedals that must stay where they are plugged today, or inlets by what stands for them (`inletId`). */
  readonly keep?: readonly PedalId[];
  /** `never` forbids purchases; `allow` when left out: what must be bought comes first in the order, so none is needless. */
  readonly buy?: 'allow' | 'never';
  /** The most that may be spent, in minor units, in place of the board's own budget. */
  readonly budget?: MinorUnits;
};

/** The kit as the wishes leave it, and how the new plan is compared with today's wiring. */
type RewireTerms = { readonly kit: Kit; readonly today: Today };

/** The kit as the wishes leave it. */
export function wishedKit(kit: Kit, { buy, budget }: Pick<Wishes, 'buy' | 'budget'>): Kit {
  const allowed = buy === 'never' ? withNothingForSale(kit) : kit;
  return budget === undefined ? allowed : withPolicy(allowed, { budget });
}

/** What a proof says of the wishes, so that whoever checks it asks the same. */
export const writtenWishes = ({ keep = [], buy, budget }: Wishes): ProofWishes => ({
  ...(keep.length > 0 && { keep }),
  ...(buy === 'never' && { buy }),
  ...(budget !== undefined && { budget }),
});

/** @throws RangeError when a pedal to keep is not plugged in today. */
export function termsOf(kit: Kit, plugged: TodaysWiring, wishes: Wishes): RewireTerms {
  return { kit: wishedKit(kit, wishes), today: todayOf(kit.board, plugged, wishes.keep ?? []) };
}

/** An inlet that need not stay is not moved, wherever it hangs then. */
function todayOf({ wiring, inlets }: Board, { report }: TodaysWiring, keep: readonly PedalId[]): Today {
  const berths = berthsOf([...wiring, ...inlets.filter(({ pedal }) => keep.includes(pedal))]);
  const adrift = keep.find((pedal) => !berths.has(pedal));
  if (adrift !== undefined) throw new RangeError(`the pedal "${adrift}" is not plugged in today, so it cannot stay`);
  return { berths, exposed: new Set(report.wiring.exposed), pinned: new Set(keep) };
}

import { closeEngines, startEngines, type Engines } from '../../solver/engines.js';
import { audit } from '../audit/audit.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { MinorUnits, PedalId } from '../domain/quantities.js';
import type { Progress } from '../formulation/optimiser.js';
import { berthsOf, type Today } from '../loadout/today.js';
import type { Answer } from './answer.js';
import { answerTo } from './answer-to.js';
import { wiredFeeds } from './wired-feeds.js';

export type RewireOptions = {
  /** Pedals that must stay where they are plugged today. */
  readonly keep?: readonly PedalId[];
  /** `never` forbids purchases; `allow` when left out: what must be bought comes first in the order, so none is needless. */
  readonly buy?: 'allow' | 'never';
  /** The most that may be spent, in minor units, in place of the board's own budget. */
  readonly budget?: MinorUnits;
  /** Allow a plan that leaves pedals unpowered, as few as can be. Off when left out. */
  readonly partial?: boolean;
  /** Milliseconds that are left of the caller's patience, asked again and again; no limit when left out. */
  readonly remainingMs?: () => number;
  /** Stops the search; the best plan so far is the answer. */
  readonly signal?: AbortSignal;
  /** Called now and then with how far the search has come. */
  readonly onProgress?: (progress: Progress) => void;
  /** Engines to solve with; they are not closed, and serve several calls. Started and closed by the call when left out. */
  readonly engines?: Engines;
};

/**
 * How to power the board with the fewest changes to how it is plugged today: what must be bought first, with every newly
 * exposed pedal counted at the noise price, then the fewest pedals moved. A board that describes all its gear needs no
 * catalogue. As for `choose`, the plan has passed the audit and is proven or says how far it may be from the best.
 * @throws RangeError when a pedal to keep is not plugged in today.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function rewire(board: Board, catalogue: Catalogue | null, options: RewireOptions = {}): Promise<Answer> {
  const engines = options.engines ?? startEngines();
  const { remainingMs = (): number => Infinity, signal, onProgress, partial = false } = options;
  const allowed = { ...board, policy: { ...board.policy, budget: options.budget ?? board.policy.budget } };
  const shop = shopFor(board, catalogue, options.buy ?? 'allow');
  try {
    return await answerTo({
      board: allowed,
      catalogue: shop,
      aim: 'moves',
      partial,
      today: todayOf(allowed, shop, options.keep ?? []),
      effort: { engines, remainingMs, signal, onProgress },
    });
  } finally {
    if (options.engines === undefined) await closeEngines(engines);
  }
}

/** How the board is plugged now. @throws RangeError when a pedal to keep is not plugged in. */
export function todayOf(board: Board, catalogue: Catalogue, keep: readonly PedalId[]): Today {
  const berths = berthsOf(board.wiring);
  const adrift = keep.find((pedal) => !berths.has(pedal));
  if (adrift !== undefined) throw new RangeError(`the pedal "${adrift}" is not plugged in today, so it cannot stay`);
  const { wiring } = audit(board, catalogue, wiredFeeds(board, catalogue).feeds, { partial: true });
  return { berths, exposed: new Set(wiring.exposed), pinned: new Set(keep) };
}

/** What can be bought: nothing without a catalogue, and nothing of one where purchases are forbidden. */
export function shopFor(board: Board, catalogue: Catalogue | null, buy: 'allow' | 'never'): Catalogue {
  if (catalogue === null) return { name: board.name, currency: board.currency, supplies: [], parts: [] };
  if (buy === 'allow') return catalogue;
  const unsold = <Thing>(thing: Thing) => ({ ...thing, price: null, stock: 0 });
  return { ...catalogue, supplies: catalogue.supplies.map(unsold), parts: catalogue.parts.map(unsold) };
}

import type { Supply } from '../domain/supply.js';
import type { GroundMode } from './ground-mode.js';
import type { ChainPlace, ChainPool, SoloUse } from './uses.js';

/** What hangs on one output, or on two joined ones. */
export type Hung =
  | { readonly kind: 'solo'; readonly use: SoloUse }
  | { readonly kind: 'chain'; readonly pool: ChainPool; readonly lead: number; readonly places: readonly ChainPlace[] };

/** One unit of a supply with all that hangs on it, before outputs are numbered. */
export type Loadout = {
  readonly supply: Supply;
  /** The number of the one unit that this is, where it matters what is plugged into it today; null for any unit. */
  readonly unit: number | null;
  /** Of the common ground; null for a supply without one. */
  readonly mode: GroundMode | null;
  readonly hung: readonly Hung[];
};

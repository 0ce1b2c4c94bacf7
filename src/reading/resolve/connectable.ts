import type { Board } from '../../domain/board.js';
import type { Part } from '../../domain/part.js';
import type { Pedal } from '../../domain/pedal.js';
import type { PartId, PedalId, SupplyId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Shelf } from './resolve-for-sale.js';

/** What the entries of a wiring may name. */
export type Connectable = {
  readonly pedals: Shelf<PedalId, Pedal>;
  readonly supplies: Shelf<SupplyId, Supply>;
  readonly parts: Shelf<PartId, Part>;
  /** Null when it was reported, so that unit numbers cannot be judged. */
  readonly owned: Board['owned'] | null;
  readonly hasCatalogue: boolean;
};

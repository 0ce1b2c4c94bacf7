import type { StatedPedal } from '../document/board-data.js';
import type { PageState } from '../page-state.js';

/** What every part of a pedal's tile is about. */
export type TileProps = { readonly pedal: StatedPedal; readonly state: PageState };

import { everyWired, type Board } from '../../domain/board.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import type { Approach } from '../document/page-document.js';

/** From what a board is planned. */
export type ToldStart = {
  /** Null where nothing is plugged in, so that there is nothing but to plan from nothing. */
  readonly approach: Approach | null;
  /** Where each pedal is plugged today, and the inlet of each supply that hangs on another one. */
  readonly plugged: readonly PinnedPlace[];
};

/** A board most of whose pedals are plugged in is re-plugged, unless somebody has said otherwise. */
export function toldStart({ wiring, inlets, pedals }: Board, asked: Approach | null): ToldStart {
  const usual = wiring.length * 2 > pedals.length ? 'as plugged' : 'from nothing';
  return {
    approach: wiring.length === 0 ? null : (asked ?? usual),
    plugged: everyWired({ wiring, inlets }).map(({ pedal, supply, unit, outputs, millivolts }) => ({
      ...{ pedal, supply, unit, outputs, millivolts },
    })),
  };
}

import type { Board, Catalogue } from './board.js';
import { nearSpelling } from './near-spelling.js';
import type { PedalId } from './quantities.js';

/** A pedal whose inlet no plug and no lead fits. Connector names are free text, so this may be a misspelling or a fact. */
export type ConnectorHint = {
  readonly pedal: PedalId;
  readonly inlet: string;
  /** The known connector it may be a misspelling of; null when none is near. */
  readonly near: string | null;
};

/** The inlets that nothing in the gear or the catalogue fits, in the order of the pedals. */
export function connectorHints(board: Board, catalogue: Catalogue | null): readonly ConnectorHint[] {
  const offered = new Set<string>();
  for (const { supplies, parts } of catalogue === null ? [board.gear] : [board.gear, catalogue]) {
    for (const supply of supplies) for (const bank of supply.banks) offered.add(bank.plug);
    for (const part of parts) offered.add(part.gives);
  }
  return board.pedals
    .filter((pedal) => !offered.has(pedal.inlet))
    .map(({ id, inlet }) => ({ pedal: id, inlet, near: nearSpelling(inlet, offered) }));
}

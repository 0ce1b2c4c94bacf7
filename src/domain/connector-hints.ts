import type { Kit } from './kit.js';
import { nearSpelling } from './near-spelling.js';
import type { PedalId } from './quantities.js';

/** A pedal whose inlet no plug and no lead fits. Connector names are free text, so this may be a misspelling or a fact. */
type ConnectorHint = {
  readonly pedal: PedalId;
  readonly inlet: string;
  /** The known connector it may be a misspelling of; null when none is near. */
  readonly near: string | null;
};

/** The inlets that nothing in the gear or the catalogue fits, in the order of the pedals. */
export function connectorHints({ board, supplies, parts }: Kit): readonly ConnectorHint[] {
  const offered = new Set([
    ...[...supplies.values()].flatMap(({ banks }) => banks.map(({ plug }) => plug)),
    ...[...parts.values()].map(({ gives }) => gives),
  ]);
  return board.pedals
    .filter((pedal) => !offered.has(pedal.inlet))
    .map(({ id, inlet }) => ({ pedal: id, inlet, near: nearSpelling(inlet, offered) }));
}

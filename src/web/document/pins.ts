import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { PageDocument } from './page-document.js';

type Change = (document: PageDocument) => PageDocument;

/**
 * A pedal is to hang there from now on; all else is planned around it. `pinned` are the pins as the plan keeps them in which the
 * place was chosen: units go by its numbers.
 */
export const pinnedAt =
  (pedal: PedalId, berth: Berth, pinned: PageDocument['pins']): Change =>
  (document) => ({
    ...document,
    pins: [
      ...others(document, pedal).map((pin) => pinned.find((kept) => kept.pedal === pin.pedal) ?? pin),
      { pedal, ...berth },
    ],
  });

/** A pedal may hang wherever it is best again. */
export const letGo =
  (pedal: PedalId): Change =>
  (document) => ({ ...document, pins: others(document, pedal) });

const others = ({ pins }: PageDocument, pedal: PedalId): PageDocument['pins'] =>
  pins.filter((pin) => pin.pedal !== pedal);

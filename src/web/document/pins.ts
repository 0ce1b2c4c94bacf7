import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { PageDocument } from './page-document.js';

type Change = (document: PageDocument) => PageDocument;

/** A pedal is to hang there from now on; all else is planned around it. */
export const pinnedAt =
  (pedal: PedalId, berth: Berth): Change =>
  (document) => ({ ...document, pins: [...others(document, pedal), { pedal, ...berth }] });

/** A pedal may hang wherever it is best again. */
export const letGo =
  (pedal: PedalId): Change =>
  (document) => ({ ...document, pins: others(document, pedal) });

const others = ({ pins }: PageDocument, pedal: PedalId): PageDocument['pins'] =>
  pins.filter((pin) => pin.pedal !== pedal);

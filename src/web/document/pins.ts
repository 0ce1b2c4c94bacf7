import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import type { AskedPin } from '../worker/told-answer.js';
import type { PageDocument } from './page-document.js';

type Change = (document: PageDocument) => PageDocument;

/**
 * A pedal, or an inlet, is to hang there from now on; all else is planned around it. `pinned` are the pins as the plan keeps
 * them in which the place was chosen: units go by its numbers. `company` is to share it.
 */
export const pinnedAt =
  (pedal: PedalId, berth: Berth, pinned: readonly AskedPin[] = [], company: readonly PedalId[] = []): Change =>
  (document) => ({
    ...document,
    pins: [
      ...others(document, askedAs(pedal, pinned))
        .filter((pin) => !company.includes(pin.pedal))
        .map((pin) => asInPlan(pin, pinned)),
      ...[...company, pedal].map((one) => ({ pedal: one, ...berth })),
    ],
  });

/** It may hang wherever it is best again. */
export const letGo =
  (pedal: PedalId): Change =>
  (document) => ({ ...document, pins: others(document, pedal) });

/** What stands in the document for what a plan has pinned. */
export const askedAs = (pedal: PedalId, pinned: readonly AskedPin[]): PedalId =>
  pinned.find((kept) => kept.pedal === pedal)?.asked ?? pedal;

function asInPlan(pin: PinnedPlace, pinned: readonly AskedPin[]): PinnedPlace {
  const kept = pinned.find(({ asked }) => asked === pin.pedal);
  if (kept === undefined) return pin;
  const { asked: _, ...place } = kept;
  return place;
}

const others = ({ pins }: PageDocument, pedal: PedalId): PageDocument['pins'] =>
  pins.filter((pin) => pin.pedal !== pedal);

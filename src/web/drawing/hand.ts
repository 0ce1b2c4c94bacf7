import type { PedalId } from '../../domain/quantities.js';
import type { Berth } from '../../planning/check/places-for.js';
import type { ToldPlace } from '../worker/told-places.js';

/** A pedal that is being moved, and where it could go. */
export type HandState = {
  readonly moving: PedalId | null;
  /** Empty until the worker has told them. */
  readonly places: readonly ToldPlace[];
  /** Takes a pedal up; null puts it back. */
  readonly move: (pedal: PedalId | null) => void;
  /** Lets it go where it is to stay. */
  readonly pin: (berth: Berth) => void;
};

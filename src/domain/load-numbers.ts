import type { Exact } from './load.js';
import type { Place } from './plan.js';
import type { Factor, PedalId } from './quantities.js';

/** What is drawn against what may be drawn. */
export type LoadNumbers = {
  /** mA: all in microamps. W: all in milliwatts. */
  readonly unit: 'mA' | 'W';
  /** What is drawn, guesses multiplied already. */
  readonly load: Exact;
  /** The headroom that multiplies it; 1 where nothing does, as at switch-on. */
  readonly factor: Factor;
  /** load × factor. */
  readonly planned: Exact;
  /** The most that may be planned: a rating or a total. */
  readonly limit: number;
};

/** What hangs on one output, or on two that are joined. */
export type OutletLoad = {
  readonly place: Place;
  readonly pedals: readonly PedalId[];
  /** Null when the output has no such setting as its feeds count on. */
  readonly current: LoadNumbers | null;
  /** When all start at once; null where no startup exceeds its pedal's load: then `current` says it all. */
  readonly startup: LoadNumbers | null;
};

/** A stated total of a whole unit, or of one of its banks. */
export type TotalLoad = {
  readonly of: 'supply' | 'bank';
  /** With all outputs of the bank; with none for the whole unit. */
  readonly place: Place;
  readonly pedals: readonly PedalId[];
  readonly numbers: LoadNumbers;
  /** When all start at once; null where no startup exceeds its pedal's load: then `numbers` say it all. */
  readonly startup: LoadNumbers | null;
};

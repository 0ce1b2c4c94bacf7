import type { Engines } from '../../../solver/engines/engines.js';
import type { Timing } from '../../../solver/timing.js';
import type { Effort, Progress } from '../../formulation/optimiser.js';
import { Workings } from '../../formulation/workings.js';

/** What every question may be given that the solver is asked for. */
export type SearchOptions = {
  /** Milliseconds that are left of the caller's patience, asked again and again; no limit when left out. */
  readonly remainingMs?: () => number;
  /** Stops the search; what is known by then is the answer. */
  readonly signal?: AbortSignal;
  /** Called now and then with how far the search for a plan has come. */
  readonly onProgress?: (progress: Progress) => void;
  /**
   * Engines to solve with; they are not closed, and serve several calls. Null is none, as when left out: plans are then made of
   * loadouts alone, which find and prove nearly all of them, and a conflict that `explain` or `choose` tells is not shown to be
   * the smallest.
   */
  readonly engines?: Engines | null;
  /** How the search pauses and waits; by web standards when left out. */
  readonly timing?: Timing;
};

/** The effort that is asked for, for all questions of one command; nothing to write a proof for. */
export const effortOf = ({
  remainingMs = (): number => Infinity,
  signal,
  onProgress,
  engines = null,
  timing,
}: SearchOptions): Effort => ({ engines, timing, remainingMs, signal, onProgress, workings: new Workings() });

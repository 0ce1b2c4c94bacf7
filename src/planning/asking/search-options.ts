import type { Engine } from '../../../solver/engines/engine.js';
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
   * What looks for better plans beside a search that lasts; it is not closed, and serves several calls. Null is nobody, as when
   * left out: a search that ends is as good without, and so are its proofs.
   */
  readonly engine?: Engine | null;
  /** How the search pauses and waits; by web standards when left out. */
  readonly timing?: Timing;
};

/** The effort that is asked for, for all questions of one command; nothing to write a proof for. */
export const effortOf = ({
  remainingMs = (): number => Infinity,
  signal,
  onProgress,
  engine = null,
  timing,
}: SearchOptions): Effort => ({ engine, timing, remainingMs, signal, onProgress, workings: new Workings() });

/** The same effort for what is asked when the plan is known, or that there is none: what these searches reach is not told as a plan. */
export function beyondThePlan({ onProgress, proof: _proof, ...effort }: Effort): Effort {
  onProgress?.({ tier: null, value: null, bound: null });
  return effort;
}

import type { Engine } from './engine.js';
import { workerEngine } from './worker-engine.js';

/** The engines of a search. */
export type Engines = {
  /** Takes programs of any size; what it claims may be confirmed by its own answer to another question. */
  readonly trusted: Engine;
  /** Asked beside it, on small programs only; null to do without. */
  readonly second: Engine | null;
  /**
   * The trusted engine once more, in a thread of its own: on larger programs it answers the same question, put in another
   * order, while the first is at work. Without it the first is asked twice, one after the other.
   */
  readonly twin?: Engine;
};

/** HiGHS overruns its time limit by up to a quarter of a second; its thread takes another one to start under load. */
const HIGHS_GRACE_MS = 600;
/** javascript-lp-solver may overrun by any time: what is late is not waited for. */
const JAVASCRIPT_LP_SOLVER_GRACE_MS = 100;

/** The product's engines, each in a thread of its own that starts with its first question. They must be closed. */
export function startEngines(): Engines {
  const highs = (): Engine =>
    workerEngine({ name: 'HiGHS', moduleUrl: './engines/highs.js', givesDuals: true, graceMs: HIGHS_GRACE_MS });
  return {
    trusted: highs(),
    twin: highs(),
    second: workerEngine({
      name: 'javascript-lp-solver',
      moduleUrl: './engines/javascript-lp-solver.js',
      givesDuals: false,
      graceMs: JAVASCRIPT_LP_SOLVER_GRACE_MS,
    }),
  };
}

export async function closeEngines(engines: Engines): Promise<void> {
  await Promise.all([engines.trusted.close(), engines.second?.close(), engines.twin?.close()]);
}

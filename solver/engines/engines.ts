import type { Engine } from './engine.js';

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
  /** Looks for better plans beside a search by loadouts that lasts; what it says is never taken for a proof. */
  readonly beside?: Engine;
};

export async function closeEngines(engines: Engines): Promise<void> {
  await Promise.all([engines.trusted.close(), engines.second?.close(), engines.twin?.close(), engines.beside?.close()]);
}

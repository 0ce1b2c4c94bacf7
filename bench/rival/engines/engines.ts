import type { Engine, EngineCore, EngineLimits } from '../../../solver/engines/engine.js';
import type { Objective, Program } from '../../../solver/program.js';

/** An engine that can say what its bound rests on. */
export type DualEngine = Engine & {
  /**
   * One multiplier a row: the duals of the relaxation, or a ray that shows it infeasible. Mere hints for a bound, which
   * holds whatever they are. Null when the engine has none.
   */
  relaxationDuals?(program: Program, objective: Objective, limits: EngineLimits): Promise<readonly number[] | null>;
};

/** The part of it that computes. */
export type DualCore = EngineCore & {
  relaxationDuals(program: Program, objective: Objective, timeoutMs: number): readonly number[] | null;
};

/** The engines of a search. */
export type Engines = {
  /** Takes programs of any size; what it claims may be confirmed by its own answer to another question. */
  readonly trusted: DualEngine;
  /** Asked beside it, on small programs only; null to do without. */
  readonly second: Engine | null;
  /**
   * The trusted engine once more, in a thread of its own: on larger programs it answers the same question, put in another
   * order, while the first is at work. Without it the first is asked twice, one after the other.
   */
  readonly twin?: DualEngine;
};

export async function closeEngines(engines: Engines): Promise<void> {
  await Promise.all([engines.trusted.close(), engines.second?.close(), engines.twin?.close()]);
}

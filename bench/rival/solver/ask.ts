/** Questions to engines that may throw, answer nonsense or never answer: the asker always gets a claim back, in time. */
import type { EngineClaim, Engine, EngineLimits } from '../../../solver/engines/engine.js';
import type { Timing } from '../../../solver/timing.js';
import type { Objective, Program } from '../../../solver/program.js';
import { readClaim } from '../../../solver/engines/read-claim.js';
import type { DualEngine } from '../engines/engines.js';
import { readMultipliers } from '../engines/read-multipliers.js';

/**
 * How long past its time limit an engine is waited for. Longer than a worker's own grace, so that this is the last resort.
 */
const PATIENCE_MS = 1_000;

/** What a question to an engine may take, and how its asker waits. */
export type Patience = EngineLimits & Pick<Timing, 'later'>;

/** The engine's claim about the program. Resolves at the latest a second after the time limit, at once on abort. */
export async function askToSolve(
  engine: Engine,
  program: Program,
  objective: Objective,
  limits: Patience,
): Promise<EngineClaim> {
  return readClaim(await patiently(() => engine.solve(program, objective, limits), limits));
}

/** The engine's multipliers for the program's rows, or null. Resolves as `askToSolve` does. */
export async function askForMultipliers(
  engine: DualEngine,
  program: Program,
  objective: Objective,
  limits: Patience,
): Promise<readonly number[] | null> {
  if (!engine.relaxationDuals) return null;
  return readMultipliers(await patiently(async () => engine.relaxationDuals?.(program, objective, limits), limits));
}

async function patiently(question: () => Promise<unknown>, { timeoutMs, signal, later }: Patience): Promise<unknown> {
  const failed = (reason: string): EngineClaim => ({ kind: 'failed', reason });
  if (signal?.aborted) return failed('cancelled');
  const answered = new AbortController();
  const over = signal === undefined ? answered.signal : AbortSignal.any([signal, answered.signal]);
  const silence = later(timeoutMs + PATIENCE_MS, over).then((isPassed) => failed(isPassed ? 'silence' : 'cancelled'));
  // The engine may also throw before it returns a promise.
  const answer = Promise.resolve()
    .then(question)
    .catch((error: unknown) => failed(String(error)));
  try {
    return await Promise.race([answer, silence]);
  } finally {
    answered.abort();
  }
}

/** Questions to engines that may throw, answer nonsense or never answer: the asker always gets a claim back, in time. */
import type { Claim, Engine, Limits } from '../engines/engine.js';
import type { Objective, Program } from '../program.js';
import { readClaim, readMultipliers } from '../engines/read-claim.js';

/** How long past its time limit an engine is waited for. Longer than a worker's own grace, so that this is the last resort. */
const PATIENCE_MS = 1_000;

/** The engine's claim about the program. Resolves at the latest a second after the time limit, at once on abort. */
export async function askToSolve(
  engine: Engine,
  program: Program,
  objective: Objective,
  limits: Limits,
): Promise<Claim> {
  return readClaim(await patiently(() => engine.solve(program, objective, limits), limits));
}

/** The engine's multipliers for the program's rows, or null. Resolves as `askToSolve` does. */
export async function askForMultipliers(
  engine: Engine,
  program: Program,
  objective: Objective,
  limits: Limits,
): Promise<readonly number[] | null> {
  if (!engine.relaxationDuals) return null;
  return readMultipliers(await patiently(async () => engine.relaxationDuals?.(program, objective, limits), limits));
}

async function patiently(question: () => Promise<unknown>, { timeoutMs, signal }: Limits): Promise<unknown> {
  if (signal?.aborted) return { kind: 'failed', reason: 'cancelled' } satisfies Claim;
  return new Promise((resolve) => {
    const answer = (value: unknown): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancelled);
      resolve(value);
    };
    const failed = (reason: string): void => answer({ kind: 'failed', reason } satisfies Claim);
    const cancelled = (): void => failed('cancelled');
    const timer = setTimeout(() => failed('silence'), timeoutMs + PATIENCE_MS);
    signal?.addEventListener('abort', cancelled);
    // The engine may also throw before it returns a promise.
    Promise.resolve()
      .then(question)
      .then(answer, (error: unknown) => failed(String(error)));
  });
}

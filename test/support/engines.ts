import { afterAll } from 'vitest';

import type { Engine, EngineClaim, EngineCore } from '../../solver/engines/engine.js';
import { closeEngines, type Engines } from '../../solver/engines/engines.js';
import { load } from '../../solver/engines/highs.js';
import { readClaim, readMultipliers } from '../../solver/engines/read-claim.js';
import { startEngines } from '../../solver/engines/threads/start-engines.js';

type AllEngines = Required<Omit<Engines, 'beside'>> & { readonly second: Engine };

const [trusted, twin] = [highsHere(), highsHere()];

/**
 * The engines of the product for all tests of a file, closed after the last: HiGHS in the thread that asks, where it says the
 * same, and no test waits for threads to start or to be woken. It cannot be stopped before it has answered.
 */
export function sharedEngines(): AllEngines {
  const { second } = enginesInThreads();
  return { trusted, twin, second: lessOftenEnded(second) };
}

/** A question that is no longer wanted mostly ends by itself a moment later, and a thread that is ended has to be started anew. */
const momentMs = 100;

/** An engine in a thread that is ended only when it goes on for a moment after its question was cancelled. */
function lessOftenEnded(engine: Engine): Engine {
  return {
    ...engine,
    solve: async (program, objective, { timeoutMs, signal }) => {
      const ending = new AbortController();
      const cancelled = new Promise<EngineClaim>((settle) => {
        const onAbort = (): void => {
          settle({ kind: 'failed', reason: 'cancelled' });
          setTimeout(() => ending.abort(), momentMs).unref();
        };
        if (signal?.aborted) onAbort();
        else signal?.addEventListener('abort', onAbort, { once: true });
      });
      return Promise.race([engine.solve(program, objective, { timeoutMs, signal: ending.signal }), cancelled]);
    },
  };
}

/** Likewise, each in a thread of its own, as in the product: for tests of stopping them. */
export function enginesInThreads(): AllEngines {
  const { trusted, second, twin } = startEngines();
  if (second === null || twin === undefined) throw new Error('boardfeed comes with two engines, and one of them twice');
  const engines = { trusted, second, twin };
  afterAll(async () => closeEngines(engines));
  return engines;
}

function highsHere(): Engine {
  let loading: Promise<EngineCore> | null = null;
  const answer = async (ask: (core: EngineCore) => unknown): Promise<unknown> => {
    try {
      return ask(await (loading ??= load()));
    } catch (error) {
      // One that has thrown must not be used again.
      loading = null;
      return { kind: 'failed', reason: String(error) };
    }
  };
  return {
    name: 'HiGHS',
    solve: async (program, objective, { timeoutMs }) =>
      readClaim(await answer((core) => core.solve(program, objective, timeoutMs))),
    relaxationDuals: async (program, objective, { timeoutMs }) =>
      readMultipliers(await answer((core) => core.relaxationDuals?.(program, objective, timeoutMs))),
    close: async () => Promise.resolve(),
  };
}

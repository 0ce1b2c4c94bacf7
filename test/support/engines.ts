import { afterAll } from 'vitest';

import type { Engine, EngineClaim } from '../../solver/engines/engine.js';
import { closeEngines, type DualCore, type DualEngine, type Engines } from '../../bench/rival/engines/engines.js';
import { load } from '../../bench/rival/engines/highs.js';
import { readClaim } from '../../solver/engines/read-claim.js';
import { readMultipliers } from '../../bench/rival/engines/read-multipliers.js';
import { startEngines } from '../../bench/rival/engines/start-engines.js';

type AllEngines = Required<Engines> & { readonly second: Engine };

const [trusted, twin] = [highsHere(), highsHere()];

/**
 * The engines of the second opinion for all tests of a file, closed after the last: HiGHS in the thread that asks, where it says the
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

/** Likewise, each in a thread of its own: for tests of stopping them. */
export function enginesInThreads(): AllEngines {
  const { trusted, second, twin } = startEngines();
  if (second === null) throw new Error('there are two engines, and one of them twice');
  const engines = { trusted, second, twin };
  afterAll(async () => closeEngines(engines));
  return engines;
}

function highsHere(): DualEngine {
  let loading: Promise<DualCore> | null = null;
  const answer = async (ask: (core: DualCore) => unknown): Promise<unknown> => {
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
      readMultipliers(await answer((core) => core.relaxationDuals(program, objective, timeoutMs))),
    close: async () => Promise.resolve(),
  };
}

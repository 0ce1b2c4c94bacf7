import { startEngine } from '../../../solver/engines/threads/start-engine.js';
import { engineIn, EngineThread } from '../../../solver/engines/threads/worker-engine.js';
import type { DualEngine, Engines } from './engines.js';
import { readMultipliers } from './read-multipliers.js';

/** HiGHS overruns its time limit by up to a quarter of a second; its thread takes another one to start under load. */
const HIGHS_GRACE_MS = 600;

/** HiGHS, its twin and javascript-lp-solver, each in a thread of its own that starts with its first question. They must be closed. */
export const startEngines = (): Required<Engines> => ({ trusted: highs(), twin: highs(), second: startEngine() });

function highs(): DualEngine {
  // Where it is compiled to, from the place of the thread.
  const moduleUrl = '../../../bench/rival/engines/highs.js';
  const thread = new EngineThread({ name: 'HiGHS', moduleUrl, graceMs: HIGHS_GRACE_MS });
  return {
    ...engineIn(thread),
    relaxationDuals: async (...question) => readMultipliers(await thread.ask('relaxationDuals', ...question)),
  };
}

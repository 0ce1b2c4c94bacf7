import type { Engine } from '../engine.js';
import type { Engines } from '../engines.js';
import { workerEngine } from './worker-engine.js';

/** HiGHS overruns its time limit by up to a quarter of a second; its thread takes another one to start under load. */
const HIGHS_GRACE_MS = 600;
/** javascript-lp-solver may overrun by any time: what is late is not waited for. */
const JAVASCRIPT_LP_SOLVER_GRACE_MS = 100;

/** The product's engines, each in a thread of its own that starts with its first question. They must be closed. */
export function startEngines(): Engines {
  const highs = (): Engine =>
    workerEngine({ name: 'HiGHS', moduleUrl: '../highs.js', givesDuals: true, graceMs: HIGHS_GRACE_MS });
  const javascriptLpSolver = (): Engine =>
    workerEngine({
      name: 'javascript-lp-solver',
      moduleUrl: '../javascript-lp-solver.js',
      givesDuals: false,
      graceMs: JAVASCRIPT_LP_SOLVER_GRACE_MS,
    });
  return { trusted: highs(), twin: highs(), second: javascriptLpSolver(), beside: javascriptLpSolver() };
}

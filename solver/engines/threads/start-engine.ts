import type { Engine } from '../engine.js';
import { workerEngine } from './worker-engine.js';

/** javascript-lp-solver may overrun its time limit by any time: what is late is not waited for. */
const GRACE_MS = 100;

/** The product's engine, in a thread of its own that starts with its first question. It must be closed. */
export const startEngine = (): Engine =>
  workerEngine({ name: 'javascript-lp-solver', moduleUrl: '../javascript-lp-solver.js', graceMs: GRACE_MS });

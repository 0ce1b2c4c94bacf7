import { expect, test } from 'vitest';

import { askForMultipliers, askToSolve } from '../../../../bench/rival/solver/ask.js';
import type { DualEngine } from '../../../../bench/rival/engines/engines.js';
import { webTiming } from '../../../../solver/timing.js';
import { silent, silentAboutDuals } from '../../../support/liars.js';

const { later } = webTiming;
const program = { columns: [{ name: 'x', upper: 1 }], rows: [] };
const objective = { name: 'cost', terms: [{ column: 0, coefficient: 1 }], constant: 0 };
const honest: DualEngine = {
  name: 'honest',
  solve: async () => Promise.resolve({ kind: 'optimal', point: [0] }),
  relaxationDuals: async () => Promise.resolve([]),
  close: async () => Promise.resolve(),
};

test('an answer is passed on', async () => {
  expect(await askToSolve(honest, program, objective, { timeoutMs: 1000, later })).toEqual({
    kind: 'optimal',
    point: [0],
  });
  expect(await askForMultipliers(honest, program, objective, { timeoutMs: 1000, later })).toEqual([]);
});

test('silence is a failure', async () => {
  const claim = await askToSolve(silent(honest), program, objective, { timeoutMs: 1, later });
  expect(claim).toEqual({ kind: 'failed', reason: 'silence' });
  expect(await askForMultipliers(silentAboutDuals(honest), program, objective, { timeoutMs: 1, later })).toBeNull();
});

test('cancelling ends the wait for a silent engine', async () => {
  const controller = new AbortController();
  const claim = askToSolve(silent(honest), program, objective, { timeoutMs: 1e8, later, signal: controller.signal });
  controller.abort();
  expect(await claim).toEqual({ kind: 'failed', reason: 'cancelled' });
});

test('an engine is not asked once all is cancelled', async () => {
  const signal = AbortSignal.abort();
  const claim = await askToSolve(honest, program, objective, { timeoutMs: 1000, later, signal });
  expect(claim).toEqual({ kind: 'failed', reason: 'cancelled' });
});

test('an exception is a failure, whenever it is thrown', async () => {
  const fail = () => {
    throw new Error('out of order');
  };
  const failing = { ...honest, solve: fail, relaxationDuals: fail };
  const claim = await askToSolve(failing, program, objective, { timeoutMs: 1000, later });
  expect(claim).toEqual({ kind: 'failed', reason: 'Error: out of order' });
  expect(await askForMultipliers(failing, program, objective, { timeoutMs: 1000, later })).toBeNull();
});

test('an engine without duals has no multipliers', async () => {
  const { relaxationDuals: _, ...plain } = honest;
  expect(await askForMultipliers(plain, program, objective, { timeoutMs: 1000, later })).toBeNull();
});

import { expect, it } from 'vitest';

import { Meter } from '../../bench/meter.js';
import type { DualEngine } from '../../bench/rival/engines/engines.js';
import type { EngineClaim } from '../../solver/engines/engine.js';
import type { Objective, Program } from '../../solver/program.js';

const program: Program = { columns: [{ name: 'only', upper: 1 }], rows: [] };
const objective: Objective = { name: 'nothing', terms: [], constant: 0 };
const limits = { timeoutMs: 1000 };

/** An engine that answers when it is told to, the first question first. */
function patientEngine(): { engine: DualEngine; answerNext: (claim: EngineClaim) => void; fail: () => void } {
  const waiting: { resolve: (claim: EngineClaim) => void; reject: (error: Error) => void }[] = [];
  const engine: DualEngine = {
    name: 'patient',
    solve: async () => new Promise((resolve, reject) => waiting.push({ resolve, reject })),
    close: async () => Promise.resolve(),
  };
  const answerNext = (claim: EngineClaim): void => waiting.shift()?.resolve(claim);
  return { engine, answerNext, fail: () => waiting.shift()?.reject(new Error('broken')) };
}

it('passes questions and answers on, counts them, and stands still between them', async () => {
  const meter = new Meter();
  const { engine, answerNext, fail } = patientEngine();
  const wrapped = meter.wrap(engine);
  expect(wrapped.relaxationDuals).toBeUndefined();
  expect(meter.reading()).toEqual({ busyMs: 0, questions: 0 });

  const first = wrapped.solve(program, objective, limits);
  const second = wrapped.solve(program, objective, limits);
  answerNext({ kind: 'infeasible' });
  expect(await first).toEqual({ kind: 'infeasible' });
  const openReading = meter.reading();
  expect(openReading.questions).toBe(2);
  fail();
  await expect(second).rejects.toThrow('broken');

  const closed = meter.reading();
  expect(closed.busyMs).toBeGreaterThanOrEqual(openReading.busyMs);
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(meter.reading()).toEqual(closed);
});

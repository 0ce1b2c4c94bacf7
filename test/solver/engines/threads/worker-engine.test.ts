import { execFile } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import type { Worker } from 'node:worker_threads';

import { afterEach, expect, test } from 'vitest';

import type { Engine } from '../../../../solver/engines/engine.js';
import { startEngine } from '../../../../solver/engines/threads/start-engine.js';
import { workerEngine } from '../../../../solver/engines/threads/worker-engine.js';
import { liarModules } from '../../../support/liars.js';

const program = {
  columns: [{ name: 'x', upper: 3 }],
  rows: [{ name: 'least', terms: [{ column: 0, coefficient: 2 }], lower: 3, upper: null }],
};
const objective = { name: 'cost', terms: [{ column: 0, coefficient: 5 }], constant: 0 };
const opened: Engine[] = [];

function open(moduleUrl: string, graceMs = 5_000): Engine {
  const engine = workerEngine({ name: 'tested', moduleUrl, graceMs });
  opened.push(engine);
  return engine;
}

afterEach(async () => {
  await Promise.all(opened.splice(0).map(async (engine) => engine.close()));
});

test('the engine of the product answers from its thread', async () => {
  const engine = startEngine();
  const limits = { timeoutMs: 1e8 };
  expect(await engine.solve(program, objective, limits)).toEqual({ kind: 'optimal', point: [2] });
  await engine.close();
  expect(await engine.solve(program, objective, limits)).toMatchObject({ kind: 'failed' });
});

test('an endless loop is ended, and the next question gets a thread of its own', async () => {
  const engine = open(liarModules.loopsForever, 1);
  for (let question = 0; question < 2; question += 1) {
    const claim = await engine.solve(program, objective, { timeoutMs: 200 });
    expect(claim).toEqual({ kind: 'failed', reason: 'no answer within 201 ms' });
  }
});

test('a module that never finishes loading is ended', async () => {
  const claim = await open(liarModules.loopsWhileLoading, 1).solve(program, objective, { timeoutMs: 200 });
  expect(claim).toMatchObject({ kind: 'failed' });
});

test('an engine that answers and then hangs has answered once', async () => {
  const engine = open(liarModules.answersThenHangs, 1);
  expect(await engine.solve(program, objective, { timeoutMs: 1e8 })).toEqual({ kind: 'optimal', point: [1] });
  expect(await engine.solve(program, objective, { timeoutMs: 200 })).toMatchObject({ kind: 'failed' });
});

test('cancelling ends the thread at once', async () => {
  const controller = new AbortController();
  const limits = { timeoutMs: 1e8, signal: controller.signal };
  const claim = open(liarModules.loopsForever).solve(program, objective, limits);
  await setTimeout(50);
  controller.abort();
  expect(await claim).toEqual({ kind: 'failed', reason: 'cancelled' });
});

test('closing ends the question under way', async () => {
  const engine = open(liarModules.loopsForever);
  const claim = engine.solve(program, objective, { timeoutMs: 1e8 });
  await setTimeout(50);
  await engine.close();
  expect(await claim).toEqual({ kind: 'failed', reason: 'the engine is closed' });
});

test('closing waits for threads that were ended before, too', async () => {
  const threads: Worker[] = [];
  const note = (thread: Worker): unknown => threads.push(thread);
  process.on('worker', note);
  const engine = open(liarModules.loopsForever, 1);
  await engine.solve(program, objective, { timeoutMs: 1 });
  void engine.solve(program, objective, { timeoutMs: 1e8 });
  await setTimeout(50);
  await engine.close();
  process.off('worker', note);
  expect(threads.map(({ threadId }) => threadId)).toEqual([-1, -1]);
});

test('questions asked at once are answered one after another', async () => {
  const engine = open(liarModules.ones);
  const limits = { timeoutMs: 1e8 };
  const claims = await Promise.all([1, 2, 3].map(async () => engine.solve(program, objective, limits)));
  expect(claims).toEqual(Array(3).fill({ kind: 'optimal', point: [1] }));
});

test.each(['throws', 'exits', 'cannotBeSent', 'hasNoEngine'] as const)(
  'a module that %s fails without waiting for the time limit, again and again',
  async (name) => {
    const engine = open(liarModules[name]);
    for (let question = 0; question < 2; question += 1) {
      expect(await engine.solve(program, objective, { timeoutMs: 1e8 })).toMatchObject({ kind: 'failed' });
    }
  },
);

test('neither an idle thread nor a printing one shows in the process that started it', async () => {
  const built = dirname(createRequire(import.meta.url).resolve('#engine-worker'));
  const code = `
    import { workerEngine } from ${JSON.stringify(pathToFileURL(join(built, 'worker-engine.js')).href)};
    const moduleUrl = ${JSON.stringify(liarModules.prints)};
    const engine = workerEngine({ name: 'tested', moduleUrl, graceMs: 5000 });
    const claim = await engine.solve({ columns: [], rows: [] }, { name: '', terms: [], constant: 0 }, { timeoutMs: 1e8 });
    process.stdout.write(claim.kind);`;
  // The engine is not closed: the process must end all the same.
  const { stdout, stderr } = await promisify(execFile)(process.execPath, ['--input-type=module', '--eval', code]);
  expect({ stdout, stderr }).toEqual({ stdout: 'infeasible', stderr: '' });
});

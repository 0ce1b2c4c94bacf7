import { once } from 'node:events';
import { Worker } from 'node:worker_threads';

import { expect, test } from 'vitest';

import { leave } from '../../../../solver/engines/threads/end-thread.js';

const started = async (code: string): Promise<Worker> => {
  const worker = new Worker(`const { parentPort } = require('node:worker_threads'); ${code}`, { eval: true });
  await once(worker, 'online');
  return worker;
};
const listening = `parentPort.on('message', (message) => { if (message === 'leave') parentPort.close(); });`;

test('a thread leaves by itself, and is gone when that is over', async () => {
  const worker = await started(listening);
  const exit = once(worker, 'exit');
  await leave(worker);
  expect(worker.threadId).toBe(-1);
  expect(await exit).toEqual([0]);
});

test('a thread that is starting leaves when it has started', async () => {
  const worker = new Worker(`const { parentPort } = require('node:worker_threads'); ${listening}`, { eval: true });
  const exit = once(worker, 'exit');
  await leave(worker);
  expect(await exit).toEqual([0]);
});

test('a thread that hears nothing is ended by force', async () => {
  const worker = await started('for (;;);');
  const exit = once(worker, 'exit');
  await leave(worker);
  expect(await exit).toEqual([1]);
});

test('a thread that is gone is not waited for', async () => {
  // On a busy machine it may come online and be gone in one breath: nobody may wait for the one before the other.
  const worker = new Worker('', { eval: true });
  await once(worker, 'exit');
  await leave(worker);
});

/** Before every test file: one that leaves a thread behind fails, for a process that ends meanwhile may crash. */
import type { Worker } from 'node:worker_threads';

import { afterAll } from 'vitest';

const threads = new Set<Worker>();
process.on('worker', (thread) => {
  threads.add(thread);
  thread.once('exit', () => threads.delete(thread));
});

// Hooks run in the reverse of their order: the file has closed what it has opened by now.
afterAll(() => {
  if (threads.size > 0) throw new Error(`threads left behind: ${threads.size}; close the engines and wait for it`);
});

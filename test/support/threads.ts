import type { Worker } from 'node:worker_threads';

/** The threads of this process that have not ended. */
export const threads = new Set<Worker>();

process.on('worker', (thread) => {
  threads.add(thread);
  thread.once('exit', () => threads.delete(thread));
});

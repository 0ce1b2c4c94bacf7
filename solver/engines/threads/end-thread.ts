import type { Worker } from 'node:worker_threads';

/** What a thread is told that is to leave. */
export const LEAVE = 'leave';

/** How long a thread may take to leave, in milliseconds. */
const PATIENCE_MS = 2_000;

/**
 * Has a thread leave by itself as soon as it hears of it, and ends it by force only when that takes too long. Resolves when
 * the thread is gone. Node 20 may crash as a whole ("GetForegroundTaskRunner") over what a thread leaves behind in V8: so none
 * is ended by force that is just starting, compiling WebAssembly or ending threads of its own, and nobody goes on before it is
 * gone.
 */
export async function leave(worker: Worker): Promise<void> {
  const isGone = worker.threadId < 0;
  if (isGone) return;
  const gone = new Promise((resolve) => worker.once('exit', resolve));
  worker.postMessage(LEAVE);
  const timer = setTimeout(() => void worker.terminate(), PATIENCE_MS);
  await gone;
  clearTimeout(timer);
}

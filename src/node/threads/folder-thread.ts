import { Worker } from 'node:worker_threads';

import { leave } from '../../../solver/engines/threads/end-thread.js';
import type { BoardResult, BoardTask, FolderJob } from './board-result.js';
import type { Lane } from './lanes.js';

/** The compiled thread stands beside this file. */
const threadFile = new URL('./folder-worker.js', import.meta.url);

/** A lane in a thread of its own. A thread that breaks down fails its board and is replaced for the next one. */
export function folderThread(job: FolderJob): Lane<BoardTask, BoardResult> {
  let worker: Worker | null = null;
  let waiting: { readonly resolve: (result: BoardResult) => void; readonly reject: (error: unknown) => void } | null =
    null;
  const start = (): Worker => {
    const started = new Worker(threadFile, { workerData: job });
    const lost = (error: unknown): void => {
      if (worker === started) worker = null;
      waiting?.reject(error);
      waiting = null;
    };
    started.on('message', (result: BoardResult) => {
      waiting?.resolve(result);
      waiting = null;
    });
    started.on('error', lost);
    started.on('exit', (code) => lost(new Error(`its thread has ended with ${code}`)));
    return started;
  };
  return {
    ask: (task) =>
      new Promise((resolve, reject) => {
        waiting = { resolve, reject };
        worker ??= start();
        worker.postMessage(task);
      }),
    end: async () => {
      if (worker !== null) await leave(worker);
    },
  };
}

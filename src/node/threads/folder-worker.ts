/** A thread that compares boards one after the other. It is started by its address, and told what to do by messages. */
import { parentPort, workerData } from 'node:worker_threads';

import { LEAVE } from '../../../solver/engines/threads/end-thread.js';
import { startEngine } from '../../../solver/engines/threads/start-engine.js';
import { inputsBeside } from '../../reading/inputs-from-text.js';
import { boardResult, type BoardTask, type FolderJob } from './board-result.js';

const job = workerData as FolderJob;
const engine = startEngine();
const leaving = new AbortController();
const context = { job, read: inputsBeside(job.catalogue, job), engine, signal: leaving.signal };
let work: Promise<unknown> = Promise.resolve();

parentPort?.on('message', (task: BoardTask | typeof LEAVE) => {
  if (task !== LEAVE) {
    work = boardResult(task, context).then((result) => parentPort?.postMessage(result));
    return;
  }
  leaving.abort();
  void work.then(async () => engine.close()).then(() => parentPort?.close());
});

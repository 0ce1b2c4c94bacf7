/** A thread that compares boards one after the other. It is started by its address, and told what to do by messages. */
import { parentPort, workerData } from 'node:worker_threads';

import { closeEngines } from '../../../solver/engines/engines.js';
import { LEAVE } from '../../../solver/engines/threads/end-thread.js';
import { startEngines } from '../../../solver/engines/threads/start-engines.js';
import { inputsBeside } from '../../reading/inputs-from-text.js';
import { boardResult, type BoardTask, type FolderJob } from './board-result.js';

const job = workerData as FolderJob;
const engines = startEngines();
const leaving = new AbortController();
const context = { job, read: inputsBeside(job.catalogue, job), engines, signal: leaving.signal };
let work: Promise<unknown> = Promise.resolve();

parentPort?.on('message', (task: BoardTask | typeof LEAVE) => {
  if (task !== LEAVE) {
    work = boardResult(task, context).then((result) => parentPort?.postMessage(result));
    return;
  }
  leaving.abort();
  void work.then(async () => closeEngines(engines)).then(() => parentPort?.close());
});

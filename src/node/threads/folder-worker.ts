/** A thread that compares boards one after the other. It is started by its address, and told what to do by messages. */
import { parentPort, workerData } from 'node:worker_threads';

import { startEngines } from '../../../solver/engines/threads/start-engines.js';
import { inputsBeside } from '../../reading/inputs-from-text.js';
import { boardResult, type BoardTask, type FolderJob } from './board-result.js';

const job = workerData as FolderJob;
const context = { job, read: inputsBeside(job.catalogue), engines: startEngines() };

parentPort?.on('message', (task: BoardTask) => {
  void boardResult(task, context).then((result) => parentPort?.postMessage(result));
});

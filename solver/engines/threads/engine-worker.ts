/** The thread that an engine runs in: loads the engine's module, then answers one question after another. */
import { parentPort, workerData } from 'node:worker_threads';

import type { EngineModule } from '../engine.js';
import { LEAVE } from './end-thread.js';
import { READY, type WorkerAnswer, type WorkerQuestion } from './worker-protocol.js';

if (parentPort === null) throw new Error('the engine worker must be started as a worker');
const port = parentPort;
// Whatever an engine prints would end up in the output of the process, which belongs to the answer alone.
process.stdout.write = process.stderr.write = () => true;

const { load } = (await import(String(workerData))) as EngineModule;
const core = await load();

port.on('message', (message: WorkerQuestion | typeof LEAVE) => {
  if (message === LEAVE) port.close();
  else port.postMessage({ id: message.id, value: answerTo(message) } satisfies WorkerAnswer);
});
port.postMessage(READY);

function answerTo({ task, program, objective, timeoutMs }: WorkerQuestion): unknown {
  switch (task) {
    case 'solve':
      return core.solve(program, objective, timeoutMs);
    case 'relaxationDuals':
      return core.relaxationDuals?.(program, objective, timeoutMs) ?? null;
  }
}

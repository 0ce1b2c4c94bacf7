/** The thread that an engine runs in: loads the engine's module, then answers one question after another. */
import { parentPort, workerData } from 'node:worker_threads';

import type { Objective, Program } from '../../program.js';
import { LEAVE } from './end-thread.js';
import { READY, type WorkerAnswer, type WorkerQuestion } from './worker-protocol.js';

if (parentPort === null) throw new Error('the engine worker must be started as a worker');
const port = parentPort;
// Whatever an engine prints would end up in the output of the process, which belongs to the answer alone.
process.stdout.write = process.stderr.write = () => true;

type Tasks = Readonly<Record<string, (program: Program, objective: Objective, timeoutMs: number) => unknown>>;

const { load } = (await import(String(workerData))) as { readonly load: () => Promise<Tasks> };
const core = await load();

port.on('message', (message: WorkerQuestion | typeof LEAVE) => {
  if (message === LEAVE) port.close();
  else port.postMessage({ id: message.id, value: answerTo(message) } satisfies WorkerAnswer);
});
port.postMessage(READY);

function answerTo({ task, program, objective, timeoutMs }: WorkerQuestion): unknown {
  return core[task]?.(program, objective, timeoutMs) ?? null;
}

/** The thread that an engine runs in: loads the engine's module, then answers one question after another. */
import { parentPort, workerData } from 'node:worker_threads';

import type { EngineModule } from '../engine.js';
import type { Answer, Question } from './worker-protocol.js';

if (parentPort === null) throw new Error('the engine worker must be started as a worker');
const port = parentPort;
// Whatever an engine prints would end up in the output of the process, which belongs to the answer alone.
process.stdout.write = process.stderr.write = () => true;

const { load } = (await import(String(workerData))) as EngineModule;
const core = await load();

port.on('message', ({ id, task, program, objective, timeoutMs }: Question) => {
  port.postMessage({ id, value: answerTo() } satisfies Answer);

  function answerTo(): unknown {
    switch (task) {
      case 'solve':
        return core.solve(program, objective, timeoutMs);
      case 'relaxationDuals':
        return core.relaxationDuals?.(program, objective, timeoutMs) ?? null;
    }
  }
});

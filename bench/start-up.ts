import { answerOnce } from './engine-sets.js';
import { startEngines } from './product.js';
import { closeEngines } from './rival/engines/engines.js';

/** An engine's first answer to a tiny question, thread and module included, and its next one. */
export type StartUp = { readonly engine: string; readonly firstMs: number; readonly nextMs: number };

/** Starts the rival's engines afresh and times each one's first answers. */
export async function startUp(): Promise<readonly StartUp[]> {
  const engines = startEngines();
  try {
    const times: StartUp[] = [];
    for (const engine of [engines.trusted, ...(engines.second === null ? [] : [engines.second])]) {
      const started = performance.now();
      await answerOnce(engine);
      const first = performance.now();
      await answerOnce(engine);
      times.push({ engine: engine.name, firstMs: first - started, nextMs: performance.now() - first });
    }
    return times;
  } finally {
    await closeEngines(engines);
  }
}

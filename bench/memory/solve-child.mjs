/**
 * Solves the one question that its parent sends and reports the most memory that this process has held. In JavaScript, so
 * that nothing but the compiled product is in the process.
 */
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { URL } from 'node:url';

// By an address that is made here: checks of imports run before anything is compiled.
const { choose, closeEngines, kitOf, startEngines } = await import(
  new URL('../../dist/src/index.js', import.meta.url).href
);

process.once('message', async ({ question }) => {
  const started = performance.now();
  const answer = question === null ? null : await solved(question, started);
  const elapsedMs = performance.now() - started;
  // Node gives it in units of 1024 bytes.
  const peakBytes = process.resourceUsage().maxRSS * 1024;
  process.send({ answer, elapsedMs, peakBytes }, () => process.disconnect());
});

async function solved({ board, catalogue, method, second, capMs }, started) {
  const engines = startEngines();
  try {
    const remainingMs = () => capMs - (performance.now() - started);
    const chosen = second ? engines : { ...engines, second: null };
    return await choose(kitOf(board, catalogue), { aim: 'cost', engines: chosen, method, remainingMs });
  } finally {
    await closeEngines(engines);
  }
}

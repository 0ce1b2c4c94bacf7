/**
 * Solves the one question that its parent sends and reports the most memory that this process has held. In JavaScript, so
 * that nothing but the compiled product is in the process.
 */
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { URL } from 'node:url';

// By an address that is made here: checks of imports run before anything is compiled.
const compiled = (path) => import(new URL(`../../dist/${path}`, import.meta.url).href);
const { choose, kitOf } = await compiled('src/index.js');

process.once('message', async ({ question }) => {
  const started = performance.now();
  const answer = question === null ? null : await solved(question, started);
  const elapsedMs = performance.now() - started;
  // Node gives it in units of 1024 bytes.
  const peakBytes = process.resourceUsage().maxRSS * 1024;
  process.send({ answer, elapsedMs, peakBytes }, () => process.disconnect());
});

async function solved({ board, catalogue, rival, capMs }, started) {
  const remainingMs = () => capMs - (performance.now() - started);
  if (!rival) return choose(kitOf(board, catalogue), { aim: 'cost', remainingMs });
  const { chooseCompact } = await compiled('bench/rival/choose-compact.js');
  const { startEngines } = await compiled('bench/rival/engines/start-engines.js');
  const { closeEngines } = await compiled('bench/rival/engines/engines.js');
  const engines = startEngines();
  try {
    return await chooseCompact(board, catalogue, { engines: { ...engines, second: null }, remainingMs });
  } finally {
    await closeEngines(engines);
  }
}

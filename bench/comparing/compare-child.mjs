/**
 * Compares the board and the catalogue that it is given as files, and prints when what was known, in milliseconds since this
 * process began. In JavaScript, so that nothing but the compiled product is in the process.
 */
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import { URL } from 'node:url';

// By an address that is made here: checks of imports run before anything is compiled.
const { compare, readInputs } = await import(new URL('../../dist/src/index.js', import.meta.url).href);

const [board, catalogue, best] = process.argv.slice(2);
const read = await readInputs(board, catalogue);
if (read.kind !== 'read') throw new Error(`${board} or ${catalogue} cannot be read`);
let firstMs = null;
const onStage = ({ kind, known = [], found = 0 }) => {
  if (firstMs === null && (kind === 'best' ? found : known.length) > 0) firstMs = performance.now();
};
const comparison = await compare(read.value, { onStage, ...(best === undefined ? {} : { best: Number(best) }) });
const allMs = performance.now();
const { user, system } = process.cpuUsage();
const plans = comparison.options.filter(({ kind }) => kind === 'plan');
const report = {
  firstMs: firstMs ?? allMs,
  allMs,
  processorMs: (user + system) / 1000,
  shown: plans.length,
  proven: plans.filter(({ gap }) => gap === null).length,
  isFirstProven: plans.some(({ rank, gap }) => rank === 1 && gap === null) || comparison.reasons.length > 0,
  isComplete: comparison.unbeaten.complete,
};
process.stdout.write(`${JSON.stringify(report)}\n`);

import { kitOf } from '../src/domain/kit.js';
/**
 * Bin packing as a test of chains and of bounds: every item is a pedal, every bin an output of one supply model with a chain
 * lead that costs nothing, and the aim is the fewest supplies. Reads a file in the OR-Library's format. The exit code is 1
 * only where a plan breaks a rule or a proof is refuted.
 */
import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';

import { choose } from '../src/index.js';
import { judge } from './verdict.js';
import { packingBoard, readPackings, type Packing } from './packings.js';
import { tableText } from './table.js';

const usage = 'npm run yardstick -- FILE [--seconds 20] [--first 20]';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seconds: { type: 'string', default: '20' }, first: { type: 'string', default: '1000' } },
});
const [file] = positionals;
if (file === undefined) {
  process.stderr.write(`${usage}\n`);
  process.exitCode = 2;
} else {
  process.exitCode = await run(readPackings(await readFile(file, 'utf8')).slice(0, Number(values.first)));
}

async function run(packings: readonly Packing[]): Promise<number> {
  const rows: string[][] = [];
  let wrong = false;
  for (const packing of packings) {
    const row = await solved(packing);
    process.stderr.write(`${row.join('  ')}\n`);
    wrong ||= row.includes('WRONG');
    rows.push(row);
  }
  const left = (title: string) => ({ title, align: 'left' as const });
  const right = (title: string) => ({ title, align: 'right' as const });
  const titles = [left('instance'), right('bins'), right('best known'), left('status'), right('seconds')];
  process.stdout.write(`${tableText(titles, rows)}\n`);
  return wrong ? 1 : 0;
}

async function solved(packing: Packing): Promise<string[]> {
  const { board, catalogue } = packingBoard(packing);
  const started = performance.now();
  const seconds = (): number => (performance.now() - started) / 1000;
  const answer = await choose(kitOf(board, catalogue), {
    aim: 'bricks',
    remainingMs: () => (Number(values.seconds) - seconds()) * 1000,
  });
  const taken = seconds().toFixed(2);
  const verdict = judge(answer, board, catalogue);
  const bins = verdict.kind === 'wrong' || verdict.score === null ? null : verdict.score.bricks;
  const refuted = verdict.kind === 'proven' && bins !== null && bins > packing.bestKnown;
  const status = verdict.kind === 'wrong' || refuted ? 'WRONG' : verdict.kind === 'proven' ? 'proven' : gapOf(answer);
  return [packing.name, bins === null ? '–' : String(bins), String(packing.bestKnown), status, taken];
}

/** How far a plan that is not proven may be from the best. */
function gapOf(answer: Awaited<ReturnType<typeof choose>>): string {
  if (answer.kind !== 'plan' || answer.gap === null) return 'nothing found';
  const { tier, value, bound } = answer.gap;
  return tier === 'bricks' ? `at least ${bound ?? '?'}` : `bins proven; ${tier} ${value}, at least ${bound ?? '?'}`;
}

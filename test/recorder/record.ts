/**
 * Records what every command answers to random boards, and compares two recordings: whether two checkouts do the same.
 */
import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';

import { programOf } from './checkout.js';
import { comparedText } from './difference-text.js';
import { compared } from './differences.js';
import { linesIn, recordCases } from './record-cases.js';
import { say } from './say.js';
import { writeCases } from './write-cases.js';

const usage = `Usage: npm run record -- cases <folder> <checkout> [--count 1000]
       npm run record -- run <folder> <checkout> <file> [--jobs 2] [--every 1]
       npm run record -- compare <file> <file>

cases    writes random boards and catalogues below the folder, once
run      asks every command of the compiled checkout about them; adds one JSON line each to the file
compare  prints what two such files say differently; the exit code is 1 where they do

A checkout is its folder, or its compiled entry.`;

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string', default: '1000' },
    jobs: { type: 'string', default: '2' },
    every: { type: 'string', default: '1' },
  },
});

process.exitCode = await record(positionals);

async function record([step, first, second, third]: readonly string[]): Promise<number> {
  if (step === 'cases' && first !== undefined && second !== undefined) {
    await writeCases(first, Number(values.count), await programOf(second));
    return 0;
  }
  if (step === 'run' && first !== undefined && second !== undefined && third !== undefined) {
    const [jobs, every] = [Number(values.jobs), Number(values.every)];
    await recordCases({ cases: first, program: await programOf(second), to: third, jobs, every });
    return 0;
  }
  if (step === 'compare' && first !== undefined && second !== undefined) {
    const [one, other] = await Promise.all([first, second].map(async (file) => linesIn(await readFile(file, 'utf8'))));
    const result = compared(one ?? [], other ?? []);
    process.stdout.write(comparedText(result));
    return result.differences.length > 0 ? 1 : 0;
  }
  say(usage);
  return 2;
}
